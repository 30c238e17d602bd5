import type { Ink } from "../../build/draw/ink.ts";
import { paperInk, screenInk } from "../../build/draw/ink.ts";
import type { HungRig } from "../../build/draw/rig/hung-rig.ts";
import type { UnitSystem } from "../../build/model/units.ts";
import { leaderOf } from "../../build/rigs/leaders/leader.ts";
import { box, FT, leader } from "../rigs/box-fixture.ts";

type Piece = readonly [feet: number, size: number];

const MARGIN_M = 0.1;
/** The middle of 6 to 8 in off the bottom, m; an inch is 0.0254 m. */
const ABOVE_M = 7 * 0.0254;

/** A leader hung at a set depth under an indicator. */
export function hung(
  pieces: readonly [taper: Piece, middle: Piece, tippet: Piece],
  set_ft: number,
  units: UnitSystem = "imperial",
  change: Partial<HungRig> = {},
): HungRig {
  const set_m = set_ft * FT;
  return {
    leader: leaderOf(leader("Board", ...pieces), MARGIN_M, units),
    set_m,
    depth_m: set_m + ABOVE_M,
    offBottom: box.offBottom,
    shot: null,
    indicator: null,
    landing: null,
    ...change,
  };
}

/** The usual long leader of common practice, no source: 12 ft to 3X, 6 ft of 4X, 3 ft of 5X. */
export const USUAL_LONG = [
  [12, 3],
  [6, 4],
  [3, 5],
] as const;

/** The shortest and the longest leaders a club may tie, and one without a middle. */
export const LEADERS = [
  USUAL_LONG,
  [
    [7.5, 3],
    [0.5, 4],
    [1, 5],
  ],
  [
    [9, 3],
    [0, 4],
    [2, 5],
  ],
  [
    [12, 3.5],
    [9, 4.5],
    [4.5, 5.5],
  ],
] as const;

/** Sizes in which drawings are made: 60 mm in points, and a phone's column in pixels. */
export const MEDIA: readonly { readonly ink: Ink; readonly width: number; readonly height: number }[] = [
  { ink: paperInk, width: 170, height: 190 },
  { ink: screenInk, width: 256, height: 320 },
];
