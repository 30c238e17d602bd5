import { contours } from "d3-contour";
import type { DepthField } from "./depth-field.ts";
import type { Grid } from "./grid.ts";
import type { Point } from "./plane.ts";
import { simplifiedLine } from "./simplify.ts";

/** A polygon on the plane: its outer ring, then its holes. */
export type PlanePolygon = readonly (readonly Point[])[];

/** Twice the area, positive where the ring runs counter-clockwise. */
const turn = (ring: readonly Point[]): number =>
  ring.reduce((sum, { x, y }, i) => {
    const before = ring[i - 1];
    return before === undefined ? sum : sum + before.x * y - x * before.y;
  }, 0);

/** The ring as a GeoJSON polygon has it: outer rings counter-clockwise, holes clockwise. */
const wound = (ring: readonly Point[], isOuter: boolean): readonly Point[] =>
  turn(ring) > 0 === isOuter ? ring : ring.toReversed();

/** Lines drawn from a grid are true to a part of its cell. */
const TOLERANCE_CELLS = 0.3;

/** The parts of a lake that are at least `depth_m` deep. Marching squares, d3-contour. */
export function deeperThan(
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
      [wound(outer, true), ...holes.filter((hole) => hole.length >= 4).map((hole) => wound(hole, false))],
    ];
  });
}

/** True where a point lies within a closed ring. */
export function holds(ring: readonly Point[], { x, y }: Point): boolean {
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
export function without(all: readonly PlanePolygon[], inner: readonly PlanePolygon[]): PlanePolygon[] {
  const rings = [
    ...all.flatMap((polygon) => polygon.map((ring, i) => ({ ring, isOuter: i === 0 }))),
    ...inner.flatMap((polygon) => polygon.map((ring, i) => ({ ring: ring.toReversed(), isOuter: i > 0 }))),
  ];
  const outers = rings
    .filter(({ isOuter }) => isOuter)
    .map(({ ring }) => ({ ring, size: Math.abs(turn(ring)), holes: [] as (readonly Point[])[] }))
    .sort((a, b) => a.size - b.size);
  for (const { ring, isOuter } of rings) {
    const [start] = ring;
    if (isOuter || start === undefined) continue;
    const size = Math.abs(turn(ring));
    outers.find((outer) => outer.size > size && holds(outer.ring, start))?.holes.push(ring);
  }
  return outers.map(({ ring, holes }) => [ring, ...holes]);
}
