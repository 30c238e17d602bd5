import { z } from "zod";
import { quoted } from "../fault.ts";
import { QUANTITY_KINDS, type QuantityKindName } from "../units.ts";
import { notesOf } from "./field.ts";
import { oneOf, quantityKindOf, REFUSALS, text } from "./field-kinds.ts";
import { REPORT_KEYS, type ReportKey, reportRow } from "./report-fields.ts";

const DATE_ORDERS = ["year-month-day", "month/day/year", "day/month/year", "day.month.year"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const heading = (what: string) => text(`Heading of the column with ${what}, as it stands in the first row.`);

/** The heading of a column of quantities, and the unit of its bare numbers. */
function measured(kind: QuantityKindName, what: string) {
  const units = QUANTITY_KINDS[kind].allowed;
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

type ColumnHeading = ReturnType<typeof heading> | ReturnType<typeof measured>;
type Columns = {
  [K in ReportKey]: (typeof reportRow.shape)[K] extends z.ZodOptional
    ? z.ZodOptional<ColumnHeading>
    : ReturnType<typeof heading>;
};

/** The keys of a report that one cell of a table can hold. */
export const COLUMN_KEYS = REPORT_KEYS.filter((key) => notesOf(reportRow.shape[key]).column !== undefined);

const columnHeadings = Object.fromEntries(
  COLUMN_KEYS.map((key) => {
    const schema = reportRow.shape[key];
    const { column = key } = notesOf(schema);
    const kind = quantityKindOf(schema);
    const written = kind === undefined ? heading(column) : measured(kind, column);
    return [key, schema instanceof z.ZodOptional ? written.optional() : written];
  }),
) as Columns;

export const reportForm = z
  .strictObject({
    dates: oneOf(DATE_ORDERS, "How the form writes days."),
    columns: z.strictObject(columnHeadings).meta({ description: "Which column of the form holds what." }),
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
  columns: COLUMN_KEYS.map((key) => ({ key, heading: key, isNamed: false })),
};

/** The form that club.yaml describes. */
export const formOf = ({ dates, columns }: z.output<typeof reportForm>): ReportForm => ({
  dates,
  columns: COLUMN_KEYS.flatMap((key) => {
    const column = columns[key];
    if (column === undefined) return [];
    if (typeof column === "string") return [{ key, heading: column, isNamed: true }];
    return [{ key, heading: column.column, unit: column.unit, isNamed: true }];
  }),
});
