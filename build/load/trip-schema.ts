import { z } from "zod";
import { day, text, whole } from "./fields.ts";

export const tripSchema = z
  .strictObject({
    name: text("What the trip is called."),
    from: day("First day."),
    to: day("Last day."),
    rods: whole(1, 100, "How many people fish."),
    lakes: z
      .array(text("File name of a lake, without .yaml."))
      .min(1)
      .meta({ description: "Lakes that come into question, the first choice first.", examples: [["ember"]] }),
    notes: text("Plans and meeting places, in Markdown.").optional(),
    unlisted: z
      .boolean()
      .optional()
      .meta({ description: "True: the page exists, but nothing in the guide links to it." }),
  })
  .meta({ title: "Trip", description: "One planned trip: trips/NAME.yaml." });
