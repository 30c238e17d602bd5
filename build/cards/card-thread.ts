import { answerJobs } from "../threads/threads.ts";
import type { CardFiles } from "./card-file.ts";
import { openPress } from "./card-press.ts";

answerJobs(({ outDir }: { readonly outDir: string }) => {
  const press = openPress(outDir);
  return (batch: readonly CardFiles[], tell: (files: number) => void) => press(batch, tell);
});
