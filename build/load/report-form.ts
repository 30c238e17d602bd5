import { z } from "zod";
import { QUANTITY_KINDS, type QuantityKindName } from "../model/units.ts";
import { oneOf, text } from "./fields.ts";
import { quoted } from "./quote.ts";
import { type ReportRow, reportRow } from "./report-schema.ts";
import { REFUSALS } from "./written.ts";

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
