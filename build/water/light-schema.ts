import { z } from "zod";
import { dateSchema } from "../model/exported.ts";

const SUN_DAYS = ["day and night", "no night", "no sunset", "no sunrise", "no daylight"] as const;
export const MOON_PHASES = [
  "new moon",
  "waxing crescent",
  "first quarter",
  "waxing gibbous",
  "full moon",
  "waning gibbous",
  "last quarter",
  "waning crescent",
] as const;

const minuteSchema = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d[+-]\d\d:\d\d$/)
  .nullable();

/** The light of one day at the lake. */
export const lightSchema = z
  .strictObject({
    date: dateSchema,
    firstLight: minuteSchema.meta({ description: "Civil dawn: the sun 6 degrees below the horizon." }),
    sunrise: minuteSchema,
    sunset: minuteSchema,
    lastLight: minuteSchema.meta({ description: "Civil dusk." }),
    sun: z.enum(SUN_DAYS).meta({ description: "Whether it gets dark, and whether the sun rises and sets." }),
    words: z
      .string()
      .nullable()
      .meta({ description: "What to say on a day without night, sunset or sunrise." }),
    moon: z.strictObject({
      phase: z.enum(MOON_PHASES).meta({
        description: "New, quarters and full on the day they fall on, in the club's time zone.",
      }),
      lit: z.number().min(0).max(1).meta({ description: "Lit share of the moon's disc at noon." }),
    }),
  })
  .meta({
    description:
      "From one midnight sun to the next, so that a sunset past midnight belongs to the evening before. Local time with its offset; a level horizon, as almanacs do: hills bring sunset forward. Null where it does not happen.",
  });
export type Light = z.infer<typeof lightSchema>;
