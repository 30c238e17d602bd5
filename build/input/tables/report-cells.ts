import { z } from "zod";
import { type CalendarDate, parseCalendarDate } from "../../model/calendar.ts";
import { type Fault, isFault, quoted } from "../../model/fault.ts";
import { quantityKindOf } from "../../model/fields/field-kinds.ts";
import { reportRow } from "../../model/fields/report-fields.ts";
import type { DateOrder, FormColumn } from "../../model/fields/report-form.ts";
import { QUANTITY_KINDS, type QuantityKindName, unitMeant } from "../../model/units.ts";
import { findLakeSlug, findPatternSlug, type Named } from "../names.ts";
import { type InvalidValue, invalidValue } from "../problem.ts";

const MEASURED = /^([+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+))\s*(.*)$/s;

/** A quantity as the schema reads it: other common spellings of its unit are put right. */
function measuredText(text: string, kind: QuantityKindName, decimalComma: boolean, unit = ""): string {
  const [, number, behind = ""] = MEASURED.exec(text) ?? [];
  if (number === undefined) return text;
  const written = behind === "" ? unit : (unitMeant(behind, kind) ?? behind);
  return `${decimalComma ? number.replace(",", ".") : number} ${written}`.trim();
}

/** What is written where nothing was caught or found. */
const isNone = (text: string): boolean => /^(?:none|nothing|empty|no fish|n\/a|0|-|–|—)\.?$/i.test(text);

const WAY = String.raw`(?:\s*\((?<way>[^()]*)\))?`;
const HOURS = String.raw`(?:\s+in\s+(?<hours>.+))?`;
const NUMBER = String.raw`(?<count>[+-]?\d+(?:[.,]\d+)?)`;
/** "pale-scud (indicator still) 4 in 3 h". */
const NAME_FIRST = new RegExp(`^(?<name>.+?)${WAY}\\s*[:=x×]?\\s+${NUMBER}${HOURS}$`, "i");
/** "4 pale-scud (indicator still) in 3 h". */
const COUNT_FIRST = new RegExp(`^${NUMBER}\\s*[x×]?\\s+(?<name>.+?)${WAY}${HOURS}$`, "i");

/** A row of a report's `caught`, as a YAML file would hold it. */
interface CaughtRow {
  readonly pattern: string | InvalidValue;
  readonly way?: string;
  readonly fish: number;
  readonly hours?: string;
}

function caughtRow(
  entry: string,
  patterns: readonly Named[],
  decimalComma: boolean,
): CaughtRow | InvalidValue {
  const { name, way, count, hours } = (NAME_FIRST.exec(entry) ?? COUNT_FIRST.exec(entry))?.groups ?? {};
  if (name === undefined || count === undefined)
    return invalidValue({
      code: "catch-without-count",
      message: `${quoted(entry)} is not a pattern and a number of fish`,
      hint: "write it like: pale-scud 4 in 3 h; bloodworm 0",
    });
  const pattern = findPatternSlug(name, patterns);
  if (isFault(pattern) && /\d\s*,/.test(name))
    return invalidValue({
      code: "catch-without-count",
      message: `${quoted(entry)} is more than one pattern`,
      hint: "write a semicolon between two patterns: pale-scud 4; bloodworm 0",
    });
  return {
    pattern: isFault(pattern) ? invalidValue(pattern) : pattern,
    ...(way === undefined ? {} : { way: way.trim().toLowerCase() }),
    fish: Number(count.replace(",", ".")),
    ...(hours === undefined ? {} : { hours: measuredText(hours, "duration", decimalComma) }),
  };
}

/** Fish by pattern out of one cell, one pattern after another with semicolons; nothing where the cell says “none”. */
function caughtRows(
  text: string,
  patterns: readonly Named[],
  decimalComma: boolean,
): (CaughtRow | InvalidValue)[] | undefined {
  if (isNone(text)) return undefined;
  const entries = text
    .split(/[;\n]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== "");
  return entries.map((entry) => caughtRow(entry, patterns, decimalComma));
}

/** A food of a throat sample, as a YAML file would hold it. */
type Found = number | { readonly count: number; readonly weight: string };
type SampleRow = Readonly<Record<string, Found>>;

const ITEM_COUNT = String.raw`(?<count>[+-]?\d+(?:[.,]\d+)?)`;
const WEIGHT = String.raw`(?:\s*\((?<weight>[^()]*)\))?`;
/** "scud 12 (0.3 g)". */
const FOOD_FIRST = new RegExp(`^(?<food>.+?)\\s*[:=x×]?\\s+${ITEM_COUNT}${WEIGHT}$`, "i");
/** "12 scud (0.3 g)". */
const ITEM_COUNT_FIRST = new RegExp(`^${ITEM_COUNT}\\s*[x×]?\\s+(?<food>.+?)${WEIGHT}$`, "i");

