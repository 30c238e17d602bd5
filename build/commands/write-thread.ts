import { parentPort, workerData } from "node:worker_threads";
import { openCache } from "../cache/cache.ts";
import { inMemory } from "../cache/memory.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type GuideResult, makeGuide } from "../pipeline.ts";
import { PublishError } from "../publish/publish.ts";
import type { WriterData, WriterSaid } from "./write-behind.ts";

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

const { request, latest } = workerData.data as WriterData;
const cache = inMemory(openCache(request.cache));
const say = (said: WriterSaid): void => parentPort?.postMessage(said);

async function write(job: number): Promise<Written> {
  const isOvertaken = (): boolean => Atomics.load(latest, 0) !== job;
  if (isOvertaken()) return { overtaken: true };
  try {
    const progress = (...at: Parameters<NonNullable<Parameters<typeof makeGuide>[1]>>): void => {
      // Not while pages are drawn: many are under way at once, and each would fail by itself.
      if (at[0] !== "pages" && isOvertaken()) throw new Overtaken();
      say({ progress: at });
    };
    const { guide, made, problems } = await makeGuide(request, progress, cache);
    return guide === undefined ? { refused: true, problems } : { made, problems };
  } catch (error) {
    if (isOvertaken()) return { overtaken: true };
    const known = error instanceof Error ? error : new Error(String(error));
    return { failed: known.message, fault: error instanceof PublishError ? undefined : known };
  }
}

parentPort?.on("message", async (job: number) => say({ written: await write(job) }));
