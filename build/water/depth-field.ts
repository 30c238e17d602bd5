import { depthSites, type KnownDepths, type Site, triangulate } from "./depth-sites.ts";
import { type Grid, nodeAt } from "./grid.ts";

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
