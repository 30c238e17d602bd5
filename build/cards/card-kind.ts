import type { GuideLake } from "../guide/guide-schema.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Inputs } from "../model/memoize.ts";
import type { Ruler } from "./layout/column.ts";
import type { Overflow } from "./layout/page.ts";
import type { Fonts } from "./pdf/document.ts";
import type { CardFaces } from "./pdf/sheets.ts";

/** Something a club wrote that does not fit on a card. */
export interface CardProblem extends Diagnostic {
  /** The card's file name without its ending: of a lake's card the slug. */
  readonly card: string;
  readonly field: string;
}

/** Where a field is written, for those that are not the lake's own. */
const FIELD_FILES: Readonly<Record<string, string>> = {
  notice: "club.yaml",
  "club name": "club.yaml",
  leaders: "rigs.yaml",
  "leader names": "rigs.yaml",
  "shot names": "rigs.yaml",
  "line names": "rigs.yaml",
  "trip names": "trips",
  patterns: "patterns",
  baseUrl: "club.yaml",
};

/** Marks are written in a lake's shape. */
const fileOf = (card: string, field: string): string =>
  FIELD_FILES[field] ?? `lakes/${card}.${field === "marks" ? "geojson" : "yaml"}`;

/** A misfit of one card as a problem of the club's file it comes from. */
export const overflowProblem = (card: string, { field, message, hint }: Overflow): CardProblem => ({
  card,
  field,
  file: fileOf(card, field),
  line: 1,
  column: 1,
  severity: "error",
  code: "card-overflow",
  message: `card ${card}, field ${field}: ${message}`,
  hint,
});

/** A card with both sides placed, and what does not fit on them. */
export interface CardLayout extends CardFaces {
  readonly problems: readonly CardProblem[];
}

/** The cards of one lake, placed: its own and, where its shape is known, its map's. */
export interface LakeLayout {
  readonly lake: GuideLake;
  readonly cards: readonly CardLayout[];
}

/** What cards are placed with. */
export interface CardTools {
  readonly ruler: Ruler;
  /** Lakes of the same batch whose cards are placed already, so that their sheets need not place them again. */
  readonly lakes: readonly LakeLayout[];
}

/** Cards placed but not inked yet. */
export interface PlacedCards {
  readonly problems: readonly CardProblem[];
  /** Lakes whose cards these are, for the sheets that follow in the batch; none by default. */
  readonly lakes?: readonly LakeLayout[];
  /** The bytes of each file, in the order of their names. */
  readonly ink: (fonts: Fonts) => Promise<readonly Buffer[]>;
}

/** Cards of one kind, placed and inked from `inputs` alone: `place` sees nothing else. */
export interface CardKind<Own extends Inputs> {
  /** Two kinds never share a name. */
  readonly kind: string;
  readonly place: (inputs: Own, tools: CardTools) => PlacedCards;
}

/** A file of cards, or a few with the same cards on different papers: plain data, which another thread can be given. */
export interface CardFiles {
  readonly kind: string;
  /** Without their ending. */
  readonly names: readonly string[];
  readonly inputs: Inputs;
}

export const cardFiles = <Own extends Inputs>(
  { kind }: CardKind<Own>,
  names: readonly string[],
  inputs: Own,
): CardFiles => ({ kind, names, inputs });
