import { z } from "zod";
import { CONDITIONS, LINE_KINDS, METHODS } from "../model/club.ts";
import { PHASES } from "../model/phase.ts";
import { FLY_CLASSES } from "./fly-classes.ts";

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
  tip_m: z.number().nullable().meta({ description: "Length of a sink tip; it never hangs deeper." }),
  counts: z
    .array(
      z.strictObject({
        depth_m: z.number(),
        seconds: z.number().nullable().meta({ description: "Null over 90 s, or beyond a tip's length." }),
        long: z.boolean().meta({ description: "Over 60 s." }),
        hold_mps: z
          .number()
          .nullable()
          .meta({ description: "Drawn in at this speed from a 50 ft cast the line keeps its depth." }),
      }),
    )
    .meta({ description: "Empty for a line that floats, or whose rate or tip is not known." }),
});
export type Line = z.infer<typeof lineSchema>;

/** The tippet table, whole and half sizes. */
export const tippetSchema = z.strictObject({ size: sizeSchema, diameter_mm: z.number() });
export type Tippet = z.infer<typeof tippetSchema>;

/** The tippet to start with for a hook size. */
export const tippetForHookSchema = z.strictObject({
  hook: z.number().int(),
  clear: sizeSchema,
  ordinary: sizeSchema,
  cloudy: sizeSchema,
});
export type TippetForHook = z.infer<typeof tippetForHookSchema>;

/** One method in one phase of one lake. */
const rigSchema = z.strictObject({
  way: z.enum(METHODS).meta({ description: "The method." }),
  setDepth: depthBandSchema
    .nullable()
    .meta({ description: "From fly to stop, for the band's shallow and deep end." }),
  fly: depthBandSchema.nullable().meta({
    description: "How deep the fly fishes over the band's shallow and deep end; null where there is no room.",
  }),
  leader: z.string().nullable().meta({ description: "Name of the leader that serves it." }),
  landing: z
    .enum(["fixed", "slip"])
    .nullable()
    .meta({ description: "Whether the indicator may be fixed for landing." }),
  line: z.string().nullable(),
  countdown: z
    .strictObject({
      from_s: z.number(),
      to_s: z.number().nullable().meta({ description: "Null where the deep end has no count." }),
      long: z.boolean().meta({ description: "Over 60 s." }),
    })
    .nullable(),
  draw: z.string().nullable().meta({ description: "How to draw or troll it." }),
  check: z.string().meta({ description: "How to know on the water that it is right." }),
  uncovered: z.string().nullable().meta({ description: "What cannot be covered with the gear carried." }),
});
export type Rig = z.infer<typeof rigSchema>;

const fishedBandSchema = depthBandSchema.extend({
  source: z
    .enum(["club", "usual"])
    .meta({ description: "Plumbed by the club, or common practice where it was not." }),
});

/** A method where nobody has plumbed: in the best phase for it, over that phase's usual depths. */
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

/** The leader boards to tie for a lake or a trip. */
export const leaderBoardsSchema = z.strictObject({
  boards: z.array(
    z.strictObject({
      leader: leaderSchema,
      why: z.string().meta({ description: "What it is for, in words." }),
      needed: z.number().int().min(0),
      how: z.string().meta({ description: "How the number needed comes about." }),
      tie: z.number().int().min(0).meta({ description: "How many to tie beyond those on boards." }),
    }),
  ),
  uncovered: z
    .array(z.string())
    .meta({ description: "What no leader here serves, and the nearest that would." }),
});
export type LeaderBoards = z.infer<typeof leaderBoardsSchema>;

const shotSchema = z.array(
  z.strictObject({ name: z.string(), count: z.number().int().min(1), diameter_mm: z.number() }),
);
const waitSchema = z.strictObject({
  from_s: z.number().meta({ description: "After throwing slack, when the indicator runs in." }),
  to_s: z.number().meta({ description: "On a tight line." }),
  long: z.boolean().meta({ description: "Over 90 s." }),
});

/** What to set and pinch on by the depth just plumbed. */
export const plumbTableSchema = z.strictObject({
  fly: z
    .enum(FLY_CLASSES)
    .meta({ description: "The fly the table is for; lighter and heavier ones follow." }),
  water_C: z.number(),
  columns: z.array(
    z.strictObject({
      condition: z.enum(CONDITIONS),
      looks: z.string(),
      from_s: z.number().meta({ description: "Seconds for foam to pass one rod length, at least." }),
      to_s: z.number().nullable().meta({ description: "And at most; null for no limit." }),
    }),
  ),
  depths: z.array(
    z.strictObject({
      depth_m: z.number().meta({ description: "Plumbed depth of the water." }),
      set_m: z.number().nullable().meta({ description: "From fly to stop; null where it is too shallow." }),
      board: z.string().nullable().meta({ description: "Null when no leader in the box serves the set." }),
      landing: z.enum(["fixed", "slip"]),
      rows: z
        .array(
          z.strictObject({
            fly: z.enum(FLY_CLASSES),
            cells: z.array(
              z.strictObject({
                condition: z.enum(CONDITIONS),
                text: z.string().meta({ description: "Short enough for a card." }),
                shot: shotSchema,
                hold: z.boolean().meta({ description: "The line must be held still, or the fly lifts." }),
                tooQuick: z.boolean(),
                lift: z
                  .strictObject({ expected_m: z.number(), doubtful_m: z.number() })
                  .nullable()
                  .meta({ description: "How much higher than straight below the fly hangs." }),
              }),
            ),
            indicator: z
              .string()
              .nullable()
              .meta({ description: "The smallest carried that serves the row." }),
            indicator_mm: z.number().nullable().meta({ description: "Its diameter." }),
            leastIndicator_mm: z.number().nullable().meta({
              description: "The diameter that would just serve; null where nothing as heavy floats it.",
            }),
            wait: waitSchema.nullable().meta({ description: "For the step of the calm column." }),
          }),
        )
        .meta({ description: "By class of fly; empty where no leader serves the set." }),
      rope: z.array(z.strictObject({ condition: z.enum(CONDITIONS), length_m: z.number() })),
    }),
  ),
  scope: z
    .strictObject({ calm: z.number(), ripple: z.number(), chop: z.number(), bow_m: z.number() })
    .meta({ description: "Anchor rope = scope times depth and bow together." }),
  assumes: z.array(z.string()),
  check: z.string(),
});
export type PlumbTable = z.infer<typeof plumbTableSchema>;

