import type { Food } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import type { SuitedFly } from "./choose-flies.ts";
import { type DietLaw, dietLaw, EVEN_SHARE, expectedShare, type PhaseDiet } from "./diet.ts";
import type { PatternCatches, PatternCatchesAt } from "./rank-rates.ts";

/** What members' reports say about flies. */
export interface FlyEvidence {
  dietAt(lake: string, phase: Phase): PhaseDiet;
  readonly catchesAt: PatternCatchesAt;
}

/** A fly in its place on a list, with what put it there. */
export interface RankedFly extends SuitedFly {
  /** Expected catch, relative to the club's first choice with nothing reported. */
  readonly score: number;
  readonly catches: PatternCatches;
}

/** Each place down the club's own order starts a tenth lower than the one above it. Our judgement, no source. */
const NEXT_PLACE = 0.9;
/** Share of takes for what the fish are eating; the others do not ask. Our judgement, no source. */
const TAKES_FOR_FOOD = 0.5;
/** Scores this close are equal: the order of adding must not decide. */
const DIGITS = 9;

/**
 * Takes on a fly for a food, relative to what they would be if fish ate every food alike: 0.5 for a food they never eat, 1 for one of
 * average share, 6 for one they eat alone. A fly that imitates nothing keeps 1.
 */
export const dietFactor = (law: DietLaw, food: Food): number =>
  food === "nothing in particular"
    ? 1
    : 1 - TAKES_FOR_FOOD + (TAKES_FOR_FOOD * expectedShare(law, food)) / EVEN_SHARE;

/**
 * The flies of one lake and phase, best first: place in the club's own order x what the fish eat x how the pattern catches. With no
 * reports the last two are 1 for every fly, and the order stays the club's own.
 * @param flies in the club's own order
 */
export function rankFlies(
  flies: readonly SuitedFly[],
  lake: string,
  phase: Phase,
  { dietAt, catchesAt }: FlyEvidence,
): RankedFly[] {
  const law = dietLaw(dietAt(lake, phase));
  return flies
    .map((fly, place) => {
      const catches = catchesAt(fly.pattern.slug, lake, phase);
      const score = NEXT_PLACE ** place * dietFactor(law, fly.pattern.imitates) * catches.ratio;
      return { ...fly, catches, score: Number(score.toFixed(DIGITS)) };
    })
    .sort((a, b) => b.score - a.score);
}
