import type { DepthBand, Lake, Method } from "../model/club.ts";
import { PHASES, type Phase } from "../model/phase.ts";

/** The methods worth fishing in each phase, the one to start with first. Common practice, no source. */
export const METHODS_OF_PHASE: Readonly<Record<Phase, readonly Method[]>> = {
  "ice-off": [
    "indicator still",
    "indicator twitched",
    "floating line",
    "clear intermediate",
    "sink tip",
    "trolled",
  ],
  turnover: ["sink tip", "trolled"],
  "post-turnover": [
    "indicator still",
    "indicator twitched",
    "floating line",
    "clear intermediate",
    "sink tip",
    "buoyant on sinking line",
    "trolled",
  ],
  "later-weeks": ["sink tip", "buoyant on sinking line", "trolled", "clear intermediate"],
};

/** True for a method that hangs the fly under an indicator. */
export const isUnderIndicator = (method: Method): boolean =>
  method === "indicator still" || method === "indicator twitched";

/** What of a lake decides its rigs. */
export type RiggedLake = Pick<Lake, "name" | "depthBands" | "maxDepth_m" | "turnoverRule">;

/** Water depths to fish, and whether the club plumbed them. */
export interface FishedBand extends DepthBand {
  readonly source: "club" | "usual";
}

/** Where to look when the club has not plumbed its own band. Common practice, no source. */
const USUAL_BANDS: Readonly<Record<Phase, DepthBand>> = {
  "ice-off": { from_m: 0.6, to_m: 2 },
  turnover: { from_m: 1, to_m: 3 },
  "post-turnover": { from_m: 2.5, to_m: 5.5 },
  "later-weeks": { from_m: 4, to_m: 8 },
};

/** The water depths to fish in one phase where nobody has plumbed. */
export const usualBandOf = (phase: Phase): FishedBand => ({ ...USUAL_BANDS[phase], source: "usual" });

/** The phases a lake goes through: a lake that does not turn over has no turnover to fish. */
export const phasesOf = (lake: Pick<RiggedLake, "turnoverRule">): readonly Phase[] =>
  lake.turnoverRule.turnsOver ? PHASES : PHASES.filter((phase) => phase !== "turnover");

/** The water depths to fish in one phase, never deeper than the lake. */
export function bandOf(lake: RiggedLake, phase: Phase): FishedBand {
  const own = lake.depthBands[phase];
  const { from_m, to_m } = own ?? USUAL_BANDS[phase];
  const deepest_m = lake.maxDepth_m ?? Number.POSITIVE_INFINITY;
  return {
    from_m: Math.min(from_m, deepest_m),
    to_m: Math.min(to_m, deepest_m),
    source: own === undefined ? "usual" : "club",
  };
}
