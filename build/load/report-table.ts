import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { type Cell, readTable, type Table } from "./csv-table.ts";
import type { Named } from "./named.ts";
import { errorAt, startOf, type Unread, unread } from "./problem.ts";
import { quoted } from "./quote.ts";
import { type CellContext, cellValue } from "./report-cells.ts";
import { type Placed, placeColumns } from "./report-columns.ts";
import type { FormColumn, ReportForm } from "./report-form.ts";
import type { PlacedData } from "./yaml-document.ts";

export interface TableContext {
  readonly form: ReportForm;
  readonly lakes: readonly Named[];
  readonly patterns: readonly Named[];
}

/** What a spreadsheet writes for a letter that it could not keep. */
const LOST_LETTER = "\ufffd";

/** Stands for a cell in which something should be written. */
export const emptyCell = ({ key, heading }: Pick<FormColumn, "heading"> & { readonly key: string }): Unread =>
  unread({
    code: "empty-value",
    message: "nothing is written here",
    hint: `fill in the ${key} under ${quoted(heading)}, or remove the row`,
  });

function rowValue(
  cells: readonly Cell[],
  columns: readonly Placed<FormColumn>[],
  context: CellContext,
): Readonly<Record<string, unknown>> {
  const pairs = columns.flatMap((column) => {
    const text = cells[column.index]?.text ?? "";
    if (text !== "") return [[column.key, cellValue(text, column, context)] as const];
    return column.key === "lake" || column.key === "date" ? [[column.key, emptyCell(column)] as const] : [];
  });
  return Object.fromEntries(pairs.filter(([, value]) => value !== undefined));
}

/** Rows that no heading fits, and letters that were lost before the file came here. */
export function tableProblems({ heading, rows }: Table): Diagnostic[] {
  return [heading, ...rows].flatMap((cells) => {
    const tooMany = cells.slice(heading.length).find(({ text }) => text !== "");
    const lost = cells.find(({ text }) => text.includes(LOST_LETTER));
    return [
      ...(tooMany === undefined
        ? []
        : [
            errorAt(tooMany.where, {
              code: "too-many-cells",
              message: `this row has ${cells.length} cells, the heading ${heading.length}`,
              hint: "put a cell that holds the separator into quotes",
            }),
          ]),
      ...(lost === undefined
        ? []
        : [
            errorAt(lost.where, {
              code: "lost-letter",
              message: `${LOST_LETTER} stands where a letter was lost when the file was saved`,
              hint: "export it again as “CSV UTF-8”, or write the letter here",
            }),
          ]),
    ];
  });
}

/** Problems of one kind that are listed one by one; a wrong date format would fill the screen. */
const MOST_LISTED = 10;

/** The same problems, the eleventh and later of one kind counted. */
export function mostOf(problems: readonly Diagnostic[]): Diagnostic[] {
  const codes = new Set(problems.map(({ code }) => code));
  return [...codes].flatMap((code) => {
    const same = problems.filter((problem) => problem.code === code);
    const [first, ...rest] = same.slice(MOST_LISTED);
    if (first === undefined) return same;
    return [
      ...same.slice(0, MOST_LISTED),
      {
        ...first,
        code: "more-rows",
        message: `${first.code} here and in ${rest.length} more places`,
        hint: "correct the first ones and look again",
      },
    ];
  });
}

/** Rows as the data that a YAML file of them would hold, each value placed at its cell. */
export function placedRows(
  file: string,
  { rows }: Table,
  columns: readonly Placed<{ readonly key: string }>[],
  readRow: (row: readonly Cell[]) => unknown,
): PlacedData {
  const spot = ([row, key]: readonly PropertyKey[]): SourceSpot => {
    const written = rows[Number(row)];
    const column = columns.find((candidate) => candidate.key === key);
    return (written?.[column?.index ?? 0] ?? written?.[0])?.where ?? startOf(file);
  };
  return { file, data: rows.map(readRow), spot, keySpot: spot };
}

/** Reads a table of reports as the data that a YAML file of them would hold; undefined when it cannot be read. */
export function readReportTable(
  file: ClubFile,
  { form, lakes, patterns }: TableContext,
  problems: Diagnostic[],
): PlacedData | undefined {
  const table = readTable(file, problems);
  if (table === undefined) return undefined;
  const before = problems.length;
  problems.push(...tableProblems(table));
  const columns = placeColumns(table, form.columns, file.file, problems);
  if (problems.slice(before).some(({ severity }) => severity === "error")) return undefined;
  const cells: CellContext = {
    dates: form.dates,
    lakes,
    patterns,
    decimalComma: table.separator === ";",
  };
  return placedRows(file.file, table, columns, (row) => rowValue(row, columns, cells));
}
