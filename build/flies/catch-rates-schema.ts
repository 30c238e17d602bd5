import { z } from "zod";
import { PHASES } from "../model/phase.ts";

export const catchRateSchema = z
  .strictObject({
    fish: z.number().int().min(0),
    rodHours: z.number().positive(),
    mean: z.number().min(0).meta({ description: "Fish a rod-hour: the ratio of the two totals." }),
    low: z.number().min(0),
    high: z
      .number()
      .positive()
      .meta({ description: "Low and high: exact 95 % interval of a Poisson count." }),
  })
  .meta({ description: "Catch per rod-hour, days without a fish included." });

const rate = (description: string) => catchRateSchema.nullable().meta({ description });

export const lakeCatchesSchema = z.strictObject({
  season: rate("This season; null when no report tells."),
  all: rate("All seasons."),
  phases: z
    .array(z.strictObject({ phase: z.enum(PHASES), rate: catchRateSchema }))
    .meta({ description: "All seasons, phase by phase; visits whose phase nobody can tell are left out." }),
});
export type LakeCatches = z.infer<typeof lakeCatchesSchema>;
