import { z } from "zod";
import { FOODS, METHODS, type Pattern, WATER_COLOURS } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { PHASES } from "../model/phase.ts";
import type { ClubFile } from "./club-files.ts";
import { oneOf, quantity, text, whole } from "./schema/fields.ts";
import { omitUndefined, readRecord } from "./schema/read-record.ts";
import { readYaml } from "./yaml/yaml-document.ts";

const hookSize = (description: string) => whole(1, 28, description);

export const patternSchema = z
  .strictObject({
    name: text("What the club calls the fly."),
    imitates: oneOf(FOODS, "What the fish take it for."),
    rank: whole(
      1,
      1000,
      "Its place in the club's own order, 1 first; left out, the guide puts it after those with one.",
    ).optional(),
    sizes: z
      .array(hookSize("A hook size."))
      .min(1)
      .meta({ description: "Hook sizes, 1 to 28.", examples: [[12, 14]] }),
    colours: z.array(text("A colour.")).optional().meta({ description: "Colours it is tied in." }),
    phases: z
      .array(oneOf(PHASES, "A phase."))
      .min(1)
      .meta({ description: "When it is fished.", examples: [["ice-off", "post-turnover"]] }),
    ways: z
      .array(oneOf(METHODS, "A way of fishing."))
      .min(1)
      .meta({ description: "How it is fished, the usual way first.", examples: [["indicator still"]] }),
    waters: z
      .array(oneOf(WATER_COLOURS, "A water colour."))
      .optional()
      .meta({ description: "Water colours it is tied for; any when left out." }),
    stock: z
      .array(
        z.strictObject({
          size: hookSize("Hook size."),
          colour: text("Colour."),
          count: whole(0, 100_000, "How many are in the box."),
        }),
      )
      .optional()
      .meta({ description: "What is in the club's box." }),
    dressing: z
      .array(z.strictObject({ part: text("Part of the fly."), material: text("What it is made of.") }))
      .optional()
      .meta({ description: "How it is tied, in order." }),
    mass: quantity("mass", {
      description: "Mass of the finished fly.",
      example: "0.1 g",
      above: "0 g",
      most: "10 g",
    }).optional(),
    notes: text("Anything else, in Markdown.").optional(),
  })
  .meta({ title: "Pattern", description: "One fly pattern: patterns/NAME.yaml." });

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
    ...omitUndefined({ rank: fields.rank, mass_g: fields.mass, notes: fields.notes }),
  };
}
