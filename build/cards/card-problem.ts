import type { Diagnostic } from "../model/diagnostic.ts";
import type { Misfit } from "./face.ts";

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
export const problemOf = (card: string, { field, message, hint }: Misfit): CardProblem => ({
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
