import { handleJobs } from "../incremental/threads.ts";
import type { CardFiles } from "./card-kind.ts";
import { openCardWriter } from "./card-writer.ts";

handleJobs(({ outDir }: { readonly outDir: string }) => {
  const write = openCardWriter(outDir);
  return (batch: readonly CardFiles[], report: (files: number) => void) => write(batch, report);
});
