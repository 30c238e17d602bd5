import { z } from "zod";
import { FOODS, type FoundFood, ICE_STATES, METHODS } from "../../model/club.ts";
import { PHASES } from "../../model/phase.ts";
import { QUANTITY_KINDS, type QuantityKindName } from "../../model/units.ts";
import { quoted } from "../problem.ts";
import { count, day, KEYS_NAMED, oneOf, quantity, REFUSALS, refuseCount, text, whole } from "./fields.ts";

/** A day has 24 hours, and a report at most 100 rods. */
const MOST_ROD_HOURS = "2400 h";
const MOST_FISH = 500;
/** Of one food in one throat; daphnia come by the hundred. */
const MOST_ITEMS = 5000;

const caughtRow = z
  .strictObject({
    pattern: text("File name of the pattern, without .yaml."),
    way: oneOf(METHODS, "How it was fished.").optional(),
    fish: count(MOST_FISH, "Fish taken on it; 0 is worth writing too."),
    hours: quantity("duration", {
      description:
        "Rod-hours it was fished: two rods for 3 h each are 6 h. Left out: its share of the visit.",
      example: "4 h",
      above: "0 h",
      most: MOST_ROD_HOURS,
    }).optional(),
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

export const reportRow = z
  .strictObject({
    lake: text("File name of the lake, without .yaml."),
    date: day("The day it was seen."),
    ice: oneOf(ICE_STATES, "Ice on the lake.").optional(),
    phase: oneOf(PHASES, "The phase the water was in, as seen.").optional(),
    water: quantity("temperature", {
      description: "Water temperature near the surface.",
      example: "44 degF",
      least: "-1 degC",
      most: "40 degC",
    }).optional(),
    clarity: quantity("length", {
      description: "Secchi depth: where a white disc goes out of sight.",
      example: "8 ft",
      least: "0 m",
      most: "80 m",
    }).optional(),
    oxygen: quantity("oxygen", {
      description: "Dissolved oxygen.",
      example: "9.8 mg/L",
      least: "0 mg/L",
      most: "30 mg/L",
    }).optional(),
    rods: whole(1, 100, "How many people fished.").optional(),
    hours: quantity("duration", {
      description: "How long they fished.",
      example: "6 h",
      above: "0 h",
      most: "24 h",
    }).optional(),
    caught: z
      .array(caughtRow)
      .min(1)
      .meta({
        description: "Fish by pattern, also the patterns that took none.",
        examples: [[{ pattern: "pale-scud", fish: 3, hours: "4 h" }]],
      })
      .optional(),
    samples: z
      .array(sample)
      .min(1)
      .meta({
        description: "What was found in the throats, one entry a fish.",
        examples: [[{ scud: 12, "chironomid pupa": 3 }, {}]],
      })
      .optional(),
    notes: text("Anything else.").optional(),
  })
  .meta({ description: "What one party saw and caught on one lake on one day." });

export type ReportRow = z.output<typeof reportRow>;

export const reportsSchema = z.array(reportRow).meta({
  title: "Reports",
  description: "What members saw in one season: reports/YEAR.yaml, one row a visit.",
});

export type ReportKey = keyof ReportRow & string;
export const REPORT_KEYS = Object.keys(reportRow.shape) as readonly ReportKey[];

/** The keys of a report that are quantities. */
export const QUANTITY_KEYS = {
  water: "temperature",
  clarity: "length",
  oxygen: "oxygen",
  hours: "duration",
} as const satisfies Partial<Record<ReportKey, QuantityKindName>>;
type QuantityKey = keyof typeof QUANTITY_KEYS;
export const isQuantityKey = (key: string): key is QuantityKey => Object.hasOwn(QUANTITY_KEYS, key);

const DATE_ORDERS = ["year-month-day", "month/day/year", "day/month/year", "day.month.year"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const heading = (what: string) => text(`Heading of the column with ${what}, as it stands in the first row.`);

function measured(key: QuantityKey, what: string) {
  const units = QUANTITY_KINDS[QUANTITY_KEYS[key]].allowed;
  return z
    .union([
      heading(what),
      z.strictObject({
        column: heading(what),
        unit: oneOf(units as readonly [string, ...string[]], "Unit of the cells that hold a bare number."),
      }),
    ])
    .meta({
      description: `Heading of the column with ${what}; with its unit where the cells hold bare numbers.`,
    })
    .register(REFUSALS, {
      refuse: (raw) => ({
        code: "wrong-type",
        message: `${typeof raw === "string" ? quoted(raw) : "this"} is not the heading of a column`,
        hint: `write it in quotes as it stands in the first row, or { column: "…", unit: ${units[0]} }`,
      }),
    });
}

export const reportForm = z
  .strictObject({
    dates: oneOf(DATE_ORDERS, "How the form writes days."),
    columns: z
      .strictObject({
        lake: heading("the lake, by its name or file name"),
        date: heading("the day"),
        ice: heading("the ice: on, part or off").optional(),
        phase: heading("the phase of the water").optional(),
        water: measured("water", "the water temperature").optional(),
        clarity: measured("clarity", "the Secchi depth").optional(),
        oxygen: measured("oxygen", "the dissolved oxygen").optional(),
        rods: heading("how many people fished").optional(),
        hours: measured("hours", "how long they fished").optional(),
        caught: heading("the fish by pattern, such as: pale-scud 4 in 3 h; bloodworm 0").optional(),
        samples: heading("the throat samples, such as: scud 12, leech 1; scud 5").optional(),
        notes: heading("notes").optional(),
      } satisfies Record<ReportKey, z.ZodType>)
      .meta({ description: "Which column of the form holds what." }),
  })
  .meta({ description: "How to read reports/YEAR.csv, exported from a form." });

/** One column of a table of reports. */
export interface FormColumn {
  readonly key: ReportKey;
  readonly heading: string;
  /** Of cells that hold a bare number. */
  readonly unit?: string;
  /** True where club.yaml names the heading. */
  readonly isNamed: boolean;
}

export interface ReportForm {
  readonly dates: DateOrder;
  readonly columns: readonly FormColumn[];
}

/** A table whose headings are the keys of a report. */
export const OWN_FORM: ReportForm = {
  dates: "year-month-day",
  columns: REPORT_KEYS.map((key) => ({ key, heading: key, isNamed: false })),
};

/** The form that club.yaml describes. */
export const formOf = ({ dates, columns }: z.output<typeof reportForm>): ReportForm => ({
  dates,
  columns: REPORT_KEYS.flatMap((key) => {
    const column = columns[key];
    if (column === undefined) return [];
    if (typeof column === "string") return [{ key, heading: column, isNamed: true }];
    return [{ key, heading: column.column, unit: column.unit, isNamed: true }];
  }),
});
