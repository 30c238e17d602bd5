import type { GuideRequest } from "../cache/standing-guide.ts";
import type { Progress } from "../model/progress.ts";
import { ask, startThread, type Thread } from "../threads/threads.ts";
import type { Written } from "./write-thread.ts";

const SCRIPT = new URL("./write-thread.ts", import.meta.url);

/** What the thread is begun with. */
export interface WriterData {
  readonly request: GuideRequest;
  /** One number, shared: the latest job. A job that is not the latest is broken off. */
  readonly latest: Int32Array;
}

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

/** The thread lives until it is closed, and keeps in memory what an edit leaves as it was; one that failed is begun anew. */
export function openWriter(request: GuideRequest): Writer {
  const latest = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  let thread: Thread | undefined;
  const begin = (): Thread => {
    const worker = startThread(SCRIPT, { request, latest } satisfies WriterData);
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
        return ask<number, Parameters<Progress>, Written>(thread, job, (at) => progress(...at));
      });
      before = written.catch(() => undefined);
      return written;
    },
    breakOff: () => void Atomics.add(latest, 0, 1),
    close: async () => void (await thread?.terminate()),
  };
}
