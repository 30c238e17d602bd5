import { z } from "zod";
import { iceOffFaults } from "../input/checks/lake-records.ts";
import type { Moment } from "../input/checks/season-checks.ts";
import { readClubFacts } from "../input/club-file.ts";
import { type ClubFile, type ClubFiles, readClubFiles } from "../input/club-files.ts";
import { type LakeDraft, readLake } from "../input/lake-file.ts";
import { findLakeSlug } from "../input/names.ts";
import { errorAt, isInvalidValue, limitPerCode } from "../input/problem.ts";
import type { NamedLake } from "../input/report-file.ts";
import { omitUndefined, type Row, readRows } from "../input/schema/read-record.ts";
import { type Cell, readTable } from "../input/tables/csv-table.ts";
import { dateCell, slugCell, wholeCell } from "../input/tables/report-cells.ts";
import {
  emptyCell,
  type LocatedColumn,
  locatedRows,
  placeColumns,
  tableProblems,
} from "../input/tables/report-table.ts";
import { type CalendarDate, seasonOf } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";
import { text } from "../model/fields/field-kinds.ts";
import { iceOffRow } from "../model/fields/lake-fields.ts";
import { type DateOrder, OWN_FORM } from "../model/fields/report-form.ts";
import { insertIceOff } from "./insert-yaml-rows.ts";

const importRow = iceOffRow.extend({ lake: text("The lake, by its file name or its name.") });
const importRows = z.array(importRow);
type ImportRow = z.output<typeof importRow>;

const DATES = ["on", "after", "by"] as const;
const KEYS = ["lake", "season", ...DATES] as const;
const COLUMNS = KEYS.map((key) => ({ key, heading: key, isNamed: false }));
type Column = LocatedColumn<(typeof COLUMNS)[number]>;

/** What the rows are held against. */
interface ImportSources {
  readonly lakes: readonly NamedLake[];
  readonly dates: DateOrder;
  readonly moment: Moment | undefined;
}

function cellOf(text: string, column: Column, { lakes, dates }: ImportSources): unknown {
  if (text === "") return column.key === "lake" ? emptyCell(column) : undefined;
  if (column.key === "lake") return slugCell(findLakeSlug(text, lakes));
  return column.key === "season" ? wholeCell(text) : dateCell(text, dates);
}

const sideOf = (lake: unknown, { lakes }: ImportSources) =>
  lakes.find(({ slug }) => slug === lake)?.hemisphere;

/** Stands for the season of a row that is refused for its lake or its days: nobody need be asked for it, too. */
const ANY_SEASON = 2000;

/** A row's cells by key. A season that is not written is that of the first date. */
function importRowValue(cells: readonly Cell[], columns: readonly Column[], sources: ImportSources): object {
  const values = Object.fromEntries(
    columns
      .map((column) => [column.key, cellOf(cells[column.index]?.text ?? "", column, sources)] as const)
      .filter(([, value]) => value !== undefined),
  );
  const { lake, season, on, after, by } = values as Partial<Record<(typeof KEYS)[number], unknown>>;
  const date = [on, after, by].find((value) => value !== undefined && !isInvalidValue(value));
  const side = sideOf(lake, sources);
  if (season !== undefined) return values;
  if (date === undefined || isInvalidValue(lake)) return { ...values, season: ANY_SEASON };
  return side === undefined ? values : { ...values, season: seasonOf(date as CalendarDate, side) };
}

const NO_DATES = {
  code: "missing-column",
  message: "there is no column of dates",
  hint: "head a column “on”, or two “after” and “by”",
};

/** Reads a table of ice-off days, each row checked as in a lake's own file; rows with mistakes are reported and left out. */
function readImportRows(file: ClubFile, sources: ImportSources, problems: Diagnostic[]): Row<ImportRow>[] {
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
  const doc = locatedRows(file.file, table, columns, (row) => importRowValue(row, columns, sources));
  return readRows(importRows, [], doc, problems).filter(({ value, path }) => {
    const faults = iceOffFaults(value, { hemisphere: sideOf(value.lake, sources), moment: sources.moment });
    problems.push(...faults.map(({ key, fault }) => errorAt(doc.spot([...path, key]), fault)));
    return faults.length === 0;
  });
}

/** What becomes of one lake's file. */
interface LakeImport {
  /** Relative to the club folder. */
  readonly file: string;
  /** As it was read. */
  readonly before: string;
  readonly after: string;
  /** As they are written behind a dash. */
  readonly rows: readonly string[];
}

export interface IceOffImport {
  /** Empty when any problem is an error: all rows are taken, or none. */
  readonly lakes: readonly LakeImport[];
  /** Rows that the club has already, day for day. */
  readonly already: number;
  readonly problems: readonly Diagnostic[];
}

