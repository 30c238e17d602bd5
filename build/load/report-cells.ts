import { type CalendarDate, parseCalendarDate } from "../model/calendar.ts";
import { QUANTITY_KINDS, type QuantityKindName } from "../model/units.ts";
import { measuredText } from "./measured-text.ts";
import { lakeCalled, type Named } from "./named.ts";
import { type Fault, isFault, type Unread, unread } from "./problem.ts";
import { quoted } from "./quote.ts";
import { caughtRows } from "./report-catches.ts";
import {
  type DateOrder,
  type FormColumn,
  isQuantityKey,
  QUANTITY_KEYS,
  type ReportKey,
} from "./report-form.ts";
import { sampleRows } from "./report-samples.ts";

/** How the cells of a table are to be understood. */
export interface CellContext {
  readonly dates: DateOrder;
  readonly lakes: readonly Named[];
  readonly patterns: readonly Named[];
  /** True where a spreadsheet writes 6,5 for six and a half. */
  readonly decimalComma: boolean;
}

const partsOf = (order: DateOrder): string[] => order.split(/[-/.]/);

function dayIn(text: string, order: DateOrder): CalendarDate | "no such day" | undefined {
  const separator = /[-/.]/.exec(order)?.[0] ?? "-";
  // A form may write the time behind the day.
  const numbers = text.replace(/[T\s,]+\d{1,2}:.*$/, "").split(separator);
  const names = partsOf(order);
  if (numbers.length !== names.length || !numbers.every((n) => /^\s*\d{1,4}\s*$/.test(n))) return undefined;
  const [year, month, day] = ["year", "month", "day"].map(
    (name) => numbers[names.indexOf(name)]?.trim() ?? "",
  );
  if (year?.length !== 4 || month === undefined || day === undefined) return undefined;
  return parseCalendarDate(`${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`) ?? "no such day";
}

const EXAMPLE: Readonly<Record<DateOrder, string>> = {
  "year-month-day": "2026-05-16",
  "month/day/year": "5/16/2026",
  "day/month/year": "16/5/2026",
  "day.month.year": "16.5.2026",
};

/** The day as `YYYY-MM-DD`. A day written so is understood whatever the form's own order. */
export function dateCell(text: string, order: DateOrder): string | Unread {
  const day = dayIn(text, order) ?? dayIn(text, "year-month-day");
  if (day !== undefined && day !== "no such day") return day;
  const others = (Object.keys(EXAMPLE) as DateOrder[]).filter((candidate) => {
    const read = dayIn(text, candidate);
    return read !== undefined && read !== "no such day";
  });
  return unread({
    code: day === undefined ? "not-a-date" : "no-such-day",
    message:
      day === undefined
        ? `${quoted(text)} is not a day written ${order}`
        : `the calendar has no day ${quoted(text)}, read as ${order}`,
    hint:
      others.length === 0
        ? `write it like ${EXAMPLE[order]}, the year with four digits`
        : `it would be one written ${others.join(" or ")}: correct it, or if all are so, write ${others.map((other) => `“dates: ${other}”`).join(" or ")} under reportForm in club.yaml`,
  });
}

function quantityCell(
  text: string,
  kind: QuantityKindName,
  { key, heading, unit }: FormColumn,
  decimalComma: boolean,
): string | Unread {
  const written = measuredText(text, kind, decimalComma, unit);
  if (!/^[+-]?[\d.]+$/.test(written)) return written;
  const units = QUANTITY_KINDS[kind].allowed;
  return unread({
    code: "missing-unit",
    message: `${written} has no unit`,
    hint: `write the unit behind the number, or once for the column under reportForm in club.yaml: ${key}: { column: "${heading}", unit: ${units[0]} }; allowed here: ${units.join(", ")}`,
  });
}

/** A number of things. */
export const wholeCell = (text: string): number | Unread =>
  /^\d+$/.test(text)
    ? Number(text)
    : unread({
        code: "wrong-type",
        message: `${quoted(text)} is not a whole number`,
        hint: "write a number such as 2",
      });

/** A file name, or what is wrong with the name given. */
export const slugCell = (slug: string | Fault): string | Unread => (isFault(slug) ? unread(slug) : slug);

/** What a cell says, as it would stand in a YAML file; {@link Unread} where it cannot be understood. */
export function cellValue(text: string, column: FormColumn, context: CellContext): unknown {
  const key: ReportKey = column.key;
  if (isQuantityKey(key)) return quantityCell(text, QUANTITY_KEYS[key], column, context.decimalComma);
  switch (key) {
    case "lake":
      return slugCell(lakeCalled(text, context.lakes));
    case "date":
      return dateCell(text, context.dates);
    case "ice":
    case "phase":
      return text.toLowerCase();
    case "rods":
      return wholeCell(text);
    case "caught":
      return caughtRows(text, context.patterns, context.decimalComma);
    case "samples":
      return sampleRows(text, context.decimalComma);
    case "notes":
      return text;
  }
}
