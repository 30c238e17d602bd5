import { z } from "zod";
import { FOODS } from "../model/club.ts";
import { PHASES } from "../model/phase.ts";
import { chanceSchema } from "../model/shared-schemas.ts";

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

const count = () => z.number().int().min(0);

const variety = {
  pattern: z.string().meta({ description: "Slug." }),
  name: z.string(),
  size: z.number().meta({ description: "Hook size." }),
  colour: z.string().nullable().meta({ description: "Null where the pattern names none." }),
};

const boxRowSchema = z.strictObject({
  row: z.number().int().min(1).meta({ description: "From the top of the box." }),
  ...variety,
  carry: count(),
  have: count().meta({ description: "In the club's box now; may be more than is carried." }),
  tie: count(),
  why: z.string().meta({ description: "One line: the list that calls for it most." }),
});
export type BoxRow = z.infer<typeof boxRowSchema>;

const tyingSchema = z.strictObject({
  pattern: variety.pattern,
  name: z.string(),
  flies: z.array(
    z.strictObject({ size: variety.size, colour: variety.colour, count: z.number().int().min(1) }),
  ),
  dressing: z.array(z.strictObject({ part: z.string(), material: z.string() })),
});
export type Tying = z.infer<typeof tyingSchema>;

const materialSchema = z.strictObject({
  material: z.string(),
  hookSize: z.number().nullable().meta({ description: "Null for what is no hook." }),
  flies: z.number().int().min(1).meta({ description: "How many flies it has to serve; of hooks, how many." }),
  text: z.string().meta({ description: "All of it in one line." }),
});
export type Material = z.infer<typeof materialSchema>;

/** Which flies a trip carries, which of them are still to be tied, and from what. */
export const boxPlanSchema = z.strictObject({
  rows: z.array(boxRowSchema),
  tying: z.array(tyingSchema).meta({ description: "What the box lacks, pattern by pattern." }),
  materials: z.array(materialSchema).meta({ description: "Hooks first, then the rest by name." }),
  losses: z.strictObject({
    expected: z.number().min(0).meta({ description: "Flies lost on average." }),
    planned: count().meta({ description: "Flies carried in all." }),
    words: z.string(),
  }),
});
export type BoxPlan = z.infer<typeof boxPlanSchema>;
