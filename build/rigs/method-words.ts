import type { Method, RigBox } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { depthText, smallLengthText, type UnitSystem } from "../model/units.ts";
import { aboveBottom_m, leastIndicatorWater_m, longestFixedSet_m } from "./set-depth.ts";

const COUNT_AGAIN = "count until it ticks weed or bottom, then take off a tenth.";

/** How to know on the water that a method is right. */
const CHECKS: Readonly<Record<Method, (box: RigBox, units: UnitSystem) => string>> = {
  "indicator still": (box, units) =>
    `Set for the depth just plumbed, a hand (${smallLengthText(aboveBottom_m(box), units)}) off the bottom; shot and wait are on the plumb card. Down when the indicator stops creeping and cocks upright.`,
  "indicator twitched": () =>
    "Draw a hand of line, then wait: the indicator must tip, then stand upright again.",
  "floating line": () => "The leader enters the water at about 40°: flatter, draw slower; steeper, faster.",
  "clear intermediate": () => `Count it down, then draw slowly: ${COUNT_AGAIN}`,
  "sink tip": () => `Count it down, then draw slowly: ${COUNT_AGAIN}`,
  "buoyant on sinking line": () =>
    "Wait until the line lies on the bottom; the fly floats a leader's length above it.",
  trolled: () => "Follow the drop-off; a touch of bottom now and then is right, a steady drag is too slow.",
};

const POOR = "Poor in turnover: keep moving until you find clearer water; a lake in another phase is better.";
const SCOUTING = "To find fish after ice-off: where one takes, stop and anchor.";

/** The sentence to check a rig by on the water. */
export function checkText(method: Method, phase: Phase, box: RigBox, units: UnitSystem): string {
  if (phase === "turnover") return POOR;
  const check = CHECKS[method](box, units);
  return method === "trolled" && phase === "ice-off" ? `${SCOUTING} ${check}` : check;
}

/** Where the stop must slip. */
export const slipText = (box: RigBox, units: UnitSystem): string =>
  `With more than ${depthText(longestFixedSet_m(box), units)} set, the indicator must slip to land a fish.`;

/** For a band too shallow throughout. */
export const NO_ROOM = "Plumb it: if there is deeper water near, fish that; if not, cast a floating line.";

/** Water too thin for an indicator. */
export const tooShallowText = (box: RigBox, units: UnitSystem): string =>
  `Water under ${depthText(leastIndicatorWater_m(box), units)} is too shallow for an indicator: use the floating line there.`;

/** A straight piece of tippet for a buoyant fly, m. Common practice, from memory. */
export const SHORT_PIECE_M = 0.9;

/** No leader of the box is short enough for a buoyant fly. */
export const shortPieceText = (units: UnitSystem): string =>
  `Use no tapered leader: ${depthText(SHORT_PIECE_M, units)} of tippet straight to the line.`;