/** The longest sets that keep the fly down while the boat drifts. */
export const driftingTableSchema = z.strictObject({
  board: z.string(),
  columns: z.array(z.number()).meta({ description: "Seconds for the boat to drift one rod length." }),
  rows: z.array(
    z.strictObject({
      text: z.string().meta({ description: "The shot." }),
      sets: z.array(
        z.strictObject({
          set_m: z.number(),
          whole: z.boolean().meta({ description: "The whole board, and it would hold more." }),
        }),
      ),
    }),
  ),
  note: z.string(),
});
export type DriftingTable = z.infer<typeof driftingTableSchema>;

/** A rig worked out along its line: how it leans in water that slows with depth. */
export const leanExampleSchema = z.strictObject({
  depth_m: z.number().meta({ description: "Plumbed depth of the water." }),
  condition: z.enum(CONDITIONS),
  foam_mps: z.number(),
  set_m: z.number(),
  leader: z.string(),
  shot: z.string(),
  indicator: z.string(),
  lift_m: z.number().meta({ description: "How much higher the fly hangs than straight below." }),
  aside_m: z.number().meta({ description: "From fly to indicator, sideways; negative upwind." }),
  points: z
    .array(
      z.strictObject({
        x_m: z.number().meta({ description: "Sideways from the fly, toward the indicator." }),
        z_m: z.number().meta({ description: "Up from the fly." }),
        at: z.enum(["fly", "shot", "indicator"]).nullable(),
      }),
    )
    .meta({ description: "The line from fly to indicator." }),
  current: z
    .array(z.strictObject({ depth_m: z.number(), speed_mps: z.number() }))
    .meta({ description: "The water's speed from the surface down; negative against the wind." }),
});
export type LeanExample = z.infer<typeof leanExampleSchema>;

/** How deep a long leader fishes under a floating line, drawn slowly, without shot or indicator. */
export const nakedTableSchema = z.strictObject({
  draw_mps: z.number(),
  rows: z.array(
    z.strictObject({
      leader: z.string(),
      length_m: z.number(),
      flies: z.array(
        z.strictObject({
          fly: z.enum(FLY_CLASSES),
          depth_m: z.number(),
          angle_deg: z.number().meta({ description: "Between leader and water." }),
          count_s: z.number().nullable().meta({ description: "Null over 90 s." }),
        }),
      ),
    }),
  ),
  note: z.string(),
});
export type NakedTable = z.infer<typeof nakedTableSchema>;

/** How long an indicator held from a fixed rod swings before it hangs straight downwind. */
export const swingTableSchema = z.strictObject({
  line_m: z.number().meta({ description: "From rod tip to indicator." }),
  until_deg: z.number().meta({ description: "Closer to straight downwind than this the swing is over." }),
  columns: z.array(
    z.strictObject({
      rod_s: z.number().meta({ description: "Seconds for foam to pass one rod length." }),
      drift_mps: z.number(),
    }),
  ),
  rows: z.array(
    z.strictObject({
      holder_deg: z.number().meta({ description: "Angle of the line to straight downwind at the start." }),
      covers_m: z.number().meta({ description: "Water the indicator crosses." }),
      cells: z.array(z.strictObject({ rod_s: z.number(), seconds: z.number(), text: z.string() })),
    }),
  ),
  note: z.string(),
});
export type SwingTable = z.infer<typeof swingTableSchema>;

/** How a boat lies at anchor, where its rods then point and what each angle of the holder costs. */
export const anchorSchema = z.strictObject({
  moorings: z.array(
    z.strictObject({
      name: z.string().meta({ description: "Which anchors are down." }),
      words: z.string().meta({ description: "How the boat lies and where the rods point." }),
    }),
  ),
  holders: z.array(
    z.strictObject({
      name: z.enum(["dead still", "swing"]),
      words: z.string().meta({ description: "Where the rod points, and what it costs." }),
    }),
  ),
  note: z.string(),
});
export type AtAnchor = z.infer<typeof anchorSchema>;

/** One rod on one depth, fly and method. */
const searchStepSchema = z.strictObject({
  place: z.string(),
  rod: z.number().int().min(1),
  depth_m: z.number(),
  pattern: z.string().meta({ description: "Slug." }),
  name: z.string(),
  way: z.enum(METHODS),
  from_min: z.number().meta({ description: "Minutes from the start of the day, to five." }),
  until_min: z.number().meta({ description: "When to leave it, if nothing took." }),
});
export type SearchStep = z.infer<typeof searchStepSchema>;

/** The order in which to try a lake's places, depths and flies, by the number of rods. */
export const searchPlanSchema = z.strictObject({
  phase: z.enum(PHASES),
  day_min: z.number(),
  change_min: z.number().meta({ description: "To change depth or fly." }),
  move_min: z.number().meta({ description: "To go to another place." }),
  byRods: z.array(z.strictObject({ rods: z.number().int().min(1), steps: z.array(searchStepSchema) })),
});
export type SearchPlan = z.infer<typeof searchPlanSchema>;
