import type { Outdoors } from "./season-chart.ts";
import type { Occasion } from "./when-schema.ts";

/** Where else to go on the weekend that comes next. */
export interface Elsewhere {
  readonly days: Outdoors;
  /** The weekend's pick and its fallback, as the board names them, without the lake itself; empty where no road to another is open. */
  readonly lakes: readonly { readonly slug: string; readonly name: string; readonly good: number }[];
}

/** Lakes named. */
const NAMED = 2;

/** The lakes of the best pairs of the coming weekend, a lake itself left out; null when the forecast holds no weekend to come. */
export function elsewhereThan(slug: string, occasions: readonly Occasion[]): Elsewhere | null {
  const weekend = occasions.find(({ name }) => name === null);
  if (weekend === undefined) return null;
  const { name, from, to, best, next } = weekend;
  const all = [best, best?.fallback ?? null, next, next?.fallback ?? null].flatMap((lake) =>
    lake === null || lake.slug === slug ? [] : [{ slug: lake.slug, name: lake.name, good: lake.good }],
  );
  return {
    days: { name, from, to },
    lakes: all.filter((lake, i) => all.findIndex((other) => other.slug === lake.slug) === i).slice(0, NAMED),
  };
}
