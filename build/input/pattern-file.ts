import type { Pattern } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { clubRecordIfWhole } from "../model/fields/field.ts";
import { patternSchema } from "../model/fields/pattern-fields.ts";
import { oldPhaseWords } from "./checks/old-words.ts";
import type { ClubFile } from "./club-files.ts";
import { readRecord } from "./schema/read-record.ts";
import { readYaml } from "./yaml/yaml-document.ts";

const eachOnce = <T>(values: readonly T[]): T[] => [...new Set(values)];

/** Reads one pattern; undefined when something it needs is missing. */
export function readPattern({ file, slug, text }: ClubFile, problems: Diagnostic[]): Pattern | undefined {
  const doc = readYaml(file, text, problems);
  if (doc !== undefined) problems.push(...oldPhaseWords(doc));
  const pattern = doc && clubRecordIfWhole(patternSchema, readRecord(patternSchema, doc, problems));
  return (
    pattern && {
      ...pattern,
      slug,
      sizes: eachOnce(pattern.sizes).sort((a, b) => a - b),
      phases: eachOnce(pattern.phases),
      ways: eachOnce(pattern.ways),
      waters: eachOnce(pattern.waters),
    }
  );
}
