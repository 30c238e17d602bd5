import { answerJobs } from "../threads/threads.ts";
import type { CardFiles } from "./card-kind.ts";
import { openCardWriter } from "./card-writer.ts";

answerJobs(({ outDir }: { readonly outDir: string }) => {
  const press = openCardWriter(outDir);
  return (batch: readonly CardFiles[], tell: (files: number) => void) => press(batch, tell);
});
