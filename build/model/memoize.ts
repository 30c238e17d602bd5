import type { Diagnostic } from "./diagnostic.ts";

/** The plain data, part by part, that something is made from: the same data, the same result. */
export type Inputs = Readonly<Record<string, unknown>>;

/**
 * Returns what `compute` makes of `inputs`: computed now, or kept from an earlier run.
 * `compute` must be pure and see nothing but `inputs`; both must be plain data: no functions, no class instances.
 * @param kind what is computed; two computations never share a kind
 */
export type Memoize = <In, Result>(kind: string, inputs: In, compute: (inputs: In) => Result) => Result;

export const unmemoized: Memoize = (_kind, inputs, compute) => compute(inputs);

/**
 * Returns what `compute` makes: computed now, or the very same object as the last time under this name while every input
 * is still the same value or the same object.
 * `compute` must be pure and see nothing but `inputs`, and its result must never be changed. The result may be anything,
 * functions included: it is kept in memory, no longer than the process lives.
 * @param name what is computed; two results never share a name
 */
export type MemoizeLast = <Result>(name: string, inputs: readonly unknown[], compute: () => Result) => Result;

export const unmemoizedLast: MemoizeLast = (_name, _inputs, compute) => compute();

/**
 * Names the state of a file without reading it: the same stamp, the same bytes. Undefined where that cannot be relied
 * upon: for anything but a plain file, and for a file written a moment ago.
 * @param file its absolute path
 */
export type FileStamp = (file: string) => string | undefined;

/** Reads a part of the club folder, and adds its problems to `problems`. */
export type MemoizeRead = <T>(
  name: string,
  inputs: readonly unknown[],
  read: (problems: Diagnostic[]) => T,
  problems: Diagnostic[],
) => T;

/** Keeps what was last read together with the problems found in it. */
export const memoizeRead =
  (memoizeLast: MemoizeLast): MemoizeRead =>
  (name, inputs, read, problems) => {
    const { value, found } = memoizeLast(name, inputs, () => {
      const collected: Diagnostic[] = [];
      return { value: read(collected), found: collected };
    });
    // One by one: a call takes no more than some 100,000 arguments.
    for (const problem of found) problems.push(problem);
    return value;
  };
