import { Delaunay } from "d3-delaunay";
import type { Point } from "./plane.ts";
import { scanLinesTowards } from "./scan-lines.ts";

/** Square cells over a lake; a node in the middle of each. Node (column, row) is number row * columns + column. */
export interface Grid {
  /** Place of node 0. */
  readonly corner: Point;
  readonly cell_m: number;
  readonly columns: number;
  readonly rows: number;
  /** 1 where the node lies on water, else 0. */
  readonly water: Uint8Array;
  /** How many nodes lie on water. */
  readonly waterNodes: number;
}

/** Nodes on the water: enough that no share of the lake is wrong by more than a few parts in a thousand. */
const WANTED_NODES = 12_000;
/** A lake of many arms needs a larger frame; beyond this its cells grow instead. */
const MOST_NODES = 240_000;
/** Dry cells around the lake. */
const MARGIN = 2;

/** Lays a grid over a lake. @param rings closed rings on the plane, islands among them */
export function buildGrid(rings: readonly (readonly Point[])[], area_m2: number): Grid {
  const east = scanLinesTowards(rings, 90);
  const north = scanLinesTowards(rings, 0);
  // Lines to the north are told apart by how far west they run: least and most swap sides.
  const [west_m, width_m] = [-north.most, north.most - north.least];
  const [south_m, height_m] = [east.least, east.most - east.least];
  const cell_m = Math.max(Math.sqrt(area_m2 / WANTED_NODES), Math.sqrt((width_m * height_m) / MOST_NODES));
  const columns = Math.ceil(width_m / cell_m) + 2 * MARGIN;
  const rows = Math.ceil(height_m / cell_m) + 2 * MARGIN;
  const corner = { x: west_m - (MARGIN - 0.5) * cell_m, y: south_m - (MARGIN - 0.5) * cell_m };
  const water = new Uint8Array(columns * rows);
  let waterNodes = 0;
  for (let row = 0; row < rows; row++) {
    const shores = east.at(corner.y + row * cell_m);
    for (let i = 0; i + 1 < shores.length; i += 2) {
      const first = Math.ceil(((shores[i] ?? 0) - corner.x) / cell_m);
      const last = Math.floor(((shores[i + 1] ?? 0) - corner.x) / cell_m);
      if (last < first) continue;
      water.fill(1, row * columns + first, row * columns + last + 1);
      waterNodes += last - first + 1;
    }
  }
  return { corner, cell_m, columns, rows, water, waterNodes };
}

/** The node nearest to a point; -1 outside the grid. */
export function nodeAt({ corner, cell_m, columns, rows }: Grid, { x, y }: Point): number {
  const [column, row] = [Math.round((x - corner.x) / cell_m), Math.round((y - corner.y) / cell_m)];
  return column < 0 || column >= columns || row < 0 || row >= rows ? -1 : row * columns + column;
}

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
function depthSites(
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

/** A depth at every node of a grid, m; dry nodes carry the mirror image of the water next to them, 0 or less. */
export type DepthField = number[];

/** A node on the edge of two triangles belongs to both: rounding must not leave it to neither. */
const ON_EDGE = 1e-9;

/**
 * Fills the nodes inside one triangle by its plane. Along each row only the nodes between its sides are looked at, and
 * one more at either end. Runs hundreds of thousands of times a club, so it makes no objects.
 */
function fillTriangle(
  field: DepthField,
  { corner, cell_m, columns, water }: Grid,
  a: Site,
  b: Site,
  c: Site,
): void {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const twice = bx * cy - by * cx;
  if (twice === 0) return;
  const firstRow = Math.ceil((Math.min(a.y, b.y, c.y) - corner.y) / cell_m);
  const lastRow = Math.floor((Math.max(a.y, b.y, c.y) - corner.y) / cell_m);
  for (let row = firstRow; row <= lastRow; row++) {
    const y = corner.y + row * cell_m - a.y;
    let west = Number.POSITIVE_INFINITY;
    let east = Number.NEGATIVE_INFINITY;
    for (let side = 0; side < 3; side++) {
      const fromX = side === 1 ? bx : 0;
      const fromY = side === 1 ? by : 0;
      const toX = side === 0 ? bx : cx;
      const toY = side === 0 ? by : cy;
      if (y < Math.min(fromY, toY) || y > Math.max(fromY, toY)) continue;
      const at = fromY === toY ? toX : fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX);
      const other = fromY === toY ? fromX : at;
      west = Math.min(west, at, other);
      east = Math.max(east, at, other);
    }
    if (west > east) continue;
    const firstColumn = Math.ceil((west + a.x - corner.x) / cell_m) - 1;
    const lastColumn = Math.floor((east + a.x - corner.x) / cell_m) + 1;
    for (let column = firstColumn; column <= lastColumn; column++) {
      const node = row * columns + column;
      if (water[node] !== 1) continue;
      const x = corner.x + column * cell_m - a.x;
      const ofB = (x * cy - y * cx) / twice;
      const ofC = (bx * y - by * x) / twice;
      if (ofB < -ON_EDGE || ofC < -ON_EDGE || ofB + ofC > 1 + ON_EDGE) continue;
      field[node] = a.depth_m + ofB * (b.depth_m - a.depth_m) + ofC * (c.depth_m - a.depth_m);
    }
  }
}

/** Gives the dry nodes next to water the mirror image of its depth, so that the shoreline falls between the two. */
function mirror(field: DepthField, { columns, water }: Grid): void {
  for (let node = columns; node < field.length - columns; node++) {
    if (water[node] === 1) continue;
    let sum = 0;
    let wet = 0;
    for (let side = 0; side < 4; side++) {
      const near = node + (side < 2 ? 2 * side - 1 : (2 * side - 5) * columns);
      if (water[near] !== 1) continue;
      sum += field[near] ?? 0;
      wet++;
    }
    if (wet > 0) field[node] = -sum / wet;
  }
}

/**
 * Depth over the whole lake: planes through the Delaunay triangles of shoreline, contours and soundings, as surveyors
 * do between soundings. Never deeper than the deepest known place.
 */
export function depthField(known: KnownDepths, grid: Grid): DepthField {
  const isWater = (point: { x: number; y: number }): boolean => grid.water[nodeAt(grid, point)] === 1;
  const sites = depthSites(known, grid.cell_m, isWater);
  const field: DepthField = new Array<number>(grid.columns * grid.rows).fill(0);
  const { triangles } = triangulate(sites);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [sites[triangles[i] ?? 0], sites[triangles[i + 1] ?? 0], sites[triangles[i + 2] ?? 0]];
    if (a !== undefined && b !== undefined && c !== undefined) fillTriangle(field, grid, a, b, c);
  }
  mirror(field, grid);
  return field;
}
