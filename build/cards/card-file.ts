import type { Needs } from "../model/needs.ts";
import type { CardProblem } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import type { Fonts } from "./fonts.ts";
import type { CardFaces } from "./sheets.ts";

/** A card with both sides placed, and what does not fit on them. */
export interface CardLayout extends CardFaces {
  readonly problems: readonly CardProblem[];
}

/** What cards are placed with, one after another. */
export interface CardTools {
  readonly ruler: Ruler;
  /** Lakes whose own cards were inked, until the sheets that hold them take them from here. */
  readonly placedLakes: Map<unknown, readonly CardLayout[]>;
}

/** Cards placed but not inked yet. */
export interface Placed {
  readonly problems: readonly CardProblem[];
  /** The bytes of each file, in the order of their names. */
  readonly ink: (fonts: Fonts) => Promise<readonly Buffer[]>;
}

/** Cards of one kind, placed and inked from `needs` alone: `place` sees nothing else. */
export interface CardKind<Own extends Needs> {
  /** Two kinds never share a name. */
  readonly kind: string;
  readonly place: (needs: Own, tools: CardTools) => Placed;
}

/** A file of cards, or a few with the same cards on different papers: plain data, which another thread can be given. */
export interface CardFiles {
  readonly kind: string;
  /** Without their ending. */
  readonly names: readonly string[];
  readonly needs: Needs;
}

export const cardFiles = <Own extends Needs>(
  { kind }: CardKind<Own>,
  names: readonly string[],
  needs: Own,
): CardFiles => ({ kind, names, needs });
