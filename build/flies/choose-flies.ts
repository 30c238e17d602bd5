import type { Pattern, WaterColour, Way } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";

/** A pattern that suits a lake in a phase, and what the club's own entry says for it there. */
export interface SuitedFly {
  readonly pattern: Pattern;
  readonly way: Way;
  /** The lake's water when the pattern is tied for it; null when it is tied for any. */
  readonly tiedFor: WaterColour | null;
  /** Flies of it in the box. */
  readonly stock: number;
}

const stockOf = (pattern: Pattern): number => pattern.stock.reduce((sum, { count }) => sum + count, 0);

const suits = (pattern: Pattern, water: WaterColour | undefined): boolean =>
  water === undefined || pattern.waters.length === 0 || pattern.waters.includes(water);

/**
 * The patterns that suit one phase of one lake, in the club's own order: by the ranks it wrote; without them as its entries say, those tied
 * for the water's colour first (scuds take the colour of their lake), then those fished the way the phase is fished first, then
 * those in the box; then by file name. Common practice, no source.
 * @param ways how the phase is fished, first choice first
 */
export function chooseFlies(
  patterns: readonly Pattern[],
  phase: Phase,
  ways: readonly Way[],
  water: WaterColour | undefined,
): SuitedFly[] {
  return patterns
    .filter((pattern) => pattern.phases.includes(phase) && suits(pattern, water))
    .flatMap((pattern) => {
      const way = ways.find((candidate) => pattern.ways.includes(candidate));
      if (way === undefined) return [];
      const tiedFor = water !== undefined && pattern.waters.includes(water) ? water : null;
      return [
        {
          fly: { pattern, way, tiedFor, stock: stockOf(pattern) },
          rank: pattern.rank ?? Number.MAX_SAFE_INTEGER,
          wayRank: ways.indexOf(way),
        },
      ];
    })
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        Number(b.fly.tiedFor !== null) - Number(a.fly.tiedFor !== null) ||
        a.wayRank - b.wayRank ||
        Number(b.fly.stock > 0) - Number(a.fly.stock > 0),
    )
    .map(({ fly }) => fly);
}
