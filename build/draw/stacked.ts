import type { GuideLake } from "../guide/guide-schema.ts";
import { DAY_STATES } from "../model/phase.ts";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The lower edge of each state's band for each day, from the top down (ice on top): `edges[state][day]`, 0 to `height`.
 * The last edge is the bottom itself, so the bands fill the whole height on every day.
 */
export function stackedEdges(daily: GuideLake["daily"], height: number): number[][] {
  return DAY_STATES.map((_, state) =>
    daily.map((day) => {
      const all = DAY_STATES.reduce((sum, name) => sum + day[name], 0);
      const above = DAY_STATES.slice(0, state + 1).reduce((sum, name) => sum + day[name], 0);
      return (height * above) / all;
    }),
  );
}

const onTheWay = (a: Point, b: Point, c: Point): boolean =>
  Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) < 0.05 * (c.x - a.x);

/** Leaves out points that lie on the straight line between their neighbours, within a twentieth of a unit. */
export function withoutStraightPoints(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const [i, point] of points.entries()) {
    const before = kept.at(-1);
    const after = points[i + 1];
    if (before === undefined || after === undefined || !onTheWay(before, point, after)) kept.push(point);
  }
  return kept;
}
