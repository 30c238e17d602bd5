import { z } from "zod";
import { chanceSchema, dateSchema } from "../model/shared-schemas.ts";

/** A lake to go to and one to fall back on. */
export const outingSchema = z
  .strictObject({
    slug: z.string(),
    name: z.string(),
    good: chanceSchema.meta({ description: "Chance that it is good, mean over the days." }),
    fallback: z
      .strictObject({ slug: z.string(), name: z.string(), good: chanceSchema })
      .nullable()
      .meta({ description: "Null where only one lake comes into question." }),
    either: chanceSchema.meta({
      description:
        "Chance that at least one of the two is good that day, sharing one spring; mean over the days.",
    }),
  })
  .meta({
    description:
      "The pair of lakes most likely to hold a good one; of the two the better single is the pick.",
  });
export type Outing = z.infer<typeof outingSchema>;

/** Lakes named beside a pair. */
export const fishableSchema = z
  .array(z.strictObject({ slug: z.string(), name: z.string(), chance: chanceSchema }))
  .meta({
    description: "Lakes that are more likely fishable than not, good or in their later weeks; three at most.",
  });

/** A lake that is left out, and why. */
export const leftOutSchema = z.strictObject({ slug: z.string(), name: z.string(), why: z.string() });
export type LeftOut = z.infer<typeof leftOutSchema>;

const occasionSchema = z.strictObject({
  name: z.string().nullable().meta({ description: "The holiday's name; null for a weekend." }),
  from: dateSchema,
  to: dateSchema,
  best: outingSchema.nullable().meta({ description: "Null where no road is open." }),
  isLikely: z
    .boolean()
    .meta({ description: "True where the best pair holds a good lake with one chance in ten or more." }),
  next: outingSchema.nullable().meta({ description: "The second best of all pairs." }),
  fishable: fishableSchema,
  out: z.array(leftOutSchema).meta({
    description: "Lakes that would be as likely good as the fallback if only their roads were open.",
  }),
});
export type Occasion = z.infer<typeof occasionSchema>;

/** Where to go on each weekend and holiday still to come, and every lake's chances week by week. */
export const whenSchema = z.strictObject({
  occasions: z.array(occasionSchema),
  pool: z
    .number()
    .int()
    .nullable()
    .meta({ description: "How many lakes, those best alone, pairs were made of; null when of all." }),
  weeks: z.array(z.strictObject({ from: dateSchema, to: dateSchema })),
  lakes: z.array(
    z.strictObject({
      slug: z.string(),
      name: z.string(),
      good: z
        .array(chanceSchema.nullable())
        .meta({ description: "Mean over each week; null in a week when the road is closed." }),
    }),
  ),
});
export type When = z.infer<typeof whenSchema>;
