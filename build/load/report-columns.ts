import type { Diagnostic } from "../model/diagnostic.ts";
import type { Cell, Table } from "./csv-table.ts";
import { didYouMean } from "./did-you-mean.ts";
import { errorAt, type Fault, startOf, warningAt } from "./problem.ts";
import { quoted } from "./quote.ts";

/** A column that is looked for, and whether club.yaml names its heading. */
interface SoughtColumn {
  readonly key: string;
  readonly heading: string;
  readonly isNamed: boolean;
}

/** A column and its place in the rows. */
export type Placed<Column> = Column & { readonly index: number };

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
): Placed<Column>[] {
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
