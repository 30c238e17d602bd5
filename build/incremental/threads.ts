import { availableParallelism } from "node:os";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { parentPort, type ResourceLimits, Worker, workerData } from "node:worker_threads";
import { programModule } from "../program/program-files.ts";

/** Of a thread's young objects; a larger share saves little time and is held by every thread. */
const YOUNG_MB = 24;

type Message<Progress, Result> = { readonly progress: Progress } | { readonly result: Result };

/** A thread, and what it runs. */
export type Thread = Worker & { readonly script: URL };

/** Releases unused memory of this thread: the first round finds it, the second returns its pages to the machine. */
function collectGarbage(): void {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  collect();
  collect();
}

/**
 * Starts a thread.
 * @param script what it runs; it calls `handleJobs`
 * @param data given to it at the start: plain data, and memory that is shared
 */
export function startThread(script: URL, data: unknown, resourceLimits: ResourceLimits = {}): Thread {
  const isSource = script.pathname.endsWith(".ts");
  const module = isSource ? programModule("build/incremental/tsx-thread.mjs") : script;
  const worker = new Worker(module, { workerData: { script: script.href, data }, resourceLimits });
  return Object.assign(worker, { script });
}

/**
 * Gives an idle thread a job.
 * @param job plain data
 * @throws what the job, or `onProgress`, throws; an error when the thread ends before its work
 */
export const runJob = <Job, Progress, Result>(
  thread: Thread,
  job: Job,
  onProgress: (progress: Progress) => void = () => {},
): Promise<Result> =>
  new Promise((resolve, reject) => {
    const listen = (message: Message<Progress, Result>): void => {
      try {
        if ("progress" in message) onProgress(message.progress);
        else {
          forget();
          resolve(message.result);
        }
      } catch (error) {
        fail(error);
      }
    };
    const fail = (error: unknown): void => {
      forget();
      reject(error);
    };
    const end = (): void => fail(new Error(`a thread of ${thread.script.pathname} ended before its work`));
    const forget = (): void => void thread.off("message", listen).off("error", fail).off("exit", end);
    thread.on("message", listen).on("error", fail).on("exit", end);
    thread.postMessage(job);
  });

/** Work that is divided among threads. */
interface ThreadedWork<Job, Progress, Result> {
  /** What each thread runs; it calls `handleJobs`. */
  readonly script: URL;
  /** Given to every thread at the start: plain data. */
  readonly data: unknown;
  /** Plain data. */
  readonly jobs: readonly Job[];
  readonly onProgress?: (progress: Progress) => void;
  /** Called with the result of each job as it comes. */
  readonly onResult: (result: Result, job: number) => void;
}

/**
 * Does jobs in as many threads as the machine has processors, each thread one job after another.
 * @throws what a job, `onProgress` or `onResult` throws, with all threads stopped
 */
export async function runInThreads<Job, Progress, Result>({
  script,
  data,
  jobs,
  onProgress,
  onResult,
}: ThreadedWork<Job, Progress, Result>): Promise<void> {
  collectGarbage();
  const threads = Array.from({ length: Math.min(availableParallelism(), jobs.length) }, () =>
    // What happens in a thread while it has no job concerns nobody.
    startThread(script, data, { maxYoungGenerationSizeMb: YOUNG_MB }).on("error", () => {}),
  );
  const waiting = jobs.entries();
  const lane = async (thread: Thread): Promise<void> => {
    for (const [at, job] of waiting)
      onResult(await runJob<Job, Progress, Result>(thread, job, onProgress), at);
  };
  try {
    await Promise.all(threads.map(lane));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

/**
 * Does the jobs of the thread this is called in; what `start` makes of the thread's data serves all of them.
 * @param start returns what does one job, and may report progress meanwhile
 */
export function handleJobs<Data, Job, Progress, Result>(
  start: (data: Data) => (job: Job, report: (progress: Progress) => void) => Promise<Result>,
): void {
  const port = parentPort;
  if (port === null) throw new Error("handleJobs is for threads");
  const send = (message: Message<Progress, Result>): void => port.postMessage(message);
  const run = start((workerData as { readonly data: Data }).data);
  port.on("message", async (job: Job) => send({ result: await run(job, (progress) => send({ progress })) }));
}
