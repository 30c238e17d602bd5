import type { Point } from "./plane.ts";

/** A lake cut by parallel straight lines: where a line meets its shores. */
export interface ScanLines {
  /** The least and the greatest distance across at which a line still meets the lake, m. */
  readonly least: number;
  readonly most: number;
  /** How far a point lies along its line, and across the lines, m. */
  readonly along: (point: Point) => number;
  readonly across: (point: Point) => number;
  /** Where the line at `across` meets the shores, in order along it: on to water, off it, on to it again. */
  readonly at: (across: number) => number[];
  /** The same in no order. */
  readonly crossings: (across: number) => number[];
}

const ROWS = 256;

/**
 * Makes ready to cut rings by lines that run towards `bearing_deg`. Edges are sorted into rows once, so that a cut looks
 * only at the few edges of its row.
 * @param rings closed rings, islands among them
 */
export function scanLinesTowards(rings: readonly (readonly Point[])[], bearing_deg: number): ScanLines {
  const bearing = (bearing_deg * Math.PI) / 180;
  const [east, north] = [Math.sin(bearing), Math.cos(bearing)];
  const along = ({ x, y }: Point): number => x * east + y * north;
  const across = ({ x, y }: Point): number => y * east - x * north;

  /** Four numbers an edge: across and along of its start, across and along of its end. */
  const edges: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const ring of rings) {
    let before: Point | undefined;
    for (const point of ring) {
      if (before !== undefined) edges.push(across(before), along(before), across(point), along(point));
      least = Math.min(least, across(point));
      most = Math.max(most, across(point));
      before = point;
    }
  }
  const rowOf = (distance: number): number =>
    Math.min(ROWS - 1, Math.max(0, Math.floor(((distance - least) / (most - least)) * ROWS)));
  const rows = Array.from({ length: ROWS }, (): number[] => []);
  for (let edge = 0; edge < edges.length; edge += 4) {
    const [a, b] = [rowOf(edges[edge] ?? 0), rowOf(edges[edge + 2] ?? 0)];
    for (let row = Math.min(a, b); row <= Math.max(a, b); row++) rows[row]?.push(edge);
  }
  const crossings = (distance: number): number[] => {
    const found: number[] = [];
    for (const edge of rows[rowOf(distance)] ?? []) {
      const a = edges[edge] ?? 0;
      const b = edges[edge + 2] ?? 0;
      // Half open, so that a line through a corner meets one of its two edges, not both.
      if (a <= distance === b <= distance) continue;
      const from = edges[edge + 1] ?? 0;
      found.push(from + ((distance - a) / (b - a)) * ((edges[edge + 3] ?? 0) - from));
    }
    return found;
  };
  return {
    least,
    most,
    along,
    across,
    at: (distance) => crossings(distance).sort((one, other) => one - other),
    crossings,
  };
}

/** How far it is from `point` along its line to the next shore, m; 0 where the point is not on the water. */
export function distanceToShore_m(cuts: ScanLines, point: Point): number {
  const start = cuts.along(point);
  let nearest = Number.POSITIVE_INFINITY;
  let ahead = 0;
  for (const shore of cuts.crossings(cuts.across(point))) {
    if (shore <= start) continue;
    ahead++;
    nearest = Math.min(nearest, shore);
  }
  return ahead % 2 === 1 ? nearest - start : 0;
}

/** The longest stretch of water on any of `lines` evenly spaced lines, m. */
export function longestFetch_m(cuts: ScanLines, lines: number): number {
  const step = (cuts.most - cuts.least) / lines;
  let longest = 0;
  for (let line = 0; line < lines; line++) {
    const shores = cuts.at(cuts.least + (line + 0.5) * step);
    for (let i = 0; i + 1 < shores.length; i += 2)
      longest = Math.max(longest, (shores[i + 1] ?? 0) - (shores[i] ?? 0));
  }
  return longest;
}
