import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { type Fault, quoted } from "../../model/fault.ts";
import type { FormColumn, ReportForm } from "../../model/fields/report-form.ts";
import type { ClubFile } from "../club-files.ts";
import { didYouMean, type Named } from "../names.ts";
import { errorAt, type InvalidValue, invalidValue, startOf, warningAt } from "../problem.ts";
import type { PlacedData } from "../yaml/yaml-document.ts";
import { type Cell, readTable, type Table } from "./csv-table.ts";
import { type CellContext, cellValue } from "./report-cells.ts";

/** A column that is looked for, and whether club.yaml names its heading. */
interface SoughtColumn {
  readonly key: string;
  readonly heading: string;
  readonly isNamed: boolean;
}

/** A column and its place in the rows. */
export type LocatedColumn<Column> = Column & { readonly index: number };

const plain = (heading: string): string => heading.trim().replace(/\s+/g, " ").toLowerCase();

const isNeeded = ({ key }: SoughtColumn): boolean => key === "lake" || key === "date";

const inClubYaml = ({ isNamed, key }: SoughtColumn): string =>
  isNamed ? `correct reportForm: columns: ${key} in club.yaml, or the heading here` : "correct the heading";

function missing(column: SoughtColumn, headings: readonly string[]): Fault {
  const near = didYouMean(column.heading, headings);
  return {
    code: "missing-column",
    message: `there is no column ${quoted(column.heading)}${column.isNamed ? ` for “${column.key}”` : ""}`,
    hint:
      near === undefined
        ? `${inClubYaml(column)}${column.isNamed ? "" : ", or, in a table of reports, name the column under reportForm in club.yaml"}; the columns are ${headings.map(quoted).join(", ")}`
        : `${quoted(near)} comes near: ${inClubYaml(column)}`,
  };
}

function duplicate(column: SoughtColumn, first: number): Fault {
  return {
    code: "duplicate-column",
    message: `a second column is headed ${quoted(column.heading)}; the first is number ${first + 1}`,
    hint: "rename or remove one of the two",
  };
}

/**
 * Finds columns in a table by their headings, capitals and spaces aside. Other columns are nobody's business,
 * unless one is most likely a wanted one misspelt.
 */
export function placeColumns<Column extends SoughtColumn>(
  { heading }: Table,
  columns: readonly Column[],
  file: string,
  problems: Diagnostic[],
): LocatedColumn<Column>[] {
  const found = columns.map((column) => ({
    column,
    places: heading.flatMap((cell, i) => (plain(cell.text) === plain(column.heading) ? [i] : [])),
  }));
  const taken = new Set(found.flatMap(({ places }) => places));
  const others = heading.filter((cell, i) => !taken.has(i) && cell.text !== "");
  return found.flatMap(({ column, places: [first, second] }) => {
    if (first !== undefined && second === undefined) return [{ ...column, index: first }];
    if (first !== undefined && second !== undefined) {
      problems.push(errorAt(heading[second]?.where ?? startOf(file), duplicate(column, first)));
      return [];
    }
    reportMissing(column, heading, others, file, problems);
    return [];
  });
}

function reportMissing(
  column: SoughtColumn,
  heading: readonly Cell[],
  others: readonly Cell[],
  file: string,
  problems: Diagnostic[],
): void {
  const near = didYouMean(
    column.heading,
    others.map(({ text }) => text),
  );
  const where = others.find(({ text }) => text === near)?.where ?? heading[0]?.where ?? startOf(file);
  const fault = missing(
    column,
    (near === undefined ? heading : others).map(({ text }) => text),
  );
  if (near !== undefined || isNeeded(column)) problems.push(errorAt(where, fault));
  else if (column.isNamed) problems.push(warningAt(where, fault));
}

interface TableContext {
  readonly form: ReportForm;
  readonly lakes: readonly Named[];
  readonly patterns: readonly Named[];
}

/** What a spreadsheet writes for a letter that it could not keep. */
const LOST_LETTER = "\ufffd";

/** Stands for a cell in which something should be written. */
export const emptyCell = ({
  key,
  heading,
}: Pick<FormColumn, "heading"> & { readonly key: string }): InvalidValue =>
  invalidValue({
    code: "empty-value",
    message: "nothing is written here",
    hint: `fill in the ${key} under ${quoted(heading)}, or remove the row`,
  });

function rowValue(
  cells: readonly Cell[],
  columns: readonly LocatedColumn<FormColumn>[],
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

/** Rows as the data that a YAML file of them would hold, each value placed at its cell. */
export function locatedRows(
  file: string,
  { rows }: Table,
  columns: readonly LocatedColumn<{ readonly key: string }>[],
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
  for (const problem of tableProblems(table)) problems.push(problem);
  const columns = placeColumns(table, form.columns, file.file, problems);
  if (problems.slice(before).some(({ severity }) => severity === "error")) return undefined;
  const cells: CellContext = {
    dates: form.dates,
    lakes,
    patterns,
    decimalComma: table.separator === ";",
  };
  return locatedRows(file.file, table, columns, (row) => rowValue(row, columns, cells));
}
