import type { DepthField } from "../water/depth-field.ts";
import { triangulate } from "../water/depth-sites.ts";
import { type Grid, layGrid } from "../water/grid.ts";
import type { Point } from "../water/plane.ts";
import { spaced } from "../water/ring-points.ts";
import { bell, pointAt, RADIAN } from "./bearing.ts";
import type { LakeFigures, LakeLook, Polar } from "./lake-look.ts";

/** Depth share by the way out to open water, straight between the given places. */
const alongProfile = (profile: NonNullable<LakeLook["profile"]>, way: number): number => {
  const next = profile.findIndex(([at]) => at >= way);
  const [to, before] = [profile[next], profile[next - 1]];
  if (to === undefined) return 1;
  if (before === undefined) return to[1];
  return before[1] + ((way - before[0]) / (to[0] - before[0])) * (to[1] - before[1]);
};

const STRAIGHT = [
  [0, 0],
  [1, 1],
] as const;
/** A dam's face falls one metre in two. */
const DAM_SLOPE = 0.5;
/** Flanks of shoals and benches, metres down a metre out. */
const FLANK = 0.12;

interface Ground {
  /** Metres to the natural shore, negative on land. */
  readonly shore_m: number;
  readonly dam_m: number;
  readonly bearing_deg: number;
  readonly at: Point;
}

/** The deepest the bottom may be at a place, whatever the rest of the lake does. */
function ceilingOf(
  look: LakeLook,
  radius_m: number,
  placeOf: (polar: Polar) => Point,
): (ground: Ground) => number {
  const shoals = (look.shoals ?? []).map((shoal) => ({ ...shoal, at: placeOf(shoal) }));
  return ({ shore_m, dam_m, bearing_deg, at }) => {
    const overShoals = shoals.map((shoal, i) => {
      const [dx, dy] = [at.x - shoal.at.x, at.y - shoal.at.y];
      const turned = Math.atan2(dy, dx) + i;
      const away_m = Math.hypot(dx, dy) * (1 + 0.25 * Math.sin(2 * turned) + 0.15 * Math.sin(3 * turned + 1));
      return shoal.top_m + FLANK * Math.max(0, away_m - shoal.size * radius_m);
    });
    const overBenches = (look.benches ?? []).map((bench) => {
      const off = 1 - bell(bearing_deg - bench.bearing_deg, bench.width_deg);
      return bench.floor_m + 60 * off + 3 * FLANK * Math.max(0, shore_m - bench.reach_m);
    });
    return Math.min(DAM_SLOPE * dam_m, ...overShoals, ...overBenches);
  };
}

/** Bottom of the lake over a grid: its mean is met by bending the way down, its greatest depth by construction. */
export function layBottom(
  rings: readonly (readonly Point[])[],
  look: LakeLook,
  { area_m2, maxDepth_m = 0, meanDepth_m = 0 }: LakeFigures,
  radius_m: number,
  placeOf: (polar: Polar) => Point,
): { grid: Grid; field: DepthField } {
  const grid = layGrid(rings, area_m2);
  const isDam = damTest(look, radius_m);
  const natural = rings.flatMap((ring) => spaced(ring, 0, grid.cell_m / 2)).filter((point) => !isDam(point));
  const nearest = triangulate(natural);
  const grounds = Array.from({ length: grid.columns * grid.rows }, (_, node): Ground => {
    const at = {
      x: grid.corner.x + (node % grid.columns) * grid.cell_m,
      y: grid.corner.y + Math.floor(node / grid.columns) * grid.cell_m,
    };
    const shore = natural[nearest.find(at.x, at.y)] ?? at;
    const away = Math.hypot(at.x - shore.x, at.y - shore.y);
    return {
      at,
      shore_m: grid.water[node] === 1 ? away : -away,
      dam_m: damDistance_m(look, radius_m, at),
      bearing_deg: Math.atan2(at.x, at.y) / RADIAN,
    };
  });
  const widest_m = grounds.reduce((most, { shore_m }) => Math.max(most, shore_m), 0);
  const ceiling = ceilingOf(look, radius_m, placeOf);
  const depthWith = (bend: number) => (ground: Ground) => {
    const way = ground.shore_m / widest_m;
    if (way <= 0) return Math.min(-0.001, way * maxDepth_m);
    const down = maxDepth_m * alongProfile(look.profile ?? STRAIGHT, way) ** bend;
    return Math.max(0.02, Math.min(down, ceiling(ground)));
  };
  const meanWith = (bend: number): number => {
    const depths = grounds.filter(({ shore_m }) => shore_m > 0).map(depthWith(bend));
    return depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
  };
  let [low, high] = [0.1, 8];
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (meanWith(middle) > meanDepth_m) low = middle;
    else high = middle;
  }
  return { grid, field: Array.from(grounds, depthWith((low + high) / 2)) };
}

const damDistance_m = ({ dam, stretch }: LakeLook, radius_m: number, { x, y }: Point): number => {
  if (dam === undefined) return Number.POSITIVE_INFINITY;
  const towards = pointAt(dam.bearing_deg, 1);
  return dam.out * stretch * radius_m - (x * towards.x + y * towards.y);
};

const damTest =
  (look: LakeLook, radius_m: number) =>
  (point: Point): boolean =>
    Math.abs(damDistance_m(look, radius_m, point)) < 0.01 * radius_m;
