import { measureRing, type Ring } from "../../build/model/lake-shape.ts";
import { buildGrid, type DepthField, type Grid, triangulate } from "../../build/water/bathymetric-grid.ts";
import { type Plane, type Point, planeAbout, resampleLine } from "../../build/water/plane.ts";
import { bell, type LakeFigures, type LakeLook, type Polar, pointAt, RADIAN } from "./lake-look.ts";

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
function layBottom(
  rings: readonly (readonly Point[])[],
  look: LakeLook,
  { area_m2, maxDepth_m = 0, meanDepth_m = 0 }: LakeFigures,
  radius_m: number,
  placeOf: (polar: Polar) => Point,
): { grid: Grid; field: DepthField } {
  const grid = buildGrid(rings, area_m2);
  const isDam = damTest(look, radius_m);
  const natural = rings
    .flatMap((ring) => resampleLine(ring, 0, grid.cell_m / 2))
    .filter((point) => !isDam(point));
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

export interface LakeLike {
  readonly plane: Plane;
  /** The outer shore, then the islands; closed. */
  readonly rings: readonly (readonly Point[])[];
  readonly placeOf: (polar: Polar) => Point;
  /** Absent for a lake without depths. */
  readonly bottom?: { readonly grid: Grid; readonly field: DepthField };
}

const POINTS = 480;
const WAVES = 40;

/** Radius of the shore by bearing, in shares of a mean radius. */
function shoreRadius(look: LakeLook, random: () => number): (bearing_deg: number) => number {
  const waves = Array.from({ length: WAVES }, (_, i) => ({
    times: i + 2,
    size: (look.rough * (random() - 0.5)) / (i + 2) ** 1.25,
    start: random() * 360,
  }));
  return (bearing_deg) => {
    const angle = (bearing_deg - look.axis_deg) * RADIAN;
    const ellipse = 1 / Math.hypot(Math.cos(angle) / look.stretch, Math.sin(angle));
    const ragged = waves.reduce(
      (sum, { times, size, start }) => sum + size * Math.cos((times * bearing_deg + start) * RADIAN),
      1,
    );
    const bays = (look.bays ?? []).reduce(
      (sum, { bearing_deg: at, reach, width_deg }) => sum + reach * bell(bearing_deg - at, width_deg),
      1,
    );
    const natural = ellipse * ragged * bays;
    if (look.dam === undefined) return natural;
    const facing = Math.cos((bearing_deg - look.dam.bearing_deg) * RADIAN);
    return facing <= 0 ? natural : Math.min(natural, (look.dam.out * look.stretch) / facing);
  };
}

/** Moves a place of the straight lake to where it lies in the bent one. */
function bent({ axis_deg, stretch, bend = 0 }: LakeLook, { x, y }: Point): Point {
  const [east, north] = [Math.sin(axis_deg * RADIAN), Math.cos(axis_deg * RADIAN)];
  const along = x * east + y * north;
  const aside = bend * (along ** 2 / stretch - stretch / 4);
  return { x: x + aside * north, y: y - aside * east };
}

/** A closed ring, counter-clockwise. */
const ringOf = (
  radius: (bearing_deg: number) => number,
  points: number,
  middle: Point = { x: 0, y: 0 },
): Point[] => {
  const ring = Array.from({ length: points }, (_, i) => {
    const bearing = -(360 * i) / points;
    const { x, y } = pointAt(bearing, radius(bearing));
    return { x: middle.x + x, y: middle.y + y };
  });
  return [...ring, ...ring.slice(0, 1)];
};

function islandRing({ size }: { size: number }, middle: Point, random: () => number): Point[] {
  const [a, b, start] = [random() * 0.4, random() * 0.14, random() * 360];
  return ringOf(
    (bearing) =>
      size *
      (1 + a * Math.cos((2 * bearing + start) * RADIAN) + b * Math.cos((3 * bearing + 2 * start) * RADIAN)),
    40,
    middle,
  ).reverse();
}

/** An invented lake that meets its figures. The same look gives the same lake. */
export function lakeLike(look: LakeLook, figures: LakeFigures, random: () => number): LakeLike {
  const plane = planeAbout([figures.position.lon, figures.position.lat]);
  const radius = shoreRadius(look, random);
  const unitPlace = ({ bearing_deg, out }: Polar): Point =>
    bent(look, pointAt(bearing_deg, out * radius(bearing_deg)));
  const islands = (look.islands ?? []).map((island) => ({ island, middle: unitPlace(island) }));
  const unit = [
    ringOf(radius, POINTS).map((point) => bent(look, point)),
    ...islands.map(({ island, middle }) => islandRing(island, middle, random)),
  ];
  const scaled = (radius_m: number): Point[][] =>
    unit.map((ring) => ring.map(({ x, y }) => ({ x: x * radius_m, y: y * radius_m })));
  const areaOf = (radius_m: number): number =>
    scaled(radius_m).reduce((sum, ring) => sum + measureRing(ring.map(plane.toLonLat) as Ring).area_m2, 0);
  const guess_m = Math.sqrt(figures.area_m2);
  const radius_m = guess_m * Math.sqrt(figures.area_m2 / areaOf(guess_m));
  const placeOf = (polar: Polar): Point => {
    const { x, y } = unitPlace(polar);
    return { x: x * radius_m, y: y * radius_m };
  };
  const rings = scaled(radius_m);
  const lake = { plane, rings, placeOf };
  return figures.maxDepth_m === undefined
    ? lake
    : { ...lake, bottom: layBottom(rings, look, figures, radius_m, placeOf) };
}
