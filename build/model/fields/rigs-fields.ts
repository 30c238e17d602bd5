import { z } from "zod";
import { LINE_KINDS } from "../choices.ts";
import { field } from "./field.ts";
import { oneOf, quantity, text, tippetSize, whole } from "./field-kinds.ts";

/** Density of what split shot is made of, kg/m3. Lead, tin, tungsten: NIST. Brass and steel: common alloys, from memory. */
export const SHOT_DENSITY_KGM3 = {
  lead: 11350,
  tin: 7310,
  tungsten: 19300,
  brass: 8500,
  steel: 7850,
} as const;
const MATERIALS = Object.keys(SHOT_DENSITY_KGM3) as [keyof typeof SHOT_DENSITY_KGM3];

const carried = whole(0, 10_000, "How many the club carries.");
const lengthUpTo = (most: string, example: string, description: string) =>
  quantity("length", { description, example, above: "0 m", most });

const leaderPart = (description: string) =>
  z
    .strictObject({
      length: field(lengthUpTo("15 m", "6 ft", "Length of this part."), { as: "length_m" }),
      size: tippetSize("Tippet size at its end."),
    })
    .meta({ description });

export const leaderRow = z
  .strictObject({
    name: text("What its board is called."),
    taper: leaderPart("The tapered part, from the fly line."),
    middle: leaderPart("The level part knotted to the taper."),
    tippet: leaderPart("The level part the fly is tied to."),
    tied: field(whole(0, 1000, "How many are tied and on boards.").optional(), { absent: 0 }),
  })
  .meta({ description: "One leader." });

export const lineRow = z
  .strictObject({
    name: text("What the line is called."),
    kind: oneOf(LINE_KINDS, "What kind of line it is."),
    sinkRate: field(
      quantity("sinkRate", {
        description: "How fast it sinks; time your own in still water.",
        example: "1.5 in/s",
        above: "0 in/s",
        most: "12 in/s",
      }).optional(),
      { as: "sinkRate_mps" },
    ),
    tip: field(lengthUpTo("15 m", "15 ft", "Length of a sink tip: it never hangs deeper.").optional(), {
      as: "tip_m",
    }),
  })
  .meta({ description: "One fly line." });

export const shotRow = z
  .strictObject({
    name: text("The size printed on the box."),
    mass: field(
      quantity("mass", { description: "Mass of one.", example: "0.4 g", above: "0 g", most: "20 g" }),
      { as: "mass_g" },
    ),
    material: oneOf(MATERIALS, "What it is made of."),
    carried,
  })
  .meta({ description: "One size of split shot." });

export const indicatorRow = z
  .strictObject({
    name: text("What it is called."),
    diameter: field(lengthUpTo("60 mm", "0.75 in", "Diameter."), { as: "diameter_m" }),
    density: field(
      quantity("density", {
        description: "Mass by volume; foam and hollow balls are far lighter than water.",
        example: "60 kg/m3",
        above: "0 kg/m3",
        most: "999 kg/m3",
      }),
      { as: "density_kgm3" },
    ),
    carried,
  })
  .meta({ description: "One size of indicator." });

const seconds = (description: string, example: string) =>
  quantity("seconds", { description, example, above: "0 s", most: "10 min" });

const scopeNumber = z.number().min(1).max(20).meta({ description: "Times depth and bow." });

const offBottomBand = z
  .strictObject({
    from: field(lengthUpTo("2 m", "6 in", "At least this far above the bottom."), { as: "from_m" }),
    to: field(lengthUpTo("2 m", "8 in", "At most this far above the bottom."), { as: "to_m" }),
  })
  .meta({ description: "How far above the plumbed bottom the fly hangs." });

export const rigsSchema = z
  .strictObject({
    rod: field(lengthUpTo("6 m", "10 ft", "Length of the rod."), { as: "rod_m" }).optional(),
    reach: field(
      quantity("length", {
        description: "How much less than a rod's length of fixed leader can be landed, for the arm's reach.",
        example: "1 ft",
        least: "0 m",
        most: "2 m",
      }),
      { as: "reach_m" },
    ).optional(),
    offBottom: offBottomBand.optional(),
    margin: field(
      quantity("length", {
        description: "Knot-free leader left below and above the indicator.",
        example: "6 in",
        least: "0 m",
        most: "2 m",
      }),
      { as: "margin_m" },
    ).optional(),
    lift: field(lengthUpTo("2 m", "6 in", "How far the fly may lift in the current that is expected."), {
      as: "lift_m",
    }).optional(),
    mostLift: field(lengthUpTo("3 m", "12 in", "How far it may lift in the worst current that is likely."), {
      as: "mostLift_m",
    }).optional(),
    steps: z
      .array(text("A step: none, or shot from the list, such as BB or 2 x BB."))
      .min(1)
      .max(8)
      .optional()
      .meta({
        description: "What is pinched on, from none up; at most two pieces cast well.",
        examples: [["none", "No. 4", "BB", "2 x BB"]],
      }),
    longestWait: field(seconds("The longest wait on a tight line that a light step may ask for.", "90 s"), {
      as: "longestWait_s",
    }).optional(),
    longestCount: field(seconds("The longest count after every cast.", "60 s"), {
      as: "longestCount_s",
    }).optional(),
    bow: field(
      quantity("length", {
        description: "From the water up to the bow of the boat.",
        example: "2 ft",
        least: "0 m",
        most: "3 m",
      }),
      { as: "bow_m" },
    ).optional(),
    scope: z
      .union([scopeNumber, z.strictObject({ calm: scopeNumber, ripple: scopeNumber, chop: scopeNumber })])
      .optional()
      .meta({
        description: "Anchor rope over depth and bow together: one number, or one for each condition.",
        examples: [5, { calm: 5, ripple: 5, chop: 7 }],
      }),
    dryShare: z
      .number()
      .min(0)
      .max(0.95)
      .optional()
      .meta({ description: "Share of an indicator's volume that stays dry, 0 to 0.95.", examples: [0.5] }),
    castLimit: field(
      quantity("mass", {
        description: "The most weight that still casts comfortably.",
        example: "1.2 g",
        above: "0 g",
        most: "50 g",
      }),
      { as: "castLimit_g" },
    ).optional(),
    leaders: z.array(leaderRow).min(1).optional().meta({ description: "Leaders on boards or in the box." }),
    lines: z.array(lineRow).min(1).optional().meta({ description: "Fly lines." }),
    shot: z.array(shotRow).min(1).optional().meta({ description: "Split shot." }),
    indicators: z.array(indicatorRow).min(1).optional().meta({ description: "Indicators." }),
  })
  .meta({
    title: "Rigs",
    description:
      "What the club builds rigs from: rigs.yaml. What is left out comes from the program's defaults.",
  });

type Box = {
  [K in keyof typeof rigsSchema.shape]: (typeof rigsSchema.shape)[K] extends z.ZodOptional<infer Inner>
    ? Inner
    : never;
};

/** A whole rig box: `content/rig-defaults.yaml` holds every key that a club may leave out. */
export const rigBoxSchema = z.strictObject(
  Object.fromEntries(Object.entries(rigsSchema.shape).map(([key, part]) => [key, part.unwrap()])) as Box,
);
