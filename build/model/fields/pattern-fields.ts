import { z } from "zod";
import { FOODS, METHODS, WATER_COLOURS } from "../choices.ts";
import { field } from "./field.ts";
import { oneOf, quantity, text, whole } from "./field-kinds.ts";
import { phaseWord } from "./phase-words.ts";

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
    colours: field(z.array(text("A colour.")).optional().meta({ description: "Colours it is tied in." }), {
      absent: [],
    }),
    phases: z
      .array(phaseWord("A phase."))
      .min(1)
      .meta({ description: "When it is fished.", examples: [["ice-off", "best-weeks"]] }),
    ways: z
      .array(oneOf(METHODS, "A way of fishing."))
      .min(1)
      .meta({ description: "How it is fished, the usual way first.", examples: [["indicator still"]] }),
    waters: field(
      z
        .array(oneOf(WATER_COLOURS, "A water colour."))
        .optional()
        .meta({ description: "Water colours it is tied for; any when left out." }),
      { absent: [] },
    ),
    stock: field(
      z
        .array(
          z.strictObject({
            size: hookSize("Hook size."),
            colour: text("Colour."),
            count: whole(0, 100_000, "How many are in the box."),
          }),
        )
        .optional()
        .meta({ description: "What is in the club's box." }),
      { absent: [] },
    ),
    dressing: field(
      z
        .array(z.strictObject({ part: text("Part of the fly."), material: text("What it is made of.") }))
        .optional()
        .meta({ description: "How it is tied, in order." }),
      { absent: [] },
    ),
    mass: field(
      quantity("mass", {
        description: "Mass of the finished fly.",
        example: "0.1 g",
        above: "0 g",
        most: "10 g",
      }).optional(),
      { as: "mass_g" },
    ),
    notes: field(text("Anything else, in Markdown.").optional(), { markdown: true }),
  })
  .meta({ title: "Pattern", description: "One fly pattern: patterns/NAME.yaml." });
