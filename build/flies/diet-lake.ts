import type { FoundFood } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { betaQuantile } from "./catch-rates-quantiles.ts";
import { dietLaw, expectedShare, FOUND_FOODS, type PhaseDiet } from "./diet.ts";
import { relativeImportance } from "./diet-iri.ts";
import { hasFood, itemsOf } from "./diet-samples.ts";
import type { LakePhaseDiet } from "./diet-schema.ts";

type Importance = LakePhaseDiet["foods"][number]["importance"];

/** Shares to four decimals, indices to two: finer than any of this is known. */
const share4 = (share: number): number => Number(share.toFixed(4));
const index2 = (index: number): number => Number(index.toFixed(2));
/** Eight chances in ten lie between. */
const TAIL = 0.1;

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

function evidenceWords({ samples, fish, elsewhere }: PhaseDiet): string {
  const empty = samples.length - fish;
  return [
    plural(fish, "sample here", "samples here"),
    ...(elsewhere.fish === 0
      ? []
      : [`${elsewhere.fish} at ${plural(elsewhere.lakes, "other lake", "other lakes")}`]),
    ...(empty === 0 ? [] : [`${plural(empty, "empty throat", "empty throats")} left out`]),
  ].join(", ");
}

/** Importance by weight, over the fish whose every food was weighed. */
function importances({ samples }: PhaseDiet): { fish: number; of: (food: FoundFood) => Importance } {
  const weighed = samples.filter(
    (sample) => hasFood(sample) && sample.every(({ count, mass_g }) => count === 0 || mass_g !== undefined),
  );
  const foods = FOUND_FOODS.map((food) => {
    const rows = weighed.map((sample) => sample.filter((row) => row.food === food && row.count > 0));
    return {
      food,
      count: rows.flat().reduce((sum, { count }) => sum + count, 0),
      amount: rows.flat().reduce((sum, { mass_g }) => sum + (mass_g ?? 0), 0),
      fish: rows.filter((row) => row.length > 0).length,
    };
  }).filter(({ fish }) => fish > 0);
  const byFood = new Map(
    relativeImportance(foods, weighed.length).map((row, i) => [
      foods[i]?.food,
      {
        numberPct: index2(row.numberPct),
        weightPct: index2(row.amountPct),
        frequencyPct: index2(row.frequencyPct),
        iri: index2(row.iri),
        iriPct: index2(row.iriPct),
      },
    ]),
  );
  return { fish: weighed.length, of: (food) => byFood.get(food) ?? null };
}

/** What the fish of a lake eat in one phase, for readers; null where no fish there was sampled. */
export function lakePhaseDiet(phase: Phase, diet: PhaseDiet): LakePhaseDiet | null {
  const { samples, fish, weights, elsewhere } = diet;
  if (samples.length === 0) return null;
  const law = dietLaw(diet);
  const importance = importances(diet);
  const items = samples.map(itemsOf);
  const foods = FOUND_FOODS.filter(
    (food) => weights.byFood.has(food) || (elsewhere.weights.byFood.get(food) ?? 0) > 0,
  )
    .map((food) => {
      const [alpha, rest] = [law.alpha(food), law.all - law.alpha(food)];
      return {
        food,
        fish: items.filter(({ byFood }) => byFood.has(food)).length,
        seen: weights.all === 0 ? 0 : share4((weights.byFood.get(food) ?? 0) / weights.all),
        share: share4(expectedShare(law, food)),
        low: share4(betaQuantile(TAIL, alpha, rest)),
        high: share4(betaQuantile(1 - TAIL, alpha, rest)),
        importance: importance.of(food),
      };
    })
    .sort((a, b) => b.share - a.share);
  return {
    phase,
    fish,
    empty: samples.length - fish,
    otherFish: elsewhere.fish,
    otherLakes: elsewhere.lakes,
    weighedFish: importance.fish,
    words: evidenceWords(diet),
    foods,
  };
}
