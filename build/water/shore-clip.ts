import * as polyclip from "polyclip-ts";
import { holds, type PlanePolygon } from "./isobands.ts";
import type { Point } from "./plane.ts";

type Polygons = Parameters<typeof polyclip.intersection>[0];
type Edge = readonly [from: Point, to: Point];

const edgesOf = (rings: readonly (readonly Point[])[]): Edge[] =>
  rings.flatMap((ring) => ring.slice(1).map((to, i): Edge => [ring[i] ?? to, to]));

/** Twice the area of a triangle, positive where its corners run counter-clockwise. */
const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const apart = ([a, b]: Edge, [c, d]: Edge): boolean =>
  Math.max(a.x, b.x) < Math.min(c.x, d.x) ||
  Math.min(a.x, b.x) > Math.max(c.x, d.x) ||
  Math.max(a.y, b.y) < Math.min(c.y, d.y) ||
  Math.min(a.y, b.y) > Math.max(c.y, d.y) ||
  turn(a, b, c) * turn(a, b, d) > 0 ||
  turn(c, d, a) * turn(c, d, b) > 0;

const isIn = (rings: readonly (readonly Point[])[], point: Point | undefined): boolean =>
  point !== undefined && rings.filter((ring) => holds(ring, point)).length % 2 === 1;

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
export const clippedTo = (
  shoreline: readonly PlanePolygon[],
  polygons: readonly PlanePolygon[],
): readonly PlanePolygon[] =>
  lieWithin(shoreline.flat(), polygons.flat())
    ? polygons
    : polyclip
        .intersection(numbered(polygons), numbered(shoreline))
        .map((polygon) => polygon.map((ring) => ring.map(([x, y]) => ({ x, y }))));
