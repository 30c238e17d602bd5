import { z } from "zod";
import { type CalendarDate, seasonOf } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { type Cell, readTable } from "./csv-table.ts";
import { text } from "./fields.ts";
import { iceOffFaults } from "./ice-off.ts";
import { iceOffRow } from "./lake-schema.ts";
import type { Moment } from "./moment.ts";
import { lakeCalled } from "./named.ts";
import { errorAt, isUnread } from "./problem.ts";
import { type Row, readRows } from "./read-record.ts";
import { dateCell, slugCell, wholeCell } from "./report-cells.ts";
import { type Placed, placeColumns } from "./report-columns.ts";
import type { LakeCalled } from "./report-file.ts";
import type { DateOrder } from "./report-form.ts";
import { emptyCell, placedRows, tableProblems } from "./report-table.ts";

const importRow = iceOffRow.extend({ lake: text("The lake, by its file name or its name.") });
const importRows = z.array(importRow);
export type ImportRow = z.output<typeof importRow>;

const DATES = ["on", "after", "by"] as const;
const KEYS = ["lake", "season", ...DATES] as const;
const COLUMNS = KEYS.map((key) => ({ key, heading: key, isNamed: false }));
type Column = Placed<(typeof COLUMNS)[number]>;

/** What the rows are held against. */
export interface ImportSources {
  readonly lakes: readonly LakeCalled[];
  readonly dates: DateOrder;
  readonly moment: Moment | undefined;
}

function cellOf(text: string, column: Column, { lakes, dates }: ImportSources): unknown {
  if (text === "") return column.key === "lake" ? emptyCell(column) : undefined;
  if (column.key === "lake") return slugCell(lakeCalled(text, lakes));
  return column.key === "season" ? wholeCell(text) : dateCell(text, dates);
}

const sideOf = (lake: unknown, { lakes }: ImportSources) =>
  lakes.find(({ slug }) => slug === lake)?.hemisphere;

/** Stands for the season of a row that is refused for its lake or its days: nobody need be asked for it, too. */
const ANY_SEASON = 2000;

/** A row's cells by key. A season that is not written is that of the first date. */
function rowValue(cells: readonly Cell[], columns: readonly Column[], sources: ImportSources): object {
  const values = Object.fromEntries(
    columns
      .map((column) => [column.key, cellOf(cells[column.index]?.text ?? "", column, sources)] as const)
      .filter(([, value]) => value !== undefined),
  );
  const { lake, season, on, after, by } = values as Partial<Record<(typeof KEYS)[number], unknown>>;
  const date = [on, after, by].find((value) => value !== undefined && !isUnread(value));
  const side = sideOf(lake, sources);
  if (season !== undefined) return values;
  if (date === undefined || isUnread(lake)) return { ...values, season: ANY_SEASON };
  return side === undefined ? values : { ...values, season: seasonOf(date as CalendarDate, side) };
}

const NO_DATES = {
  code: "missing-column",
  message: "there is no column of dates",
  hint: "head a column “on”, or two “after” and “by”",
};

/** Reads a table of ice-off days, each row checked as in a lake's own file; rows with mistakes are reported and left out. */
export function readImportRows(
  file: ClubFile,
  sources: ImportSources,
  problems: Diagnostic[],
): Row<ImportRow>[] {
  const table = readTable(file, problems);
  if (table === undefined) return [];
  const before = problems.length;
  problems.push(...tableProblems(table));
  const columns = placeColumns(table, COLUMNS, file.file, problems);
  if (problems.length > before) return [];
  const first = table.heading[0]?.where;
  if (first !== undefined && !columns.some(({ key }) => DATES.some((date) => date === key)))
    problems.push(errorAt(first, NO_DATES));
  if (problems.length > before) return [];
  const doc = placedRows(file.file, table, columns, (row) => rowValue(row, columns, sources));
  return readRows(importRows, [], doc, problems).filter(({ value, path }) => {
    const faults = iceOffFaults(value, { hemisphere: sideOf(value.lake, sources), moment: sources.moment });
    problems.push(...faults.map(({ key, fault }) => errorAt(doc.spot([...path, key]), fault)));
    return faults.length === 0;
  });
}
