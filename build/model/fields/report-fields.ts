import { z } from "zod";
import { FOODS, type FoundFood, ICE_STATES, LOOKS, METHODS } from "../choices.ts";
import { field } from "./field.ts";
import {
  count,
  day,
  KEYS_NAMED,
  oneOf,
  quantity,
  REFUSALS,
  refuseCount,
  text,
  whole,
} from "./field-kinds.ts";
import { phaseWord } from "./phase-words.ts";

/** A day has 24 hours, and a report at most 100 rods. */
const MOST_ROD_HOURS = "2400 h";
const MOST_FISH = 500;
/** Of one food in one throat; daphnia come by the hundred. */
const MOST_ITEMS = 5000;

export const caughtRow = z
  .strictObject({
    pattern: text("File name of the pattern, without .yaml."),
    way: oneOf(METHODS, "How it was fished.").optional(),
    fish: count(MOST_FISH, "Fish taken on it; 0 is worth writing too."),
    hours: field(
      quantity("duration", {
        description:
          "Rod-hours it was fished: two rods for 3 h each are 6 h. Left out: its share of the visit.",
        example: "4 h",
        above: "0 h",
        most: MOST_ROD_HOURS,
      }).optional(),
      { as: "rodHours" },
    ),
  })
  .meta({ description: "One pattern and the fish it took." });

/** The number is optional here so that a weight alone gets words of its own; an editor asks for it. */
const weighed = z
  .strictObject({
    count: count(MOST_ITEMS, "How many were found.").optional(),
    weight: quantity("mass", {
      description: "Of all of them together, blotted.",
      example: "0.3 g",
      above: "0 g",
      most: "100 g",
    }).optional(),
  })
  .meta({ description: "How many, and what they weigh.", required: ["count"] });

const found = z
  .union([count(MOST_ITEMS, "How many were found."), weighed])
  .meta({ description: "How many were found in this fish.", examples: [12, { count: 12, weight: "0.3 g" }] })
  .register(REFUSALS, { refuse: refuseCount(MOST_ITEMS, ", or { count: 12, weight: 0.3 g }") });

const isFound = (food: (typeof FOODS)[number]): food is FoundFood => food !== "nothing in particular";
/** What a throat can hold. */
const FOUND_FOODS: readonly FoundFood[] = FOODS.filter(isFound);

const sample = z
  .strictObject(
    Object.fromEntries(FOUND_FOODS.map((food) => [food, found.optional()])) as Record<
      FoundFood,
      z.ZodOptional<typeof found>
    >,
  )
  .meta({ description: "One fish: each food and how many of it; {} for an empty throat." })
  .register(KEYS_NAMED, { code: "unknown-food", one: "food", all: "foods" });

/** Each `column` goes on “Heading of the column with …”, where club.yaml says how a table of reports is read. */
export const reportRow = z
  .strictObject({
    lake: field(text("File name of the lake, without .yaml."), {
      column: "the lake, by its name or file name",
    }),
    date: field(day("The day it was seen."), { column: "the day" }),
    ice: field(oneOf(ICE_STATES, "Ice on the lake; none: it did not freeze this winter.").optional(), {
      column: "the ice: on, part, off or none",
    }),
    phase: field(phaseWord("The phase the water was in, as seen.").optional(), {
      column: "the phase of the water",
    }),
    water: field(
      quantity("temperature", {
        description: "Water temperature near the surface.",
        example: "44 degF",
        least: "-1 degC",
        most: "32 degC",
      }).optional(),
      { as: "water_C", column: "the water temperature" },
    ),
    clarity: field(
      quantity("length", {
        description: "Secchi depth: where a white disc goes out of sight.",
        example: "8 ft",
        least: "0 m",
        most: "80 m",
      }).optional(),
      { as: "clarity_m", column: "the Secchi depth" },
    ),
    deep: field(
      z
        .strictObject({
          at: field(
            quantity("length", {
              description: "How deep it was read.",
              example: "15 ft",
              above: "0 m",
              most: "300 m",
            }),
            { as: "at_m" },
          ),
          water: field(
            quantity("temperature", {
              description: "Water temperature at that depth.",
              example: "41 degF",
              least: "-1 degC",
              most: "32 degC",
            }),
            { as: "water_C" },
          ),
        })
        .meta({
          description: "A second temperature, below the surface; “water” is needed too.",
          examples: [{ at: "15 ft", water: "41 degF" }],
        })
        .optional(),
      { column: "a second temperature and its depth, such as: 41 degF at 15 ft" },
    ),
    looks: field(oneOf(LOOKS, "How clear the water looked, without a disc.").optional(), {
      column: "how the water looked: cloudy or clear",
    }),
    oxygen: field(
      quantity("oxygen", {
        description: "Dissolved oxygen.",
        example: "9.8 mg/L",
        least: "0 mg/L",
        most: "30 mg/L",
      }).optional(),
      { as: "oxygen_mgL", column: "the dissolved oxygen" },
    ),
    rods: field(whole(1, 100, "How many people fished.").optional(), { column: "how many people fished" }),
    hours: field(
      quantity("duration", {
        description: "How long they fished.",
        example: "6 h",
        above: "0 h",
        most: "24 h",
      }).optional(),
      { column: "how long they fished" },
    ),
    caught: field(
      z
        .array(caughtRow)
        .min(1)
        .meta({
          description: "Fish by pattern, also the patterns that took none.",
          examples: [[{ pattern: "pale-scud", fish: 3, hours: "4 h" }]],
        })
        .optional(),
      { column: "the fish by pattern, such as: pale-scud 4 in 3 h; bloodworm 0" },
    ),
    samples: field(
      z
        .array(sample)
        .min(1)
        .meta({
          description: "What was found in the throats, one entry a fish.",
          examples: [[{ scud: 12, "chironomid pupa": 3 }, {}]],
        })
        .optional(),
      { column: "the throat samples, such as: scud 12, leech 1; scud 5" },
    ),
    notes: field(text("Anything else.").optional(), { column: "notes" }),
  })
  .meta({ description: "What one party saw and caught on one lake on one day." });

export type ReportRow = z.output<typeof reportRow>;

export const reportsSchema = z.array(reportRow).meta({
  title: "Reports",
  description: "What members saw in one season: reports/YEAR.yaml, one row a visit.",
});

export type ReportKey = keyof ReportRow & string;
export const REPORT_KEYS = Object.keys(reportRow.shape) as readonly ReportKey[];