/** Commas between foods; not the decimal comma of a weight in brackets. */
const BETWEEN_FOODS = /,(?![^(]*\))/;

function sampleRow(fish: string, decimalComma: boolean): SampleRow | InvalidValue {
  if (isNone(fish)) return {};
  const found = new Map<string, Found>();
  for (const entry of fish.split(BETWEEN_FOODS).map((part) => part.trim())) {
    const { food, count, weight } = (FOOD_FIRST.exec(entry) ?? ITEM_COUNT_FIRST.exec(entry))?.groups ?? {};
    if (food === undefined || count === undefined)
      return invalidValue({
        code: "food-without-count",
        message: `${quoted(entry)} is not a food and how many`,
        hint: "write one fish after another with semicolons: scud 12, chironomid pupa 3; scud 5; empty",
      });
    const name = food.toLowerCase();
    if (found.has(name))
      return invalidValue({
        code: "food-named-twice",
        message: `${quoted(name)} is there twice in one fish`,
        hint: "write one number; between two fish belongs a semicolon",
      });
    const number = Number(count.replace(",", "."));
    found.set(
      name,
      weight === undefined
        ? number
        : { count: number, weight: measuredText(weight.trim(), "mass", decimalComma) },
    );
  }
  return Object.fromEntries(found);
}

/** Throat samples out of one cell, one fish after another with semicolons. */
function sampleRows(text: string, decimalComma: boolean): (SampleRow | InvalidValue)[] {
  return text
    .split(/[;\n]/)
    .map((fish) => fish.trim())
    .filter((fish) => fish !== "")
    .map((fish) => sampleRow(fish, decimalComma));
}

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
export function dateCell(text: string, order: DateOrder): string | InvalidValue {
  const day = dayIn(text, order) ?? dayIn(text, "year-month-day");
  if (day !== undefined && day !== "no such day") return day;
  const others = (Object.keys(EXAMPLE) as DateOrder[]).filter((candidate) => {
    const read = dayIn(text, candidate);
    return read !== undefined && read !== "no such day";
  });
  return invalidValue({
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
): string | InvalidValue {
  const written = measuredText(text, kind, decimalComma, unit);
  if (!/^[+-]?[\d.]+$/.test(written)) return written;
  const units = QUANTITY_KINDS[kind].allowed;
  return invalidValue({
    code: "missing-unit",
    message: `${written} has no unit`,
    hint: `write the unit behind the number, or once for the column under reportForm in club.yaml: ${key}: { column: "${heading}", unit: ${units[0]} }; allowed here: ${units.join(", ")}`,
  });
}

/** "41 degF at 15 ft". */
function deepCell(text: string, decimalComma: boolean): { at: string; water: string } | InvalidValue {
  const { water, depth } = /^(?<water>.+?)\s+at\s+(?<depth>.+)$/i.exec(text)?.groups ?? {};
  if (water === undefined || depth === undefined)
    return invalidValue({
      code: "wrong-type",
      message: `${quoted(text)} is not a temperature and its depth`,
      hint: "write it like: 41 degF at 15 ft",
    });
  return {
    at: measuredText(depth, "length", decimalComma),
    water: measuredText(water, "temperature", decimalComma),
  };
}

/** A number of things. */
export const wholeCell = (text: string): number | InvalidValue =>
  /^\d+$/.test(text)
    ? Number(text)
    : invalidValue({
        code: "wrong-type",
        message: `${quoted(text)} is not a whole number`,
        hint: "write a number such as 2",
      });

/** A file name, or what is wrong with the name given. */
export const slugCell = (slug: string | Fault): string | InvalidValue =>
  isFault(slug) ? invalidValue(slug) : slug;

/** What a cell says, as it would stand in a YAML file; {@link InvalidValue} where it cannot be understood. */
export function cellValue(text: string, column: FormColumn, context: CellContext): unknown {
  switch (column.key) {
    case "lake":
      return slugCell(findLakeSlug(text, context.lakes));
    case "date":
      return dateCell(text, context.dates);
    case "phase":
      return text.toLowerCase();
    case "deep":
      return deepCell(text, context.decimalComma);
    case "caught":
      return caughtRows(text, context.patterns, context.decimalComma);
    case "samples":
      return sampleRows(text, context.decimalComma);
    default:
      return plainCell(text, column, context);
  }
}

/** A cell that is read as its key's schema has it: a quantity, a word of a list, a number of things or a text. */
function plainCell(text: string, column: FormColumn, { decimalComma }: CellContext): unknown {
  const schema = reportRow.shape[column.key];
  const kind = quantityKindOf(schema);
  if (kind !== undefined) return quantityCell(text, kind, column, decimalComma);
  const written = schema instanceof z.ZodOptional ? schema.unwrap() : schema;
  if (written instanceof z.ZodEnum) return text.toLowerCase();
  return written instanceof z.ZodNumber ? wholeCell(text) : text;
}
