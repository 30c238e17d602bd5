import { z } from "zod";

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
