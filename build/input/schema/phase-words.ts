import type { Diagnostic } from "../../model/diagnostic.ts";
import { PHASE_WORDS, type Phase } from "../../model/phase.ts";
import { quoted, warningAt } from "../problem.ts";
import type { Path, PlacedData } from "../yaml/yaml-document.ts";
import { oneOf } from "./fields.ts";

/** What the best weeks were called in files of older clubs; still read. */
const OLD_WORD = "post-turnover";
const NEW_WORD = "best-weeks";

/** Every word that is read, in the order that messages list them. */
export const READ_WORDS = [...PHASE_WORDS, OLD_WORD] as const;
type PhaseWord = (typeof READ_WORDS)[number];

export const phaseOfWord = (word: PhaseWord): Phase => (word === NEW_WORD ? OLD_WORD : word);

/** A state of an open lake by its word. */
export const phaseWord = (description: string) => oneOf(READ_WORDS, description).transform(phaseOfWord);

/** A warning at each place of a file that uses the old word. */
export function oldPhaseWords(doc: PlacedData): Diagnostic[] {
  const fault = {
    code: "old-phase-word",
    message: `${quoted(OLD_WORD)} is now called ${quoted(NEW_WORD)}`,
    hint: `write “${NEW_WORD}”; the old word is still read`,
  };
  const search = (value: unknown, path: Path): Diagnostic[] => {
    if (value === OLD_WORD) return [warningAt(doc.spot(path), fault)];
    if (Array.isArray(value)) return value.flatMap((inner, i) => search(inner, [...path, i]));
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]) => [
      ...(key === OLD_WORD ? [warningAt(doc.keySpot([...path, key]), fault)] : []),
      ...search(inner, [...path, key]),
    ]);
  };
  return search(doc.data, []);
}
