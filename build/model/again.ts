/**
 * Gives what `make` makes: made now, or the very same as the last time under this name, while every part of `from` still
 * is the same value or the same object.
 * `make` must be pure and see nothing but `from`, and what it makes must never be changed. Unlike what is remembered it
 * may be anything, for it is kept in memory and no longer than the process lives.
 * @param name what is made; two things never share a name
 */
export type Again = <Result>(name: string, from: readonly unknown[], make: () => Result) => Result;

/**
 * Names the state a file is in, as far as the disk tells without reading it: the same mark, the same bytes. Undefined where
 * that cannot be relied upon: for what is no plain file, and for one that was written a moment ago.
 * @param file its whole path
 */
export type MarkOf = (file: string) => string | undefined;

/** Makes everything anew. */
export const makeAnew: Again = (_name, _from, make) => make();
