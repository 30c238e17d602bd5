import { FOODS, type FoundFood, type ThroatSample } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import type { PhasedReport } from "./catch-rates.ts";

/** Weight of each food in what some fish had eaten, and of all foods together. */
export interface FoodWeights {
  readonly byFood: ReadonlyMap<FoundFood, number>;
  readonly all: number;
}

const NO_FOOD: FoodWeights = { byFood: new Map(), all: 0 };

/** Items of each food in one throat; a food named twice counts once. */
export function itemsOf(sample: ThroatSample): FoodWeights {
  const byFood = new Map<FoundFood, number>();
  for (const { food, count } of sample) if (count > 0) byFood.set(food, (byFood.get(food) ?? 0) + count);
  return { byFood, all: [...byFood.values()].reduce((sum, count) => sum + count, 0) };
}

/** True when the throat held something. */
export const hasFood = (sample: ThroatSample): boolean => sample.some(({ count }) => count > 0);

/** Items of one fish are alike, half of the way from strangers to twins: correlation 1 / (1 + 1). Our judgement, no source. */
const FISH_CONCENTRATION = 1;

/**
 * What one fish's throat says, in independent items. A fish that met a swarm eats two hundred of one food: its items resemble each
 * other. As draws of a Dirichlet-multinomial with concentration k, n of them say as much as n (1 + k) / (n + k) independent ones: one
 * item 1, ten 1.8, however many never more than 2. So fish are counted, not items, and two hundred daphnia in one fish do not
 * drown ten fish with scuds.
 * @source variance of a Dirichlet-multinomial share, p (1 - p) (n + k) / (n (1 + k)): Mosimann (1962), Biometrika 49:65–82
 */
export function weightOfFish(sample: ThroatSample): FoodWeights {
  const items = itemsOf(sample);
  if (items.all === 0) return NO_FOOD;
  const perItem = (1 + FISH_CONCENTRATION) / (items.all + FISH_CONCENTRATION);
  return {
    byFood: new Map([...items.byFood].map(([food, count]) => [food, count * perItem])),
    all: items.all * perItem,
  };
}

/** The sum of two. */
function addWeights(a: FoodWeights, b: FoodWeights): FoodWeights {
  const byFood = new Map(a.byFood);
  for (const [food, weight] of b.byFood) byFood.set(food, (byFood.get(food) ?? 0) + weight);
  return { byFood, all: a.all + b.all };
}

/** What a subtraction of weights leaves by rounding alone. */
const NOTHING_LEFT = 1e-9;

/** What is left of `a` without `b`, which is part of it. */
function withoutWeights(a: FoodWeights, b: FoodWeights): FoodWeights {
  const byFood = new Map(
    [...a.byFood]
      .map(([food, weight]) => [food, weight - (b.byFood.get(food) ?? 0)] as const)
      .filter(([, weight]) => weight > NOTHING_LEFT),
  );
  return { byFood, all: [...byFood.values()].reduce((sum, weight) => sum + weight, 0) };
}

/** Every food a fish can be found with, in the order the club folder names them. */
export const FOUND_FOODS: readonly FoundFood[] = FOODS.filter(
  (food): food is FoundFood => food !== "nothing in particular",
);

/** What a fish on nothing in particular would have of each food. */
export const EVEN_SHARE = 1 / FOUND_FOODS.length;

/**
 * What stands for a lake before its own fish speak, in independent items: three well filled throats move it half of the way. What
 * stands for the club before any fish does weighs twice that, so that another lake's fish always move a lake less than its own would.
 * Our judgement, no source.
 */
const LAKE_PRIOR_WEIGHT = 6;
const CLUB_PRIOR_WEIGHT = 12;

/** The throats of one lake in one phase. */
export interface PhaseDiet {
  /** Every sample, empty ones too. */
  readonly samples: readonly ThroatSample[];
  /** Those with food in them. */
  readonly fish: number;
  readonly weights: FoodWeights;
  /** The same of the club's other lakes in this phase. */
  readonly elsewhere: { readonly fish: number; readonly lakes: number; readonly weights: FoodWeights };
}

interface Throats {
  readonly samples: readonly ThroatSample[];
  readonly fish: number;
  readonly weights: FoodWeights;
}

const NO_THROATS: Throats = { samples: [], fish: 0, weights: NO_FOOD };

const throatsOf = (samples: readonly ThroatSample[]): Throats => ({
  samples,
  fish: samples.filter(hasFood).length,
  weights: samples.map(weightOfFish).reduce((sum, fish) => addWeights(sum, fish), NO_FOOD),
});

/** Throat samples by lake and phase; of reports whose phase nobody can tell, none. */
export function gatherDiet(reports: readonly PhasedReport[]): (lake: string, phase: Phase) => PhaseDiet {
  const byPhase = new Map<Phase, Map<string, ThroatSample[]>>();
  for (const { report, phase } of reports) {
    if (phase === null || report.samples.length === 0) continue;
    const lakes = byPhase.get(phase) ?? new Map<string, ThroatSample[]>();
    byPhase.set(phase, lakes.set(report.lake, [...(lakes.get(report.lake) ?? []), ...report.samples]));
  }
  const club = new Map(
    [...byPhase].map(([phase, lakes]) => {
      const own = new Map([...lakes].map(([lake, samples]) => [lake, throatsOf(samples)]));
      const fed = [...own.values()].filter(({ fish }) => fish > 0);
      return [
        phase,
        {
          own,
          fish: fed.reduce((sum, { fish }) => sum + fish, 0),
          lakes: fed.length,
          weights: fed.reduce((sum, { weights }) => addWeights(sum, weights), NO_FOOD),
        },
      ];
    }),
  );
  return (lake, phase) => {
    const all = club.get(phase) ?? { own: new Map<string, Throats>(), fish: 0, lakes: 0, weights: NO_FOOD };
    const { samples, fish, weights } = all.own.get(lake) ?? NO_THROATS;
    return {
      samples,
      fish,
      weights,
      elsewhere: {
        fish: all.fish - fish,
        lakes: all.lakes - (fish > 0 ? 1 : 0),
        weights: withoutWeights(all.weights, weights),
      },
    };
  };
}

/** Parameters of the Dirichlet over the foods of one lake and phase. */
export interface DietDistribution {
  /** Of one food. */
  alpha(food: FoundFood): number;
  /** Of all foods together. */
  readonly all: number;
}

/**
 * How likely each food is in the next fish of a lake in a phase: Dirichlet about what the other lakes' fish had eaten, itself Dirichlet
 * about an even share, updated by this lake's own fish. The share of one food is then beta distributed with alpha and all - alpha.
 */
export function dietDistribution({
  weights,
  elsewhere,
}: Pick<PhaseDiet, "weights" | "elsewhere">): DietDistribution {
  const expected = (food: FoundFood): number =>
    (CLUB_PRIOR_WEIGHT * EVEN_SHARE + (elsewhere.weights.byFood.get(food) ?? 0)) /
    (CLUB_PRIOR_WEIGHT + elsewhere.weights.all);
  return {
    alpha: (food) => LAKE_PRIOR_WEIGHT * expected(food) + (weights.byFood.get(food) ?? 0),
    all: LAKE_PRIOR_WEIGHT + weights.all,
  };
}

/** Share expected of a food, 0 to 1. */
export const expectedShare = (law: DietDistribution, food: FoundFood): number => law.alpha(food) / law.all;
