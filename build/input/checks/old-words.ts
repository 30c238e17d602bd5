import type { Diagnostic } from "../../model/diagnostic.ts";
import { quoted } from "../../model/fault.ts";
import { NEW_WORD, OLD_WORD } from "../../model/fields/phase-words.ts";
import { warningAt } from "../problem.ts";
import type { Path, PlacedData } from "../yaml/yaml-document.ts";

/** A warning at each place of a file that calls the best weeks by their old word. */
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
