import type { Guide, GuideLake } from "../build/guide/guide-schema.ts";
import { oppositeWind, WINDS } from "../build/water/compass.ts";
import { day, fullLake, guideOf } from "./lake-fixture.ts";

const AS_OF = day("2026-05-16");

type LakeMap = NonNullable<GuideLake["place"]["map"]>;

/** A rectangle of shore with a rectangular island, one contour across it and two marks; `west` is its western shore. */
function mapFrom(west: number): LakeMap {
  const [east, south, north] = [west + 0.04, 51.2, 51.22];
  return {
    shoreline: [
      [
        [
          [west, south],
          [east, south],
          [east, north],
          [west, north],
          [west, south],
        ],
        [
          [west + 0.01, 51.205],
          [west + 0.01, 51.215],
          [west + 0.03, 51.215],
          [west + 0.03, 51.205],
          [west + 0.01, 51.205],
        ],
      ],
    ],
    contours: [
      {
        depth_m: 3,
        lines: [
          [
            [west + 0.001, 51.202],
            [west + 0.039, 51.204],
          ],
        ],
      },
    ],
    contoursBy: "club",
    marks: [
      { mark: "launch", name: `Tom & Jo's <"old"> ramp\u0007`, lon: west + 0.002, lat: 51.201 },
      { mark: "shoal", name: null, lon: west + 0.038, lat: 51.219 },
    ],
  };
}

const noShore = { sides: [], stretches: [] };

/**
 * Two miles of open water (1 mi is 1609.344 m, by definition) with waves of one and a half to two feet (1 ft is
 * 0.3048 m) in a fresh breeze.
 */
const wind: NonNullable<GuideLake["place"]["wind"]> = {
  longest: { fetch_m: 2 * 1609.344, along: ["WSW", "ENE"] },
  shore: [],
  directions: WINDS.map((from) => ({
    from,
    rods: oppositeWind(from),
    fetch_m: 2 * 1609.344,
    launchFetch_m: [],
    heights_m: [],
    sheltered: noShore,
    washed: noShore,
  })),
  forces: [
    {
      force: 5,
      name: "fresh breeze",
      least_mps: 8,
      most_mps: 10.7,
      sign: "Small trees sway.",
      height_m: { from: 1.5 * 0.3048, to: 2 * 0.3048 },
      period_s: 2,
      growth_min: 40,
      boats: "Stay ashore.",
    },
  ],
};

/** A lake of that shape in a guide of its own. */
export function mappedLake(west: number): { guide: Guide; lake: GuideLake; map: LakeMap } {
  const plain = fullLake("ember", "Ember & Ash Lake", day("2026-05-12"), AS_OF);
  const map = mapFrom(west);
  const position = { lat: 51.21, lon: west + 0.005 };
  const lake = { ...plain, position, place: { ...plain.place, map, wind } };
  return { guide: guideOf([lake], AS_OF), lake, map };
}
