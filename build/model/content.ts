import type { DayState } from "./phase.ts";

/** The standing text that comes with the program, the same for every club. */
export interface StandingContent {
  readonly chapters: readonly Chapter[];
  readonly cautions: readonly ShortCaution[];
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
