import { CARD } from "../model/addresses.ts";

/**
 * Lakes on the sheets of one file. With their maps, forty lakes are eighty cards: forty sheets of waterproof paper, about
 * what is printed in one go; most clubs' lakes all stand in one file. An edit of a lake inks again no more than these.
 * Common practice, no source.
 */
export const LAKES_PER_VOLUME = 40;

/** A file of sheets of lake cards, for each size of paper. */
export interface SheetVolume<Lake> {
  /** From 1 on; null where one file holds every lake. */
  readonly number: number | null;
  /** By slug. */
  readonly lakes: readonly Lake[];
}

/**
 * The lakes in volumes, by slug: the order of a forecast changes with every report, and would move lakes from one
 * volume to another.
 */
export function sheetVolumes<Lake extends { readonly slug: string }>(
  lakes: readonly Lake[],
): SheetVolume<Lake>[] {
  const all = lakes.toSorted((a, b) => (a.slug < b.slug ? -1 : 1));
  const count = Math.max(1, Math.ceil(all.length / LAKES_PER_VOLUME));
  return Array.from({ length: count }, (_, i) => ({
    number: count === 1 ? null : i + 1,
    lakes: all.slice(i * LAKES_PER_VOLUME, (i + 1) * LAKES_PER_VOLUME),
  }));
}

/** "sheets", or "sheets-2" for the second volume: a file's name under cards/ before its paper, as in "sheets-2-a4". */
export const sheetsName = ({ number }: Pick<SheetVolume<unknown>, "number">): string => CARD.lakes(number);
