import { type Cache, inMemory, openCache } from "../incremental/cache.ts";
import { handleJobs } from "../incremental/threads.ts";
import type { GuideRequest } from "../incremental/up-to-date.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Progress } from "../model/progress.ts";
import { type GuideResult, makeGuide } from "../pipeline.ts";
import { PublishError } from "../publish/publish.ts";

/** What the thread is started with. */
export interface WriterData {
  readonly request: GuideRequest;
  /** One number, shared: the latest job. A job that is not the latest is cancelled. */
  readonly latest: Int32Array;
}

/** How a job ended. */
export type Written =
  | { readonly made: GuideResult["made"]; readonly problems: readonly Diagnostic[] }
  /** Data with errors, or cards that do not fit: nothing was written. */
  | { readonly refused: true; readonly problems: readonly Diagnostic[] }
  | { readonly overtaken: true }
  /** In words for whoever runs the preview; `fault` is where the program itself failed. */
  | { readonly failed: string; readonly fault: Error | undefined };

class Overtaken extends Error {
  override readonly name = "Overtaken";
}

/** Writes the guide of one job, unless a later one overtakes it. */
async function write(
  { request, latest }: WriterData,
  cache: Cache,
  job: number,
  report: (at: Parameters<Progress>) => void,
): Promise<Written> {
  const isOvertaken = (): boolean => Atomics.load(latest, 0) !== job;
  if (isOvertaken()) return { overtaken: true };
  try {
    const progress: Progress = (...at) => {
      // Not while pages are drawn: many are under way at once, and each would fail by itself.
      if (at[0] !== "pages" && isOvertaken()) throw new Overtaken();
      report(at);
    };
    const { guide, made, problems } = await makeGuide(request, progress, cache);
    return guide === undefined ? { refused: true, problems } : { made, problems };
  } catch (error) {
    if (isOvertaken()) return { overtaken: true };
    const known = error instanceof Error ? error : new Error(String(error));
    return { failed: known.message, fault: error instanceof PublishError ? undefined : known };
  }
}

handleJobs((data: WriterData) => {
  const cache = inMemory(openCache(data.request.cache));
  return (job: number, report: (at: Parameters<Progress>) => void) => write(data, cache, job, report);
});
