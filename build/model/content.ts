import type { BoatKind } from "./club.ts";
import type { DayState } from "./phase.ts";

/** The standing text that comes with the program, the same for every club. */
export interface StandingContent {
  readonly chapters: readonly Chapter[];
  readonly cautions: readonly ShortCaution[];
  readonly packing: readonly PackingRule[];
}

export interface Chapter {
  readonly slug: string;
  readonly title: string;
  readonly markdown: string;
}

/** One caution short enough for a card. */
interface ShortCaution {
  readonly id: string;
  /** The lake states in which it matters most. */
  readonly when: readonly ("always" | DayState)[];
  readonly short: string;
  /** The public agency whose advice it follows. */
  readonly agency: string;
}

/** What a packing rule counts: one number for the whole trip, or a line for each of several things. */
export const COUNTED_ONCE = [
  "trip",
  "rod",
  "person",
  "boat",
  "rodDay",
  "personDay",
  "aboard",
  "leader",
] as const;
export const COUNTED_EACH = ["board", "tippetMetre", "indicator", "shot", "line"] as const;

/** One rule of the packing list. Counts are rounded up to whole pieces; a line that counts none is left out. */
export interface PackingRule {
  readonly id: string;
  readonly group: string;
  /** With {name} where the rule makes a line for each of several things, {rope} for the length of anchor rope. */
  readonly item: string;
  readonly per: (typeof COUNTED_ONCE)[number] | (typeof COUNTED_EACH)[number];
  /** So many for each of what is counted; or one for `every` so many. */
  readonly number?: number | undefined;
  readonly every?: number | undefined;
  readonly least?: number | undefined;
  /** Only where the trip's lakes may well be in one of these states. */
  readonly states?: readonly DayState[] | undefined;
  readonly only?: "indicator" | "boats" | undefined;
  /** Counts boats of these kinds alone, and the people in them. */
  readonly boats?: readonly BoatKind[] | undefined;
  readonly why?: string | undefined;
  /** Id of a caution that belongs beside it. */
  readonly caution?: string | undefined;
}
