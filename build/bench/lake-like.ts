import { measureRing } from "../model/geodesy.ts";
import type { Ring } from "../model/lake-shape.ts";
import type { DepthField } from "../water/depth-field.ts";
import type { Grid } from "../water/grid.ts";
import { type Plane, type Point, planeAbout } from "../water/plane.ts";
import { bell, pointAt, RADIAN } from "./bearing.ts";
import { layBottom } from "./lake-bottom.ts";
import type { LakeFigures, LakeLook, Polar } from "./lake-look.ts";

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
