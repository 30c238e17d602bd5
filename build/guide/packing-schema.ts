import { z } from "zod";

/** What to put in the car, group by group; every line has a count. */
export const packingSchema = z.array(
  z.strictObject({
    group: z.string(),
    items: z.array(
      z.strictObject({
        id: z.string(),
        item: z.string(),
        count: z.number().int().min(1),
        why: z.string().nullable(),
      }),
    ),
  }),
);
export type Packing = z.infer<typeof packingSchema>;
