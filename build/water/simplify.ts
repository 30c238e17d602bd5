import simplify from "simplify-js";
import type { Point } from "./plane.ts";

/** A line or ring with fewer points, nowhere farther than `tolerance_m` from the true one. Douglas & Peucker (1973). */
export const simplifiedLine = (line: readonly Point[], tolerance_m: number): Point[] =>
  simplify([...line], tolerance_m, true);

/**
 * Lines with at most `most` points in all, as true as that allows. Rings too small to draw are left out, the first never.
 */
export function simplifiedLines(
  lines: readonly (readonly Point[])[],
  tolerance_m: number,
  most: number,
): Point[][] {
  const drawn = lines
    .map((line) => simplifiedLine(line, tolerance_m))
    .filter((line, i) => i === 0 || line.length >= 4 || line[0] !== line.at(-1));
  return drawn.length < most && drawn.reduce((sum, line) => sum + line.length, 0) > most
    ? simplifiedLines(lines, tolerance_m * 1.5, most)
    : drawn;
}
