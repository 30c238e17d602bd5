/**
 * Root of a continuous function between two points where its signs differ, by regula falsi with the Illinois rule.
 * @param tolerance how far the last step may go, in the unit of `low` and `high`
 * @throws RangeError when the signs are the same
 * @source Dowell and Jarratt (1971), BIT 11:168
 */
export function findRoot(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new RangeError(`no change of sign between ${low} and ${high}`);
  const most = 200;
  for (let i = 0; i < most && Math.abs(b - a) > tolerance; i++) {
    const c = (a * fb - b * fa) / (fb - fa);
    const fc = f(c);
    if (fc === 0 || Math.abs(c - b) < tolerance / 2) return c;
    if (fc > 0 !== fb > 0) [a, fa] = [b, fb];
    else fa /= 2;
    [b, fb] = [c, fc];
  }
  return b;
}
