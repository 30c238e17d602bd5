import { z } from "zod";
import { SIDES, WINDS } from "./compass.ts";
import { lineSchema } from "./map-schema.ts";

const shoreSchema = z.strictObject({
  sides: z.array(z.enum(SIDES)).meta({ description: "Sides of the lake where most of the shore is so." }),
  stretches: z
    .array(z.strictObject({ ring: z.number().int(), from: z.number().int(), to: z.number().int() }))
    .meta({ description: "The shore itself: positions “from” to “to” of shore[ring]." }),
});
export type ShoreParts = z.infer<typeof shoreSchema>;

const directionSchema = z.strictObject({
  from: z.enum(WINDS).meta({ description: "Where the wind blows from." }),
  rods: z.enum(WINDS).meta({
    description:
      "Where the rods of a boat at anchor point in this wind: downwind. On one anchor its bow lies to the wind. Common practice, no source.",
  }),
  fetch_m: z.number().meta({ description: "Longest straight stretch of open water along this wind." }),
  launchFetch_m: z.array(z.number()).meta({
    description: "Open water upwind of each launch, in their order; 0 where the wind comes off the land.",
  }),
  heights_m: z.array(z.number()).meta({
    description: "Significant wave height at the end of that fetch at forces 3, 4, 5 and 6.",
  }),
  sheltered: shoreSchema.meta({
    description: "Shore with at most a tenth of the lake's longest fetch upwind.",
  }),
  washed: shoreSchema.meta({ description: "Shore with at least half of the lake's longest fetch upwind." }),
});
export type WindDirection = z.infer<typeof directionSchema>;

const forceSchema = z.strictObject({
  force: z.number().int(),
  name: z.string(),
  least_mps: z.number(),
  most_mps: z.number(),
  sign: z.string().meta({ description: "What the shore shows of it." }),
  height_m: z.strictObject({ from: z.number(), to: z.number() }).meta({
    description:
      "Significant wave height along the lake's longest fetch at the top of the force: by the Coastal Engineering Manual (2002) and, higher, by the Shore Protection Manual (1984). Single waves reach nearly twice that.",
  }),
  period_s: z.number().meta({ description: "Peak period, Shore Protection Manual (1984)." }),
  growth_min: z.number().meta({ description: "How long such a wind takes to raise these waves." }),
  boats: z.string().meta({
    description:
      "What small craft should do; common practice, careful rather than bold. It never says that going out is safe.",
  }),
});
export type WindForce = z.infer<typeof forceSchema>;

/** What wind does to a lake of this shape. */
export const lakeWindSchema = z
  .strictObject({
    longest: z.strictObject({
      fetch_m: z.number(),
      along: z
        .tuple([z.enum(WINDS), z.enum(WINDS)])
        .meta({ description: "The two winds that blow along it." }),
    }),
    shore: z
      .array(lineSchema)
      .meta({ description: "Closed rings of shore, in short stretches of equal length." }),
    directions: z.array(directionSchema).length(WINDS.length),
    forces: z.array(forceSchema),
  })
  .meta({
    description:
      "Straight-line fetch over water; waves by deep-water formulas, so shallow water makes them lower. Hills and trees are not known: they shelter some shores and funnel the wind on others.",
  });
export type LakeWind = z.infer<typeof lakeWindSchema>;
