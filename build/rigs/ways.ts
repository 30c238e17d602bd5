import type { Method } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";

/** The ways worth fishing in each phase, the one to start with first. Common practice, no source. */
export const WAYS_OF_PHASE: Readonly<Record<Phase, readonly Method[]>> = {
  "ice-off": ["indicator still", "floating line", "clear intermediate"],
  turnover: ["sink tip", "trolled"],
  "post-turnover": [
    "indicator still",
    "indicator twitched",
    "clear intermediate",
    "sink tip",
    "buoyant on sinking line",
    "trolled",
  ],
};

/** True for a way that hangs the fly under an indicator. */
export const isUnderIndicator = (way: Method): boolean =>
  way === "indicator still" || way === "indicator twitched";
