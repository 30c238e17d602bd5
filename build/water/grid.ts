import { cutsTowards } from "./cuts.ts";
import type { Point } from "./plane.ts";

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
export function layGrid(rings: readonly (readonly Point[])[], area_m2: number): Grid {
  const east = cutsTowards(rings, 90);
  const north = cutsTowards(rings, 0);
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
