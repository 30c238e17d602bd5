import { z } from "zod";
import { FOODS } from "../model/club.ts";
import { chanceSchema } from "../model/exported.ts";
import { PHASES } from "../model/phase.ts";

const percentSchema = z.number().min(0).max(100);

const importanceSchema = z
  .strictObject({
    numberPct: percentSchema,
    weightPct: percentSchema,
    frequencyPct: percentSchema,
    iri: z.number().min(0).max(20_000),
    iriPct: percentSchema,
  })
  .meta({ description: "Index of Relative Importance, by weight; null where it was not in a weighed fish." });

export const phaseDietSchema = z
  .strictObject({
    phase: z.enum(PHASES),
    fish: z.number().int().min(0).meta({ description: "Fish here with food in their throats." }),
    empty: z.number().int().min(0).meta({ description: "Fish here with nothing; not in any share." }),
    otherFish: z.number().int().min(0).meta({ description: "Fish with food at other lakes in this phase." }),
    otherLakes: z.number().int().min(0),
    weighedFish: z.number().int().min(0).meta({ description: "Fish here whose every food was weighed." }),
    words: z.string().meta({ description: "The evidence in words." }),
    foods: z
      .array(
        z.strictObject({
          food: z.enum(FOODS),
          fish: z.number().int().min(0).meta({ description: "Fish here that had it." }),
          seen: chanceSchema.meta({ description: "Its share of what the fish here had, weighed by fish." }),
          share: chanceSchema.meta({
            description: "Its share expected in the next fish; other lakes counted in.",
          }),
          low: chanceSchema,
          high: chanceSchema.meta({ description: "Low and high hold the share with eight chances in ten." }),
          importance: importanceSchema.nullable(),
        }),
      )
      .meta({
        description: "Foods found here or at other lakes in this phase, largest expected share first.",
      }),
  })
  .meta({ description: "What fish here eat in one phase, from throat samples." });
export type LakePhaseDiet = z.infer<typeof phaseDietSchema>;
