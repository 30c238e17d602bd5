import { z } from "zod";
import { leaderSchema } from "./rig-plan.ts";

/** Seconds for the indicator to pass one rod length. */
const rodSecondsSchema = z
  .number()
  .nullable()
  .meta({ description: "Seconds for the indicator to pass one rod length; null in still water." });

/** The leader boards to tie for a lake or a trip. */
export const leaderBoardsSchema = z.strictObject({
  boards: z.array(
    z.strictObject({
      leader: leaderSchema,
      why: z.string().meta({ description: "What it is for, in words." }),
      needed: z.number().int().min(0).meta({ description: "One on each rod, and spares." }),
      tie: z.number().int().min(0).meta({ description: "How many to tie beyond those on boards." }),
    }),
  ),
  count: z.string().meta({ description: "How the numbers were reckoned." }),
  uncovered: z
    .array(z.string())
    .meta({ description: "What no leader here serves, and the nearest that would." }),
});
export type LeaderBoards = z.infer<typeof leaderBoardsSchema>;

/** Why a cell of the shot table names no shot. */
const SHOT_PROBLEMS = ["too shallow", "no leader", "too fast", "too heavy", "sinks it"] as const;

const shotCellSchema = z.strictObject({
  rod_s: rodSecondsSchema,
  text: z.string().meta({ description: "The shot, or the problem, short enough for a card." }),
  shot: z.array(z.strictObject({ name: z.string(), count: z.number().int().min(1) })),
  mass_g: z.number().nullable(),
  lift_m: z.number().nullable().meta({ description: "How much higher the fly hangs than straight below." }),
  indicator: z.string().nullable().meta({ description: "The smallest carried that stays dry enough." }),
  problem: z.enum(SHOT_PROBLEMS).nullable(),
  words: z.string().nullable().meta({ description: "The problem in a sentence, and what to do." }),
});
export type ShotCell = z.infer<typeof shotCellSchema>;

/** One cell of the shot table worked out along the line: how the rig leans in that drift. */
const leanExampleSchema = z.strictObject({
  depth_m: z.number().meta({ description: "Plumbed depth of the water." }),
  rod_s: z.number().meta({ description: "Seconds for the indicator to pass one rod length." }),
  set_m: z.number(),
  leader: z.string(),
  shot: z.string(),
  indicator: z.string(),
  lift_m: z.number().meta({ description: "How much higher the fly hangs than straight below." }),
  aside_m: z.number().meta({ description: "How far the fly trails behind the indicator." }),
  lean_deg: z.number().meta({ description: "Lean from the vertical at the indicator." }),
  points: z
    .array(
      z.strictObject({
        x_m: z.number().meta({ description: "Sideways from the fly, toward the indicator." }),
        z_m: z.number().meta({ description: "Up from the fly." }),
        at: z.enum(["fly", "ring", "knot", "indicator"]).nullable(),
      }),
    )
    .meta({ description: "The line from fly to indicator." }),
});
export type LeanExample = z.infer<typeof leanExampleSchema>;

/** The least shot that keeps the fly down, by depth and drift. */
export const shotTableSchema = z.strictObject({
  water_C: z.number().meta({ description: "Whole degrees: the table hardly changes within one." }),
  columns: z.array(z.strictObject({ rod_s: rodSecondsSchema, drift_mps: z.number() })),
  rows: z.array(
    z.strictObject({
      depth_m: z.number().meta({ description: "Plumbed depth of the water." }),
      set_m: z.number().nullable().meta({ description: "From fly to stop." }),
      leader: z.string().nullable(),
      cells: z.array(shotCellSchema),
    }),
  ),
  example: leanExampleSchema.nullable().meta({
    description: "The deepest row that some shot holds, in the fastest drift it holds; null when none.",
  }),
  assumes: z.array(z.string()),
  check: z.string(),
});
export type ShotTable = z.infer<typeof shotTableSchema>;

/** How fast shot and fly sink, and how long a rig needs to hang straight. */
export const sinkTableSchema = z.strictObject({
  water_C: z.number(),
  rows: z.array(
    z.strictObject({
      what: z.string(),
      speed_mps: z.number().meta({ description: "Terminal speed, sinking free." }),
      depths: z.array(
        z.strictObject({
          depth_m: z.number(),
          seconds: z.number().meta({ description: "To sink there free." }),
          settle_s: z
            .number()
            .meta({ description: "To wait with that much line below the indicator, to the next 5 s." }),
        }),
      ),
    }),
  ),
  note: z.string(),
});
export type SinkTable = z.infer<typeof sinkTableSchema>;

/** How long an indicator held from a fixed rod swings before it hangs straight downwind. */
export const swingTableSchema = z.strictObject({
  line_m: z.number().meta({ description: "From rod tip to indicator." }),
  until_deg: z.number().meta({ description: "Closer to straight downwind than this the swing is over." }),
  columns: z.array(z.strictObject({ rod_s: rodSecondsSchema, drift_mps: z.number() })),
  rows: z.array(
    z.strictObject({
      holder_deg: z.number().meta({ description: "Angle of the line to straight downwind at the start." }),
      cells: z.array(
        z.strictObject({
          rod_s: rodSecondsSchema,
          seconds: z.number().nullable().meta({ description: "Null where it does not swing." }),
          text: z.string(),
        }),
      ),
    }),
  ),
  note: z.string(),
});
export type SwingTable = z.infer<typeof swingTableSchema>;

/** How a boat lies at anchor, where its rods then point and how its flies swing. */
export const anchorSchema = z.strictObject({
  ways: z.array(
    z.strictObject({
      name: z.string().meta({ description: "Which anchors are down." }),
      words: z.string().meta({ description: "How the boat lies and where the rods point." }),
    }),
  ),
  swing: z
    .array(z.strictObject({ rod_s: z.number(), words: z.string() }))
    .meta({ description: "Every other swing of the swing table, widest holder angle first, by drift." }),
  note: z.string(),
});
export type AtAnchor = z.infer<typeof anchorSchema>;
