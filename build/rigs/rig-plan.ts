import { z } from "zod";
import { LINE_KINDS, METHODS } from "../model/club.ts";
import { PHASES } from "../model/phase.ts";

const depthBandSchema = z.strictObject({ from_m: z.number().min(0), to_m: z.number().min(0) });

/** A tippet size as anglers write it: "4X", "4.5X". */
const sizeSchema = z.string().regex(/^\d(\.5)?X$/);

/** One leader worked out: what it is made of, what it reaches, what its board says. */
export const leaderSchema = z.strictObject({
  name: z.string(),
  sections: z.array(
    z.strictObject({
      part: z.enum(["taper", "middle", "tippet"]),
      length_m: z.number(),
      size: sizeSchema,
      diameter_mm: z.number(),
    }),
  ),
  total_m: z.number(),
  knotted_m: z.number().meta({ description: "Middle and tippet: no indicator slides here." }),
  serves: depthBandSchema.nullable().meta({ description: "Set depths it can be used for; null when none." }),
  tied: z.number().int().min(0),
  warnings: z.array(z.string()),
  label: z.array(z.string()).meta({ description: "The text of its board's label, line by line." }),
});
export type Leader = z.infer<typeof leaderSchema>;

/** A fly line and how long to count it down. */
export const lineSchema = z.strictObject({
  name: z.string(),
  kind: z.enum(LINE_KINDS),
  sinkRate_mps: z.number().nullable().meta({ description: "Null for a line that floats." }),
  countdown: z.array(z.strictObject({ depth_m: z.number(), seconds: z.number() })),
});
export type Line = z.infer<typeof lineSchema>;

/** The tippet table, whole and half sizes. */
export const tippetSchema = z.strictObject({ size: sizeSchema, diameter_mm: z.number() });
export type Tippet = z.infer<typeof tippetSchema>;

/** One way of fishing one phase of one lake. */
const rigSchema = z.strictObject({
  way: z.enum(METHODS),
  setDepth: depthBandSchema
    .nullable()
    .meta({ description: "From fly to stop, for the band's shallow and deep end." }),
  fly: depthBandSchema.nullable().meta({
    description: "How deep the fly fishes over the band's shallow and deep end; null where there is no room.",
  }),
  leader: z.string().nullable().meta({ description: "Name of the leader that serves it." }),
  hold: z
    .enum(["fixed", "slip"])
    .nullable()
    .meta({ description: "Whether the indicator may be fixed for landing." }),
  line: z.string().nullable(),
  countdown: z.strictObject({ from_s: z.number(), to_s: z.number() }).nullable(),
  check: z.string().meta({ description: "How to know on the water that it is right." }),
  uncovered: z.string().nullable().meta({ description: "What cannot be covered with the gear carried." }),
});
export type Rig = z.infer<typeof rigSchema>;

const fishedBandSchema = depthBandSchema.extend({
  source: z
    .enum(["club", "usual"])
    .meta({ description: "Plumbed by the club, or common practice where it was not." }),
});

/** A way of fishing where nobody has plumbed: in the best phase for it, over that phase's usual depths. */
export const usualRigSchema = z.strictObject({
  phase: z.enum(PHASES),
  band: fishedBandSchema,
  rig: rigSchema,
});
export type UsualRig = z.infer<typeof usualRigSchema>;

/** What to fish in one phase of one lake. */
export const phaseRigsSchema = z.strictObject({
  phase: z.enum(PHASES),
  band: fishedBandSchema,
  rigs: z.array(rigSchema).meta({ description: "First the one to start with." }),
});
export type PhaseRigs = z.infer<typeof phaseRigsSchema>;
