import { Worker } from "node:worker_threads";
import type { Progress, Stage } from "../model/progress.ts";
import type { GuideRequest } from "../pipeline.ts";
import type { Written } from "./write-thread.ts";

const START = new URL("../threads/start-thread.mjs", import.meta.url);
const SCRIPT = new URL("./write-thread.ts", import.meta.url);

/** What the thread is begun with. */
export interface WriterData {
  readonly request: GuideRequest;
  /** One number, shared: the latest job. A job that is not the latest is broken off. */
  readonly latest: Int32Array;
}

/** What the thread says of the job it is at. */
export type WriterSaid =
  | { readonly progress: readonly [stage: Stage, done: number, total: number] }
  | { readonly written: Written };

/** Writes guides in a thread of its own, so that whoever asks for a page meanwhile need not wait. */
export interface Writer {
  /**
   * Has the club folder's guide written as the folder stands, once the job before has ended. One that is overtaken is
   * broken off.
   */
  write(progress: Progress): Promise<Written>;
  /** Breaks off what is being written. */
  breakOff(): void;
  /** Ends the thread. */
  close(): Promise<void>;
}

/** Tells of one job of a thread. */
const answerOf = (worker: Worker, job: number, progress: Progress): Promise<Written> =>
  new Promise((resolve, reject) => {
    const hear = (said: WriterSaid): void => {
      if ("progress" in said) progress(...said.progress);
      else {
        forget();
        resolve(said.written);
      }
    };
    const fail = (error: unknown): void => {
      forget();
      reject(error);
    };
    const end = (): void => fail(new Error("the thread that writes the guide ended before its work"));
    const forget = (): void => void worker.off("message", hear).off("error", fail).off("exit", end);
    worker.on("message", hear).on("error", fail).on("exit", end);
    worker.postMessage(job);
  });

/** The thread lives until it is closed, and keeps in memory what an edit leaves as it was; one that failed is begun anew. */
export function openWriter(request: GuideRequest): Writer {
  const latest = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  let thread: Worker | undefined;
  const begin = (): Worker => {
    const worker = new Worker(START, {
      workerData: { script: SCRIPT.href, data: { request, latest } satisfies WriterData },
    });
    worker.on("error", () => {
      if (thread === worker) thread = undefined;
    });
    return worker;
  };
  thread = begin();
  let before: Promise<unknown> = Promise.resolve();
  return {
    write: (progress) => {
      const job = Atomics.add(latest, 0, 1) + 1;
      const written = before.then(() => {
        thread ??= begin();
        return answerOf(thread, job, progress);
      });
      before = written.catch(() => undefined);
      return written;
    },
    breakOff: () => void Atomics.add(latest, 0, 1),
    close: async () => void (await thread?.terminate()),
  };
}
