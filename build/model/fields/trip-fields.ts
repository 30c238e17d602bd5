import { z } from "zod";
import { BOAT_KINDS } from "../choices.ts";
import { field } from "./field.ts";
import { day, oneOf, quantity, text, whole } from "./field-kinds.ts";

export const tripSchema = z
  .strictObject({
    name: text("What the trip is called."),
    from: day("First day."),
    to: day("Last day."),
    rods: whole(1, 100, "How many people fish."),
    lakes: field(
      z
        .array(text("File name of a lake, without .yaml."))
        .min(1)
        .optional()
        .meta({
          description: "Lakes that come into question, the first choice first. Left out: all of the club's.",
          examples: [["ember"]],
        }),
      { absent: [] },
    ),
    people: field(
      z
        .array(text("One person, as the club calls them."))
        .optional()
        .meta({ description: "Who comes, also those who do not fish.", examples: [["Ines", "Tobin"]] }),
      { absent: [], explained: "Empty when nobody is named." },
    ),
    boats: field(
      z
        .array(
          z
            .strictObject({
              name: text("What the boat is called."),
              kind: field(oneOf(BOAT_KINDS, "What kind of boat; a pram when left out.").optional(), {
                absent: "pram",
              }),
              seats: whole(1, 50, "How many it carries."),
            })
            .meta({ description: "One boat." }),
        )
        .optional()
        .meta({ description: "Boats, tubes and rafts that come along." }),
      { absent: [] },
    ),
    flyLoss: field(
      z
        .number()
        .min(0)
        .max(100)
        .optional()
        .meta({
          description: "Flies a rod is expected to lose in a day.",
          examples: [3],
        }),
      { as: "flyLoss_rodDay" },
    ),
    travel: field(
      z
        .strictObject({
          longest: field(
            quantity("duration", {
              description: "The farthest a lake may be from the usual meeting place, one way.",
              example: "2 h",
              above: "0 h",
              most: "200 h",
            }),
            { as: "longestTravel_h" },
          ),
        })
        .optional()
        .meta({ description: "How far the trip goes." }),
      { flat: true },
    ),
    notes: field(text("Plans and meeting places, in Markdown.").optional(), { markdown: true }),
    unlisted: field(
      z
        .boolean()
        .optional()
        .meta({ description: "True: the page exists, but nothing in the guide links to it." }),
      { absent: false },
    ),
  })
  .meta({ title: "Trip", description: "One planned trip: trips/NAME.yaml." });
