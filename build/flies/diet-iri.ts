/** One food over some fish: how many items, how much of it, in how many fish. */
export interface FoodAmount {
  readonly count: number;
  /** Weight or volume, in one unit for all foods. */
  readonly amount: number;
  readonly fish: number;
}

/** A food's importance, every part in per cent; `iri` runs from 0 to 20,000. */
export interface Importance {
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
