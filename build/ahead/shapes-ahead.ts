import type { Cache } from "../cache/cache.ts";
import { shapesToCompute } from "../guide/lake-inputs.ts";
import type { Club } from "../model/club.ts";
import { runInThreads } from "../threads/threads.ts";
import { type ComputedShape, SHAPE, type ShapeInputs } from "../water/compose-shape.ts";

/** Fewer are reckoned sooner than threads are begun. */
const LEAST = 60;
/** Shapes given to a thread at once. */
const BATCH = 10;

const THREAD = new URL("./shape-thread.ts", import.meta.url);

/**
 * Reckons the shapes of many lakes in threads and keeps what comes out, for composing the guide to find: the one costly
 * part of a lake that needs nothing of the others. Does nothing for few, for those that are kept, and without a cache.
 * @param progress told how many are done
 */
export async function reckonShapesAhead(
  club: Club,
  cache: Cache,
  progress: (done: number, total: number) => void,
): Promise<void> {
  const wanted = cache.keeps ? shapesToCompute(club).filter((needs) => !cache.has(SHAPE, needs)) : [];
  if (wanted.length < LEAST) return;
  const batches = Array.from({ length: Math.ceil(wanted.length / BATCH) }, (_, i) =>
    wanted.slice(i * BATCH, (i + 1) * BATCH),
  );
  let done = 0;
  await runInThreads<readonly ShapeInputs[], never, readonly ComputedShape[]>({
    script: THREAD,
    data: undefined,
    jobs: batches,
    take: (reckoned, at) => {
      for (const [i, shape] of reckoned.entries()) cache.keep(SHAPE, batches[at]?.[i], shape);
      done += reckoned.length;
      progress(done, wanted.length);
    },
  });
}
