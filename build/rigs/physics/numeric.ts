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

/** Nodes above 0 and weights of 24-point Gauss-Legendre on -1 to 1. Abramowitz and Stegun, table 25.4. */
const GAUSS_24 = [
  [0.06405689286260563, 0.12793819534675202],
  [0.1911188674736163, 0.12583745634682825],
  [0.3150426796961634, 0.1216704729278033],
  [0.4337935076260451, 0.11550566805372552],
  [0.5454214713888396, 0.10744427011596556],
  [0.6480936519369755, 0.09761865210411393],
  [0.7401241915785544, 0.0861901615319532],
  [0.820001985973903, 0.07334648141108016],
  [0.8864155270044011, 0.05929858491543636],
  [0.9382745520027328, 0.04427743881741941],
  [0.9747285559713095, 0.02853138862893356],
  [0.9951872199970213, 0.01234122979998869],
] as const;

/** Integral of `f` from `from` to `to`. */
export const gaussLegendre = (f: (x: number) => number, from: number, to: number): number => {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  return half * GAUSS_24.reduce((sum, [x, w]) => sum + w * (f(middle - half * x) + f(middle + half * x)), 0);
};
