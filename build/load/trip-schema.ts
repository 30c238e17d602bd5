import { z } from "zod";
import { day, text, whole } from "./fields.ts";
import { quantity } from "./quantity.ts";

export const tripSchema = z
  .strictObject({
    name: text("What the trip is called."),
    from: day("First day."),
    to: day("Last day."),
    rods: whole(1, 100, "How many people fish."),
    lakes: z
      .array(text("File name of a lake, without .yaml."))
      .min(1)
      .optional()
      .meta({
        description: "Lakes that come into question, the first choice first. Left out: all of the club's.",
        examples: [["ember"]],
      }),
    people: z
      .array(text("One person, as the club calls them."))
      .optional()
      .meta({ description: "Who comes, also those who do not fish.", examples: [["Ines", "Tobin"]] }),
    boats: z
      .array(
        z
          .strictObject({
            name: text("What the boat is called."),
            seats: whole(1, 50, "How many it carries."),
          })
          .meta({ description: "One boat." }),
      )
      .optional()
      .meta({ description: "Boats, tubes and rafts that come along." }),
    flyLoss: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .meta({
        description: "Flies a rod is expected to lose in a day.",
        examples: [3],
      }),
    travel: z
      .strictObject({
        longest: quantity("duration", {
          description: "The farthest a lake may be from the usual meeting place, one way.",
          example: "2 h",
          above: "0 h",
          most: "200 h",
        }),
      })
      .optional()
      .meta({ description: "How far the trip goes." }),
    notes: text("Plans and meeting places, in Markdown.").optional(),
    unlisted: z
      .boolean()
      .optional()
      .meta({ description: "True: the page exists, but nothing in the guide links to it." }),
  })
  .meta({ title: "Trip", description: "One planned trip: trips/NAME.yaml." });
