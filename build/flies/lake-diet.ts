import type { FoundFood } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { betaQuantile } from "./catch-rates.ts";
import { dietDistribution, expectedShare, FOUND_FOODS, hasFood, itemsOf, type PhaseDiet } from "./diet.ts";
import type { LakePhaseDiet } from "./flies-schema.ts";

/** One food over some fish: how many items, how much of it, in how many fish. */
interface FoodAmount {
  readonly count: number;
  /** Weight or volume, in one unit for all foods. */
  readonly amount: number;
  readonly fish: number;
}

/** A food's importance, every part in per cent; `iri` runs from 0 to 20,000. */
interface Importance {
  readonly numberPct: number;
  readonly amountPct: number;
  readonly frequencyPct: number;
  readonly iri: number;
  readonly iriPct: number;
}

/**
 * Index of Relative Importance, (%N + %W) x %F, and its share of all. Never add the indices of two foods: lumped foods have another.
 * @param fishWithFood fish that had anything in them; empty ones are left out
 * @source Pinkas, Oliphant & Iverson (1971), Fish Bulletin 152, with volume; its share: Cortés (1997), Can. J. Fish. Aquat. Sci. 54:726–738
 */
export function relativeImportance(foods: readonly FoodAmount[], fishWithFood: number): Importance[] {
  const sum = (of: (food: FoodAmount) => number): number => foods.reduce((all, food) => all + of(food), 0);
  const percent = (part: number, all: number): number => (all === 0 ? 0 : (100 * part) / all);
  const [counts, amounts] = [sum(({ count }) => count), sum(({ amount }) => amount)];
  const rows = foods.map(({ count, amount, fish }) => {
    const numberPct = percent(count, counts);
    const amountPct = percent(amount, amounts);
    const frequencyPct = percent(fish, fishWithFood);
    return { numberPct, amountPct, frequencyPct, iri: (numberPct + amountPct) * frequencyPct };
  });
  const all = rows.reduce((total, { iri }) => total + iri, 0);
  return rows.map((row) => ({ ...row, iriPct: percent(row.iri, all) }));
}

type LakeImportance = LakePhaseDiet["foods"][number]["importance"];

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
function importances({ samples }: PhaseDiet): { fish: number; of: (food: FoundFood) => LakeImportance } {
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
  const law = dietDistribution(diet);
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
