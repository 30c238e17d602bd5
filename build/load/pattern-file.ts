import type { Pattern } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { patternSchema } from "./pattern-schema.ts";
import { present } from "./present.ts";
import { readRecord } from "./read-record.ts";
import { readYaml } from "./yaml-document.ts";

/** Reads one pattern; undefined when something it needs is missing. */
export function readPattern({ file, slug, text }: ClubFile, problems: Diagnostic[]): Pattern | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const fields = readRecord(patternSchema, doc, problems);
  const { name, imitates, sizes, phases, ways } = fields;
  if (
    name === undefined ||
    imitates === undefined ||
    sizes === undefined ||
    phases === undefined ||
    ways === undefined
  )
    return undefined;
  return {
    slug,
    name,
    imitates,
    sizes: [...new Set(sizes)].sort((a, b) => a - b),
    colours: fields.colours ?? [],
    phases: [...new Set(phases)],
    ways: [...new Set(ways)],
    waters: [...new Set(fields.waters ?? [])],
    stock: fields.stock ?? [],
    dressing: fields.dressing ?? [],
    ...present({ rank: fields.rank, mass_g: fields.mass, notes: fields.notes }),
  };
}
