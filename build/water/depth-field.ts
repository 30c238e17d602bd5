import { depthSites, type KnownDepths, type Site, triangulate } from "./depth-sites.ts";
import { type Grid, nodeAt } from "./grid.ts";

/** A depth at every node of a grid, m; dry nodes carry the mirror image of the water next to them, 0 or less. */
export type DepthField = Float64Array;

/** A node on the edge of two triangles belongs to both: rounding must not leave it to neither. */
const ON_EDGE = 1e-9;

/** Fills the nodes inside one triangle by its plane. */
function fillTriangle(
  field: DepthField,
  { corner, cell_m, columns, water }: Grid,
  a: Site,
  b: Site,
  c: Site,
): void {
  const [bx, by, cx, cy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y];
  const twice = bx * cy - by * cx;
  if (twice === 0) return;
  const columnOf = (x: number): number => (x - corner.x) / cell_m;
  const rowOf = (y: number): number => (y - corner.y) / cell_m;
  const firstRow = Math.ceil(rowOf(Math.min(a.y, b.y, c.y)));
  const lastRow = Math.floor(rowOf(Math.max(a.y, b.y, c.y)));
  const firstColumn = Math.ceil(columnOf(Math.min(a.x, b.x, c.x)));
  const lastColumn = Math.floor(columnOf(Math.max(a.x, b.x, c.x)));
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = firstColumn; column <= lastColumn; column++) {
      const node = row * columns + column;
      if (water[node] !== 1) continue;
      const [x, y] = [corner.x + column * cell_m - a.x, corner.y + row * cell_m - a.y];
      const ofB = (x * cy - y * cx) / twice;
      const ofC = (bx * y - by * x) / twice;
      if (ofB < -ON_EDGE || ofC < -ON_EDGE || ofB + ofC > 1 + ON_EDGE) continue;
      field[node] = a.depth_m + ofB * (b.depth_m - a.depth_m) + ofC * (c.depth_m - a.depth_m);
    }
}

/** Gives the dry nodes next to water the mirror image of its depth, so that the shoreline falls between the two. */
function mirror(field: DepthField, { columns, water }: Grid): void {
  for (let node = columns; node < field.length - columns; node++) {
    if (water[node] === 1) continue;
    const wet = [node - 1, node + 1, node - columns, node + columns].filter((near) => water[near] === 1);
    if (wet.length > 0) field[node] = -wet.reduce((sum, near) => sum + (field[near] ?? 0), 0) / wet.length;
  }
}

/**
 * Depth over the whole lake: planes through the Delaunay triangles of shoreline, contours and soundings, as surveyors
 * do between soundings. Never deeper than the deepest known place.
 */
export function depthField(known: KnownDepths, grid: Grid): DepthField {
  const isWater = (point: { x: number; y: number }): boolean => grid.water[nodeAt(grid, point)] === 1;
  const sites = depthSites(known, grid.cell_m, isWater);
  const field: DepthField = new Float64Array(grid.columns * grid.rows);
  const { triangles } = triangulate(sites);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [sites[triangles[i] ?? 0], sites[triangles[i + 1] ?? 0], sites[triangles[i + 2] ?? 0]];
    if (a !== undefined && b !== undefined && c !== undefined) fillTriangle(field, grid, a, b, c);
  }
  mirror(field, grid);
  return field;
}
