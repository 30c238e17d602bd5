import { availableParallelism } from "node:os";
import { parentPort, Worker, workerData } from "node:worker_threads";
import { clearHeap } from "./clear-heap.ts";

/** Of a thread's young objects; a larger share saves little time and is held by every thread. */
const YOUNG_MB = 24;

type Said<Told, Answer> = { readonly told: Told } | { readonly answer: Answer };

const START = new URL("./start-thread.mjs", import.meta.url);

/** Work that is divided among threads. */
interface Divided<Job, Told, Answer> {
  /** What each thread runs; it calls `answerJobs`. */
  readonly script: URL;
  /** What every thread is given when it starts: plain data. */
  readonly data: unknown;
  /** Plain data. */
  readonly jobs: readonly Job[];
  /** Told of what threads say while they work. */
  readonly hear?: (told: Told) => void;
  /** Given the answer to each job as it comes. */
  readonly take: (answer: Answer, job: number) => void;
}

/**
 * Does jobs in as many threads as the machine has processors, each thread one job after another.
 * @throws what a job, or who hears of it, throws, with all threads stopped
 */
export async function runInThreads<Job, Told, Answer>({
  script,
  data,
  jobs,
  hear,
  take,
}: Divided<Job, Told, Answer>): Promise<void> {
  let next = 0;
  const lane = (worker: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      let at = next;
      const takeNext = (): void => {
        at = next++;
        if (at >= jobs.length) resolve();
        else worker.postMessage(jobs[at]);
      };
      worker.on("message", (said: Said<Told, Answer>) => {
        try {
          if ("told" in said) hear?.(said.told);
          else {
            take(said.answer, at);
            takeNext();
          }
        } catch (error) {
          reject(error);
        }
      });
      worker.on("error", reject);
      worker.on("exit", () => reject(new Error(`a thread of ${script.pathname} ended before its work`)));
      takeNext();
    });
  clearHeap();
  const workers = Array.from(
    { length: Math.min(availableParallelism(), jobs.length) },
    () =>
      new Worker(START, {
        workerData: { script: script.href, data },
        resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB },
      }),
  );
  try {
    await Promise.all(workers.map(lane));
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

/**
 * Answers the jobs of the thread this is called in; what `begin` makes of the thread's data serves all of them.
 * @param begin gives what does one job, and may tell of it meanwhile
 */
export function answerJobs<Data, Job, Told, Answer>(
  begin: (data: Data) => (job: Job, tell: (told: Told) => void) => Promise<Answer>,
): void {
  const port = parentPort;
  if (port === null) throw new Error("answerJobs is for threads");
  const say = (said: Said<Told, Answer>): void => port.postMessage(said);
  const answer = begin((workerData as { readonly data: Data }).data);
  port.on("message", async (job: Job) => say({ answer: await answer(job, (told) => say({ told })) }));
}