type Days = Pick<ImportRow, "season" | "on" | "after" | "by">;

const rowText = ({ season, ...days }: Days): string =>
  `{ ${["season", ...["on", "after", "by"].filter((key) => key in days)]
    .map((key) => `${key}: ${{ season, ...days }[key as keyof Days]}`)
    .join(", ")} }`;

const daysOf = ({ season, on, after, by }: Days): Days => ({ season, ...omitUndefined({ on, after, by }) });
const daysText = ({ on, after, by }: Days): string =>
  Object.entries(omitUndefined({ on, after, by }))
    .map(([key, date]) => `${key} ${date}`)
    .join(" ");

interface Known {
  readonly days: Days;
  readonly file: string;
  readonly line: number;
}

const conflict = (days: Days, { days: other, file, line }: Known): Fault => ({
  code: "recorded-otherwise",
  message: `season ${days.season} is there already: ${daysText(other)} in ${file}, line ${line}; here ${daysText(days)}`,
  hint: "keep the one you trust: correct the other, or remove this row",
});

/** The rows of one lake that are new; repeats are counted, other days of a known season are problems. */
function newIceOffDays(
  rows: readonly Row<ImportRow>[],
  { iceOff }: LakeDraft,
  problems: Diagnostic[],
): { added: Days[]; already: number } {
  const known = iceOff.map(({ value, where }): Known => ({ days: daysOf(value), ...where }));
  const added: Days[] = [];
  let already = 0;
  for (const { value, where } of rows) {
    const days = daysOf(value);
    const same = known.filter((other) => other.days.season === days.season);
    const [other] = same;
    if (other === undefined) {
      added.push(days);
      known.push({ days, ...where });
    } else if (same.some((one) => rowText(one.days) === rowText(days))) already += 1;
    else problems.push(errorAt(where, conflict(days, other)));
  }
  return { added: added.sort((a, b) => a.season - b.season), already };
}

const isError = ({ severity }: Diagnostic): boolean => severity === "error";

function sourcesOf(
  files: ClubFiles,
  drafts: ReadonlyMap<string, LakeDraft>,
  problems: Diagnostic[],
): ImportSources {
  const facts = files.club && readClubFacts(files.club, problems);
  const { season, asOf } = facts ?? {};
  const lakes = files.lakeSlugs.map((slug) => ({
    slug,
    name: drafts.get(slug)?.fields.name,
    hemisphere: drafts.get(slug)?.hemisphere,
  }));
  const moment: Moment | undefined =
    season === undefined || asOf === undefined ? undefined : { season, asOf };
  return { lakes, dates: (facts?.form ?? OWN_FORM).dates, moment };
}

/**
 * Plans to add a table's ice-off days to the lakes of a club: nothing is written here.
 * @param csv the table, wherever it lies; its problems are told under its `file`
 */
export async function planIceOffImport(dir: string, csv: ClubFile): Promise<IceOffImport> {
  const { files, problems: found } = await readClubFiles(dir);
  const problems = found.filter(isError);
  if (files === undefined || problems.length > 0) return { lakes: [], already: 0, problems };
  const ofLakes: Diagnostic[] = [];
  const drafts = new Map(
    files.lakes.flatMap((file) => {
      const draft = readLake(file, ofLakes);
      return draft === undefined ? [] : [[file.slug, draft] as const];
    }),
  );
  const sources = sourcesOf(files, drafts, problems);
  const inTable: Diagnostic[] = [];
  const rows = readImportRows(csv, sources, inTable);
  const wanted = new Set(rows.map(({ value }) => value.lake));
  const lakes: LakeImport[] = [];
  let already = 0;
  for (const { file, slug, text } of files.lakes.filter((lake) => wanted.has(lake.slug))) {
    const own = ofLakes.filter((problem) => problem.file === file && isError(problem));
    problems.push(...own);
    const draft = drafts.get(slug);
    if (draft === undefined || own.length > 0) continue;
    const news = newIceOffDays(
      rows.filter(({ value }) => value.lake === slug),
      draft,
      inTable,
    );
    already += news.already;
    if (news.added.length === 0) continue;
    const written = news.added.map((value) => ({ value, text: rowText(value) }));
    const after = insertIceOff(file, text, written, problems);
    if (after !== undefined) lakes.push({ file, before: text, after, rows: written.map((row) => row.text) });
  }
  problems.push(...limitPerCode(inTable.toSorted((a, b) => a.line - b.line || a.column - b.column)));
  return { lakes: problems.some(isError) ? [] : lakes, already, problems };
}
