import type { Lake, LeaderStock, RigBox } from "../../build/model/club.ts";
import { USUAL_TURNOVER } from "../../build/model/club.ts";

/** Exact, by definition of the foot. */
export const FT = 0.3048;
const IN = 0.0254;

export const where = { file: "rigs.yaml", line: 1, column: 1 };

type Piece = readonly [feet: number, size: number];

export const leader = (name: string, taper: Piece, middle: Piece, tippet: Piece, tied = 0): LeaderStock => ({
  name,
  taper: { length_m: taper[0] * FT, size: taper[1] },
  middle: { length_m: middle[0] * FT, size: middle[1] },
  tippet: { length_m: tippet[0] * FT, size: tippet[1] },
  tied,
  where,
});

/** An invented box; the long leader is the usual one of common practice. */
export const box: RigBox = {
  rod_m: 9 * FT,
  reach_m: 1 * FT,
  offBottom: { from_m: 6 * IN, to_m: 8 * IN },
  margin_m: 0.15,
  lift_m: 0.15,
  dryShare: 0.5,
  castLimit_g: 1.2,
  mostLift_m: 0.3,
  steps: [[], [{ shot: "No. 4", count: 1 }], [{ shot: "BB", count: 1 }], [{ shot: "BB", count: 2 }]],
  longestWait_s: 90,
  longestCount_s: 60,
  bow_m: 2 * FT,
  scope: { calm: 5, ripple: 5, chop: 7 },
  leaders: [leader("Shallow", [9, 3], [0.5, 4], [1.5, 5]), leader("Long", [12, 3], [6, 4], [3, 5])],
  lines: [
    { name: "Floater", kind: "floating", where },
    { name: "Glass", kind: "clear intermediate", sinkRate_mps: 1.5 * IN, where },
    { name: "Tip", kind: "sink tip", sinkRate_mps: 3 * IN, tip_m: 15 * FT, where },
    { name: "Slow", kind: "sinking", sinkRate_mps: 3 * IN, where },
    { name: "Quick", kind: "sinking", sinkRate_mps: 6 * IN, where },
  ],
  shot: [
    { name: "No. 4", mass_g: 0.17, density_kgm3: 7310, carried: 10, where },
    { name: "BB", mass_g: 0.4, density_kgm3: 7310, carried: 10, where },
    { name: "AB", mass_g: 0.6, density_kgm3: 7310, carried: 6, where },
  ],
  indicators: [
    { name: "Small", diameter_m: 0.012, density_kgm3: 100, carried: 4, where },
    { name: "Medium", diameter_m: 0.016, density_kgm3: 100, carried: 4, where },
    { name: "Large", diameter_m: 0.019, density_kgm3: 100, carried: 2, where },
  ],
};

/** An invented lake of which nothing is known. */
export const lake: Lake = {
  slug: "wren",
  name: "Wren Lake",
  position: { lat: 41, lon: -106 },
  hazards: [],
  places: [],
  depthBands: {},
  iceOff: [],
  turnover: [],
  lastGood: [],
  turnoverRule: USUAL_TURNOVER,
};
