import { availableParallelism } from "node:os";
import { parentPort, type ResourceLimits, Worker, workerData } from "node:worker_threads";
import { clearHeap } from "./clear-heap.ts";

/** Of a thread's young objects; a larger share saves little time and is held by every thread. */
const YOUNG_MB = 24;

type Said<Told, Answer> = { readonly told: Told } | { readonly answer: Answer };

const START = new URL("./start-thread.mjs", import.meta.url);

/** A thread, and what it runs. */
export type Thread = Worker & { readonly script: URL };

/**
 * Begins a thread.
 * @param script what it runs; it calls `answerJobs`
 * @param data what it is given when it starts: plain data, and memory that is shared
 */
export const startThread = (script: URL, data: unknown, resourceLimits: ResourceLimits = {}): Thread =>
  Object.assign(new Worker(START, { workerData: { script: script.href, data }, resourceLimits }), { script });

/**
 * Gives a thread that is at no other job one to do.
 * @param job plain data
 * @param hear told of what the thread says while it works
 * @throws what the job, or `hear`, throws; an error when the thread ends before its work
 */
export const ask = <Job, Told, Answer>(
  thread: Thread,
  job: Job,
  hear: (told: Told) => void = () => {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const listen = (said: Said<Told, Answer>): void => {
      try {
        if ("told" in said) hear(said.told);
        else {
          forget();
          resolve(said.answer);
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
  clearHeap();
  const threads = Array.from({ length: Math.min(availableParallelism(), jobs.length) }, () =>
    // What happens in a thread while it has no job concerns nobody.
    startThread(script, data, { maxYoungGenerationSizeMb: YOUNG_MB }).on("error", () => {}),
  );
  const waiting = jobs.entries();
  const lane = async (thread: Thread): Promise<void> => {
    for (const [at, job] of waiting) take(await ask<Job, Told, Answer>(thread, job, hear), at);
  };
  try {
    await Promise.all(threads.map(lane));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
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
