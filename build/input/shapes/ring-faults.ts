import Flatbush from "flatbush";
import { orient2d } from "robust-predicates";
import type { Fault } from "../../model/fault.ts";
import type { LonLat } from "../../model/lake-shape.ts";

/** A ring as it was read, with the list position of each of its places. */
export type RawRing = readonly LonLat[];

/** What is wrong with one ring by itself; undefined when it is closed. */
export function ringFault(ring: RawRing): Fault | undefined {
  const [first] = ring;
  const last = ring.at(-1);
  if (first === undefined || last === undefined || ring.length < 4)
    return {
      code: "ring-too-short",
      message: `this ring has ${ring.length} positions; a closed ring has at least four`,
      hint: "draw at least a triangle and repeat its first position at the end",
    };
  if (first[0] !== last[0] || first[1] !== last[1])
    return {
      code: "ring-not-closed",
      message: "this ring is not closed: its last position is not its first",
      hint: `repeat [${first.join(", ")}] at the end`,
    };
  return undefined;
}

/** Two edges that cross: the rings they belong to, and where each edge begins in its ring. */
export interface Crossing {
  readonly rings: readonly [number, number];
  readonly edges: readonly [number, number];
  readonly at: LonLat;
}

/** True where two edges pass through each other; touching is not crossing. */
function cross(a: LonLat, b: LonLat, c: LonLat, d: LonLat): boolean {
  const side = (p: LonLat, q: LonLat, r: LonLat): number => orient2d(p[0], p[1], q[0], q[1], r[0], r[1]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function meetingPoint(a: LonLat, b: LonLat, c: LonLat, d: LonLat): LonLat {
  const [abx, aby, cdx, cdy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const share = ((c[0] - a[0]) * cdy - (c[1] - a[1]) * cdx) / (abx * cdy - aby * cdx);
  return [a[0] + share * abx, a[1] + share * aby];
}

/** The first crossing of each pair of rings, a ring's crossing with itself included. */
export function crossingsOf(rings: readonly RawRing[]): Crossing[] {
  const edges = rings.flatMap((ring, r) =>
    ring.slice(1).flatMap((end, i) => {
      const start = ring[i];
      return start === undefined ? [] : [{ ring: r, edge: i, start, end }];
    }),
  );
  if (edges.length === 0) return [];
  const index = new Flatbush(edges.length);
  for (const { start, end } of edges)
    index.add(
      Math.min(start[0], end[0]),
      Math.min(start[1], end[1]),
      Math.max(start[0], end[0]),
      Math.max(start[1], end[1]),
    );
  index.finish();
  const found = new Map<string, Crossing>();
  for (const [i, one] of edges.entries()) {
    const near = index.search(
      Math.min(one.start[0], one.end[0]),
      Math.min(one.start[1], one.end[1]),
      Math.max(one.start[0], one.end[0]),
      Math.max(one.start[1], one.end[1]),
      (j) => j > i,
    );
    for (const j of near) {
      const other = edges[j];
      if (other === undefined || found.has(`${one.ring} ${other.ring}`)) continue;
      if (!cross(one.start, one.end, other.start, other.end)) continue;
      found.set(`${one.ring} ${other.ring}`, {
        rings: [one.ring, other.ring],
        edges: [one.edge, other.edge],
        at: meetingPoint(one.start, one.end, other.start, other.end),
      });
    }
  }
  return [...found.values()];
}

/**
 * Twice the area of a ring in square degrees, positive where it runs counter-clockwise. Counted from the ring's own start,
 * so that small rings far from the origin keep their digits.
 */
function twiceSignedArea(ring: RawRing): number {
  const [west, south] = ring[0] ?? [0, 0];
  return ring.reduce((sum, [lon, lat], i) => {
    const before = ring[i - 1];
    if (before === undefined) return sum;
    return sum + (before[0] - west) * (lat - south) - (lon - west) * (before[1] - south);
  }, 0);
}

/** What is wrong with a ring that runs back on itself; undefined when it encloses something. */
export const areaFault = (ring: RawRing): Fault | undefined =>
  twiceSignedArea(ring) === 0
    ? {
        code: "ring-without-area",
        message: "this ring encloses nothing",
        hint: "draw the shore all the way round, or remove the ring",
      }
    : undefined;

/** The ring as GeoJSON wants it: outer rings counter-clockwise, islands clockwise (RFC 7946, 3.1.6). */
export const rewindRing = (ring: RawRing, isOuter: boolean): RawRing =>
  twiceSignedArea(ring) > 0 === isOuter ? ring : ring.toReversed();

/** True where a place lies inside a ring. */
export function isInRing([lon, lat]: LonLat, ring: RawRing): boolean {
  let inside = false;
  for (const [i, b] of ring.entries()) {
    const a = ring[i - 1];
    if (a === undefined || a[1] <= lat === b[1] <= lat) continue;
    if (a[0] + ((lat - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) > lon) inside = !inside;
  }
  return inside;
}
