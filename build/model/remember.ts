/**
 * Gives what `compute` makes of `needs`: made now, or as it was kept from an earlier run.
 * `compute` must be pure and see nothing but `needs`; both must be plain data: no functions, no class instances.
 * @param kind what is computed; two computations never share a kind
 */
export type Remember = <Needs, Result>(
  kind: string,
  needs: Needs,
  compute: (needs: Needs) => Result,
) => Result;

/** Remembers nothing. */
export const computeAlways: Remember = (_kind, needs, compute) => compute(needs);
