import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { type Cell, readTable, type Table } from "./csv-table.ts";
import type { Named } from "./named.ts";
import { errorAt, startOf, type Unread, unread } from "./problem.ts";
import { quoted } from "./quote.ts";
import { type CellContext, cellValue } from "./report-cells.ts";
import { type PlacedColumn, placeColumns } from "./report-columns.ts";
import type { ReportForm } from "./report-form.ts";
import type { PlacedData } from "./yaml-document.ts";

export interface TableContext {
  readonly form: ReportForm;
  readonly lakes: readonly Named[];
  readonly patterns: readonly Named[];
}

/** What a spreadsheet writes for a letter that it could not keep. */
const LOST_LETTER = "\ufffd";

const empty = ({ key, heading }: PlacedColumn): Unread =>
  unread({
    code: "empty-value",
    message: "nothing is written here",
    hint: `fill in the ${key} under ${quoted(heading)}, or remove the row`,
  });

function rowValue(
  cells: readonly Cell[],
  columns: readonly PlacedColumn[],
  context: CellContext,
): Readonly<Record<string, unknown>> {
  const pairs = columns.flatMap((column) => {
    const text = cells[column.index]?.text ?? "";
    if (text !== "") return [[column.key, cellValue(text, column, context)] as const];
    return column.key === "lake" || column.key === "date" ? [[column.key, empty(column)] as const] : [];
  });
  return Object.fromEntries(pairs.filter(([, value]) => value !== undefined));
}

/** Rows that no heading fits, and letters that were lost before the file came here. */
function tableProblems({ heading, rows }: Table): Diagnostic[] {
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
  const columns = placeColumns(table, form, file.file, problems);
  if (problems.slice(before).some(({ severity }) => severity === "error")) return undefined;
  const cells: CellContext = {
    dates: form.dates,
    lakes,
    patterns,
    decimalComma: table.separator === ";",
  };
  const spot = ([row, key]: readonly PropertyKey[]): SourceSpot => {
    const written = table.rows[Number(row)];
    const column = columns.find((candidate) => candidate.key === key);
    return (written?.[column?.index ?? 0] ?? written?.[0])?.where ?? startOf(file.file);
  };
  return {
    file: file.file,
    data: table.rows.map((row) => rowValue(row, columns, cells)),
    spot,
    keySpot: spot,
  };
}
