import { expect, test } from "vitest";
import { runInThreads } from "../../build/incremental/threads.ts";

const script = new URL("./counting-thread.ts", import.meta.url);

/** Doubles numbers in threads. */
async function doubled(jobs: readonly number[], unlucky = Number.NaN) {
  const told: string[] = [];
  const answers: number[] = [];
  await runInThreads<number, string, number>({
    script,
    data: { unlucky },
    jobs,
    onProgress: (words) => told.push(words),
    onResult: (answer, at) => {
      answers[at] = answer;
    },
  });
  return { told, answers };
}

test("every job is answered in its own place, whichever is done first, and reported once", async () => {
  const { told, answers } = await doubled([1, 2, 3, 4, 5, 6, 7, 8, 9]);
  expect(answers).toEqual([2, 4, 6, 8, 10, 12, 14, 16, 18]);
  expect(told.toSorted()).toEqual(Array.from({ length: 9 }, (_, i) => `doubled ${i + 1}`));
});

test("no jobs, no threads, no answers", async () => {
  expect(await doubled([])).toEqual({ told: [], answers: [] });
});

test("what a job throws is thrown as it is", async () => {
  await expect(doubled([1, 2, 3, 4], 3)).rejects.toThrow(new RangeError("3 cannot be doubled"));
});

test("what onResult throws is thrown", async () => {
  const failing = runInThreads<number, string, number>({
    script,
    data: {},
    jobs: [1, 2, 3],
    onResult: () => {
      throw new Error("no room for the answer");
    },
  });
  await expect(failing).rejects.toThrow("no room for the answer");
});

test("a thread that ends before its work is an error, not a wait for ever", async () => {
  await expect(doubled([1, -1, 2])).rejects.toThrow(/ended before its work/);
});
