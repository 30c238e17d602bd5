import type { Pattern, WaterColour, Way } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";

/** A pattern in its place on a lake's list for one phase. */
export interface FlyPlace {
  readonly pattern: Pattern;
  readonly way: Way;
  /** One line for readers. */
  readonly why: string;
}

const WATER_WORDS: Readonly<Record<WaterColour, string>> = {
  marl: "pale marl water",
  clear: "clear water",
  green: "green water",
  tea: "tea-coloured water",
};

const stockOf = (pattern: Pattern): number => pattern.stock.reduce((sum, { count }) => sum + count, 0);

const suits = (pattern: Pattern, water: WaterColour | undefined): boolean =>
  water === undefined || pattern.waters.length === 0 || pattern.waters.includes(water);

/**
 * The club's patterns for one phase of one lake, best first: those tied for the water's colour, then those fished
 * the way the phase is fished first, then those in the box; otherwise the club's own order.
 * @param ways how the phase is fished, first choice first
 */
export function chooseFlies(
  patterns: readonly Pattern[],
  phase: Phase,
  ways: readonly Way[],
  water: WaterColour | undefined,
): FlyPlace[] {
  return patterns
    .filter((pattern) => pattern.phases.includes(phase) && suits(pattern, water))
    .flatMap((pattern) => {
      const way = ways.find((candidate) => pattern.ways.includes(candidate));
      if (way === undefined) return [];
      const tiedForWater = water !== undefined && pattern.waters.includes(water);
      return [{ pattern, way, tiedForWater, wayRank: ways.indexOf(way), stock: stockOf(pattern) }];
    })
    .sort(
      (a, b) =>
        Number(b.tiedForWater) - Number(a.tiedForWater) ||
        a.wayRank - b.wayRank ||
        Number(b.stock > 0) - Number(a.stock > 0),
    )
    .map(({ pattern, way, tiedForWater, stock }) => ({
      pattern,
      way,
      why: [
        pattern.imitates === "nothing in particular"
          ? "imitates nothing in particular"
          : `for ${pattern.imitates}`,
        tiedForWater && water !== undefined ? `tied for ${WATER_WORDS[water]}` : "any water",
        stock > 0 ? `${stock} in the box` : "none in the box",
      ].join(", "),
    }));
}
