import { z } from "zod";
import { field } from "./field.ts";
import { day, oneOf, text } from "./field-kinds.ts";
import { season } from "./lake-fields.ts";
import { reportForm } from "./report-form.ts";

const holidayRow = z
  .strictObject({
    name: text("What the days are called."),
    from: day("First day."),
    to: day("Last day."),
  })
  .meta({ description: "A run of days on which people can get away." });

export const clubSchema = z
  .strictObject({
    name: text("The club's name."),
    notice: text("A sentence shown on every page and card.").optional(),
    example: field(
      z.boolean().optional().meta({
        description:
          "True for a club made up to be looked at: every page says so, and stands on the as-of day whatever day it is.",
      }),
      { absent: false },
    ),
    season: season("Year of the season the guide is for."),
    asOf: day("The day the guide speaks from; nothing dated later is used.").optional(),
    timezone: z
      .string()
      .min(1)
      .meta({ description: "IANA time zone of the lakes.", examples: ["America/Denver"] }),
    units: oneOf(["imperial", "metric"], "The units the guide is printed in."),
    holidays: field(
      z
        .array(holidayRow)
        .optional()
        .meta({ description: "Days for which the guide says where to go, besides the weekends." }),
      { absent: [] },
    ),
    reportForm: reportForm.optional(),
  })
  .meta({ title: "Club", description: "The club and the season: club.yaml." });
