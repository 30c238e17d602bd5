import { planeAbout } from "../water/plane.ts";
import { lakeLike } from "./lake-like.ts";
import type { LakeLook } from "./lake-look.ts";
import { seeded } from "./seeded.ts";
import { contoursOf, geojsonOf, type Mark } from "./shape-text.ts";

/** A made-up lake that can be laid anywhere. */
export interface SyntheticShape {
  readonly area_ha: number;
  readonly maxDepth_m: number;
  geojsonAt(position: { readonly lat: number; readonly lon: number }): string;
}

/** Drawing a bottom takes long; so many are drawn, and each is laid in many places. No two lakes have the same coordinates. */
const SHAPES = 24;
const NOTICE = "Made up to measure the program.";
const HECTARE_M2 = 10_000;
const MARKS: readonly Mark[] = [
  { mark: "launch", name: "Ramp", bearing_deg: 200, out: 1 },
  { mark: "inflow", bearing_deg: 20, out: 1 },
  { mark: "shoal", name: "Shoal", bearing_deg: 120, out: 0.5 },
];

function drawShape(seed: number): SyntheticShape {
  const random = seeded(seed);
  const look: LakeLook = {
    seed,
    axis_deg: random() * 180,
    stretch: 1.1 + random() * 2,
    bend: (random() - 0.5) / 2,
    rough: 0.5 + random() / 2,
    bays: [{ bearing_deg: random() * 360, reach: 0.3 * (random() - 0.3), width_deg: 12 }],
  };
  const area_ha = 4 + Math.round(random() * 60);
  const maxDepth_m = 4 + Math.round(random() * 14);
  const figures = { position: { lat: 41.5, lon: -106.5 }, area_m2: area_ha * HECTARE_M2, maxDepth_m };
  const like = lakeLike(look, figures, random);
  const contours = contoursOf(like, maxDepth_m);
  return {
    area_ha,
    maxDepth_m,
    geojsonAt: ({ lat, lon }) =>
      geojsonOf({ ...like, plane: planeAbout([lon, lat]) }, contours, MARKS, NOTICE),
  };
}

const drawn = new Map<number, SyntheticShape>();

/** The shape of the nth lake; the same for the same seed. */
export function shapeOfLake(n: number, seed: number): SyntheticShape {
  const key = seed * SHAPES + (n % SHAPES);
  const shape = drawn.get(key) ?? drawShape(key);
  drawn.set(key, shape);
  return shape;
}
