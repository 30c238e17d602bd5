import { shapesToCompute } from "../guide/lake-inputs.ts";
import type { Club } from "../model/club.ts";
import { programModule } from "../program/program-files.ts";
import { type ComputedShape, SHAPE, type ShapeInputs } from "../water/compose-shape.ts";
import type { Cache } from "./cache.ts";
import { runInThreads } from "./threads.ts";

/** Fewer are computed sooner than threads are started. */
const LEAST = 60;
/** Shapes given to a thread at once. */
const BATCH = 10;

/**
 * Computes the shapes of many lakes in threads and keeps the results, for composing the guide to find: the one costly
 * part of a lake that needs nothing of the others. Does nothing for few, for those that are kept, and without a cache.
 * @param progress called with how many are done
 */
export async function precomputeShapes(
  club: Club,
  cache: Cache,
  progress: (done: number, total: number) => void,
): Promise<void> {
  const wanted = cache.keeps ? shapesToCompute(club).filter((inputs) => !cache.has(SHAPE, inputs)) : [];
  if (wanted.length < LEAST) return;
  const batches = Array.from({ length: Math.ceil(wanted.length / BATCH) }, (_, i) =>
    wanted.slice(i * BATCH, (i + 1) * BATCH),
  );
  let done = 0;
  await runInThreads<readonly ShapeInputs[], never, readonly ComputedShape[]>({
    script: programModule("build/incremental/shape-thread.ts"),
    data: undefined,
    jobs: batches,
    onResult: (computed, at) => {
      for (const [i, shape] of computed.entries()) cache.keep(SHAPE, batches[at]?.[i], shape);
      done += computed.length;
      progress(done, wanted.length);
    },
  });
}
