/**
 * Gives what `make` makes: made now, or the very same as the last time under this name, while every part of `from` still
 * is the same value or the same object.
 * `make` must be pure and see nothing but `from`, and what it makes must never be changed. Unlike what is remembered it
 * may be anything, for it is kept in memory and no longer than the process lives.
 */
export type Again = <Result>(name: string, from: readonly unknown[], make: () => Result) => Result;

/** Makes everything anew. */
export const makeAnew: Again = (_name, _from, make) => make();
