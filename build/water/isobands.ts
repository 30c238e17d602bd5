import { contours } from "d3-contour";
import * as polyclip from "polyclip-ts";
import type { DepthField, Grid } from "./bathymetric-grid.ts";
import { type Point, simplifiedLine } from "./plane.ts";

/** A polygon on the plane: its outer ring, then its holes. */
export type PlanePolygon = readonly (readonly Point[])[];

/** Twice the area, positive where the ring runs counter-clockwise. */
const twiceSignedArea = (ring: readonly Point[]): number =>
  ring.reduce((sum, { x, y }, i) => {
    const before = ring[i - 1];
    return before === undefined ? sum : sum + before.x * y - x * before.y;
  }, 0);

/** The ring as a GeoJSON polygon has it: outer rings counter-clockwise, holes clockwise. */
const withWinding = (ring: readonly Point[], isOuter: boolean): readonly Point[] =>
  twiceSignedArea(ring) > 0 === isOuter ? ring : ring.toReversed();

/** Lines drawn from a grid are true to a part of its cell. */
const TOLERANCE_CELLS = 0.3;

/** The parts of a lake that are at least `depth_m` deep. Marching squares, d3-contour. */
export function isobathPolygons(
  field: DepthField,
  { corner, cell_m, columns, rows }: Grid,
  depth_m: number,
): PlanePolygon[] {
  const { coordinates } = contours().size([columns, rows]).contour(field, depth_m);
  return coordinates.flatMap((polygon): PlanePolygon[] => {
    const rings = polygon.map((ring) =>
      // d3-contour puts node (0, 0) at (0.5, 0.5).
      simplifiedLine(
        ring.map(([x = 0, y = 0]) => ({
          x: corner.x + (x - 0.5) * cell_m,
          y: corner.y + (y - 0.5) * cell_m,
        })),
        TOLERANCE_CELLS * cell_m,
      ),
    );
    const [outer, ...holes] = rings;
    if (outer === undefined || outer.length < 4) return [];
    return [
      [
        withWinding(outer, true),
        ...holes.filter((hole) => hole.length >= 4).map((hole) => withWinding(hole, false)),
      ],
    ];
  });
}

/** True where a point lies within a closed ring. */
export function pointInRing(ring: readonly Point[], { x, y }: Point): boolean {
  let inside = false;
  for (const [i, b] of ring.entries()) {
    const a = ring[i - 1];
    if (a === undefined || a.y <= y === b.y <= y) continue;
    if (a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x) > x) inside = !inside;
  }
  return inside;
}

/**
 * What is left of `all` without `inner`, which lies within it and nowhere crosses it: rings change their part, none is cut.
 */
export function subtractPolygons(
  all: readonly PlanePolygon[],
  inner: readonly PlanePolygon[],
): PlanePolygon[] {
  const rings = [
    ...all.flatMap((polygon) => polygon.map((ring, i) => ({ ring, isOuter: i === 0 }))),
    ...inner.flatMap((polygon) => polygon.map((ring, i) => ({ ring: ring.toReversed(), isOuter: i > 0 }))),
  ];
  const outers = rings
    .filter(({ isOuter }) => isOuter)
    .map(({ ring }) => ({ ring, size: Math.abs(twiceSignedArea(ring)), holes: [] as (readonly Point[])[] }))
    .sort((a, b) => a.size - b.size);
  for (const { ring, isOuter } of rings) {
    const [start] = ring;
    if (isOuter || start === undefined) continue;
    const size = Math.abs(twiceSignedArea(ring));
    outers.find((outer) => outer.size > size && pointInRing(outer.ring, start))?.holes.push(ring);
  }
  return outers.map(({ ring, holes }) => [ring, ...holes]);
}

type Polygons = Parameters<typeof polyclip.intersection>[0];
type Edge = readonly [from: Point, to: Point];

const edgesOf = (rings: readonly (readonly Point[])[]): Edge[] =>
  rings.flatMap((ring) => ring.slice(1).map((to, i): Edge => [ring[i] ?? to, to]));

/** Twice the area of a triangle, positive where its corners run counter-clockwise. */
const orientation = (a: Point, b: Point, c: Point): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const apart = ([a, b]: Edge, [c, d]: Edge): boolean =>
  Math.max(a.x, b.x) < Math.min(c.x, d.x) ||
  Math.min(a.x, b.x) > Math.max(c.x, d.x) ||
  Math.max(a.y, b.y) < Math.min(c.y, d.y) ||
  Math.min(a.y, b.y) > Math.max(c.y, d.y) ||
  orientation(a, b, c) * orientation(a, b, d) > 0 ||
  orientation(c, d, a) * orientation(c, d, b) > 0;

const isIn = (rings: readonly (readonly Point[])[], point: Point | undefined): boolean =>
  point !== undefined && rings.filter((ring) => pointInRing(ring, point)).length % 2 === 1;

/** True where polygons lie wholly within a shoreline that they nowhere touch, with no island of it in them. */
function lieWithin(shore: readonly (readonly Point[])[], rings: readonly (readonly Point[])[]): boolean {
  const [shoreEdges, edges] = [edgesOf(shore), edgesOf(rings)];
  return (
    edges.every((edge) => shoreEdges.every((shoreEdge) => apart(edge, shoreEdge))) &&
    rings.every(([point]) => isIn(shore, point)) &&
    shore.every(([point]) => !isIn(rings, point))
  );
}

const numbered = (polygons: readonly PlanePolygon[]): Polygons =>
  polygons.map((polygon) => polygon.map((ring) => ring.map(({ x, y }): [number, number] => [x, y])));

/**
 * The part of some polygons that lies within a shoreline; outer rings counter-clockwise, holes clockwise. Most need no
 * cutting, which is costly.
 */
export const clipPolygons = (
  shoreline: readonly PlanePolygon[],
  polygons: readonly PlanePolygon[],
): readonly PlanePolygon[] =>
  lieWithin(shoreline.flat(), polygons.flat())
    ? polygons
    : polyclip
        .intersection(numbered(polygons), numbered(shoreline))
        .map((polygon) => polygon.map((ring) => ring.map(([x, y]) => ({ x, y }))));
