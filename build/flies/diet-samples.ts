import type { FoundFood, ThroatSample } from "../model/club.ts";

/** Weight of each food in what some fish had eaten, and of all foods together. */
export interface FoodWeights {
  readonly byFood: ReadonlyMap<FoundFood, number>;
  readonly all: number;
}

export const NO_FOOD: FoodWeights = { byFood: new Map(), all: 0 };

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
export function addWeights(a: FoodWeights, b: FoodWeights): FoodWeights {
  const byFood = new Map(a.byFood);
  for (const [food, weight] of b.byFood) byFood.set(food, (byFood.get(food) ?? 0) + weight);
  return { byFood, all: a.all + b.all };
}

/** What a subtraction of weights leaves by rounding alone. */
const NOTHING_LEFT = 1e-9;

/** What is left of `a` without `b`, which is part of it. */
export function withoutWeights(a: FoodWeights, b: FoodWeights): FoodWeights {
  const byFood = new Map(
    [...a.byFood]
      .map(([food, weight]) => [food, weight - (b.byFood.get(food) ?? 0)] as const)
      .filter(([, weight]) => weight > NOTHING_LEFT),
  );
  return { byFood, all: [...byFood.values()].reduce((sum, weight) => sum + weight, 0) };
}
