import { linearRegression } from "simple-statistics";

/**
 * How something grows with size: the slope of the least-squares line through the logarithms, 1 for what grows in
 * proportion, 2 for its square.
 * @param points size and what was measured, both above 0
 * @returns undefined for fewer than two sizes
 */
export function growthExponent(
  points: readonly (readonly [size: number, measured: number])[],
): number | undefined {
  if (new Set(points.map(([size]) => size)).size < 2) return undefined;
  return linearRegression(points.map(([size, measured]) => [Math.log(size), Math.log(measured)])).m;
}
