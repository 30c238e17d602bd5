import type { Point } from "./plane.ts";

/**
 * A line's points at most `most_m` and, except for its last one, at least `least_m` apart.
 */
export function spaced(line: readonly Point[], least_m: number, most_m: number): Point[] {
  const points: Point[] = [];
  for (const [i, point] of line.entries()) {
    const before = points.at(-1);
    if (before === undefined) {
      points.push(point);
      continue;
    }
    const [dx, dy] = [point.x - before.x, point.y - before.y];
    const length = Math.hypot(dx, dy);
    if (length < least_m && i < line.length - 1) continue;
    const steps = Math.max(1, Math.ceil(length / most_m));
    for (let step = 1; step <= steps; step++)
      points.push({ x: before.x + (dx * step) / steps, y: before.y + (dy * step) / steps });
  }
  return points;
}
