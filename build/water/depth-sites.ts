import { Delaunay } from "d3-delaunay";
import type { Point } from "./plane.ts";

/** A place whose depth is known, or taken to be. */
export interface Site extends Point {
  readonly depth_m: number;
}

/** What is known of a lake's depths, on its plane. */
export interface KnownDepths {
  /** Points of the shoreline, close together. */
  readonly shore: readonly Point[];
  /** Points of the contours, close together; the soundings. */
  readonly sites: readonly Site[];
  /** The club's own greatest depth, where no place is known to be that deep, and what lies inside the deepest contour. */
  readonly tip?: { readonly depth_m: number; readonly holds: (point: Point) => boolean };
}

/** Three neighbouring places of one depth leave open what lies between them. */
interface Flat {
  readonly depth_m: number;
  /** The point farthest from all known depths nearby, and how far it is. */
  readonly middle: Point;
  readonly clear_m: number;
}

/** The middle and the radius of the circle through three points; undefined when they lie on a line. */
function circleThrough(a: Point, b: Point, c: Point): { middle: Point; radius: number } | undefined {
  const [bx, by, cx, cy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y];
  const d = 2 * (bx * cy - by * cx);
  if (d === 0) return undefined;
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
  const [x, y] = [(cy * b2 - by * c2) / d, (bx * c2 - cx * b2) / d];
  return { middle: { x: a.x + x, y: a.y + y }, radius: Math.hypot(x, y) };
}

/** Points nearer to each other than this share of the least clear distance are one point, written twice. */
const SLIVER = 0.01;

const isNear = (a: Point, b: Point, least_m: number): boolean => Math.hypot(a.x - b.x, a.y - b.y) < least_m;

const isSliver = (a: Point, b: Point, c: Point, least_m: number): boolean =>
  isNear(a, b, least_m) || isNear(b, c, least_m) || isNear(c, a, least_m);

/** Triangles of one depth whose middle is on the water and at least `least_m` from everything known. */
function flatsOf(sites: readonly Site[], least_m: number, isWater: (point: Point) => boolean): Flat[] {
  const { triangles } = triangulate(sites);
  const flats: Flat[] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [sites[triangles[i] ?? 0], sites[triangles[i + 1] ?? 0], sites[triangles[i + 2] ?? 0]];
    if (a === undefined || b === undefined || c === undefined) continue;
    if (a.depth_m !== b.depth_m || a.depth_m !== c.depth_m) continue;
    if (isSliver(a, b, c, least_m * SLIVER)) continue;
    const circle = circleThrough(a, b, c);
    if (circle === undefined || circle.radius < least_m || !isWater(circle.middle)) continue;
    flats.push({ depth_m: a.depth_m, middle: circle.middle, clear_m: circle.radius });
  }
  return flats;
}

/** Delaunay's triangles over places. */
export function triangulate(points: readonly Point[]): Delaunay<Point> {
  const flat = new Float64Array(2 * points.length);
  let place = 0;
  for (const { x, y } of points) {
    flat[place++] = x;
    flat[place++] = y;
  }
  return new Delaunay(flat);
}

/** How near the next known depth the middle of a bay may come: it lies on the shallow side of it. */
const SHORT_OF_NEXT = 0.9;

/**
 * Every place to interpolate between: shore, known depths, and a place in the middle of each stretch they leave open.
 * In a bay that no depth reaches the bottom falls off as it does from the shore to the nearest known depth, but stays
 * above that depth. Inside the deepest contour it falls on to the club's own greatest depth. Between other lines of one
 * depth nothing is known, and nothing is added.
 */
export function depthSites(
  { shore, sites, tip }: KnownDepths,
  cell_m: number,
  isWater: (point: Point) => boolean,
): Site[] {
  const known = [...shore.map((point) => ({ ...point, depth_m: 0 })), ...sites];
  const deepest_m = sites.reduce((most, { depth_m }) => Math.max(most, depth_m), 0);
  const flats = flatsOf(known, 1.5 * cell_m, isWater);
  const nearestSite = triangulate(sites);
  const nearestShore = triangulate(shore);
  const isDeepest = ({ depth_m, middle }: Flat): boolean =>
    depth_m === deepest_m && tip !== undefined && tip.depth_m > deepest_m && tip.holds(middle);
  const clearest_m = flats.filter(isDeepest).reduce((most, { clear_m }) => Math.max(most, clear_m), 0);
  const depthOf = (flat: Flat): number | undefined => {
    const { depth_m, middle, clear_m } = flat;
    if (tip !== undefined && isDeepest(flat))
      return deepest_m + ((tip.depth_m - deepest_m) * clear_m) / clearest_m;
    if (depth_m > 0) return undefined;
    const next = sites[nearestSite.find(middle.x, middle.y)];
    if (next === undefined) return undefined;
    const land = shore[nearestShore.find(next.x, next.y)];
    const off_m = land === undefined ? 0 : Math.hypot(next.x - land.x, next.y - land.y);
    return Math.min(SHORT_OF_NEXT, off_m === 0 ? SHORT_OF_NEXT : clear_m / off_m) * next.depth_m;
  };
  const taken = new Set<string>();
  const filled = flats.flatMap((flat): Site[] => {
    const depth_m = depthOf(flat);
    const place = `${Math.round(flat.middle.x / cell_m)} ${Math.round(flat.middle.y / cell_m)}`;
    if (depth_m === undefined || taken.has(place)) return [];
    taken.add(place);
    return [{ ...flat.middle, depth_m }];
  });
  return [...known, ...filled];
}
