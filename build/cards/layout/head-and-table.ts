import { type CalendarDate, dayMonthYear } from "../../model/calendar.ts";
import { noBreak } from "../card-words.ts";
import { addRule, addText, type Column, countLines, group, type Run, run, setText } from "./column.ts";
import { ascent_pt, GLANCE, leading_pt, type Part, STRONG, type TypeStyle } from "./page.ts";

interface HeadWords {
  /** What the card is about, read at a glance. */
  readonly title: string;
  /** What this side of it holds; in small type behind the title. */
  readonly side?: string;
  /** The club's field that the title comes from. */
  readonly field: string;
}

/** The head of every side of every card: its title, the as-of day at the right, and a rule. */
export function addCardHead(column: Column, asOf: CalendarDate, { title, side, field }: HeadWords): void {
  const day = noBreak(`as of ${dayMonthYear(asOf)}`);
  const indent_pt = column.width_pt - column.ruler.width_pt(day, STRONG);
  const top_pt = column.y_pt;
  const words = [run(side === undefined ? title : `${title}  `, GLANCE)];
  addText(column, side === undefined ? words : [...words, run(side, STRONG)], {
    role: "H1",
    field,
    width_pt: indent_pt - 8,
    maxLines: 2,
  });
  const below_pt = column.y_pt;
  column.y_pt = top_pt + ascent_pt(GLANCE) - ascent_pt(STRONG);
  addText(column, [run(day, STRONG)], { role: "P", field: "asOf", indent_pt });
  column.y_pt = below_pt + 1;
  addRule(column, 1.6);
  column.y_pt += 3;
}

/** One box of a table: lines that each begin anew. */
export interface Cell {
  readonly role: "TH" | "TD";
  readonly lines: readonly (readonly Run[])[];
}

export const headCell = (text: string, style: TypeStyle): Cell => ({
  role: "TH",
  lines: [[run(text, style)]],
});
export const dataCell = (text: string, style: TypeStyle): Cell => ({
  role: "TD",
  lines: [[run(text, style)]],
});

/** A table's column, from the left of the column of text it stands in. */
interface Track {
  readonly indent_pt: number;
  readonly width_pt: number;
}

/** Kept free between a table's columns. */
const GUTTER_PT = 4;

/** Table columns of these widths, side by side, each with a gutter on its right. */
export const tableTracks = (widths_pt: readonly number[]): Track[] =>
  widths_pt.map((width_pt, i) => ({
    indent_pt: widths_pt.slice(0, i).reduce((sum, width) => sum + width, 0),
    width_pt: width_pt - (i < widths_pt.length - 1 ? GUTTER_PT : 0),
  }));

const firstAscent_pt = ({ lines }: Cell): number =>
  Math.max(0, ...(lines[0] ?? []).map(({ style }) => ascent_pt(style)));

function height_pt(column: Column, { lines }: Cell, width_pt: number): number {
  const heights = lines.map(
    (line) => countLines(column, line, width_pt) * Math.max(...line.map(({ style }) => leading_pt(style))),
  );
  return heights.reduce((sum, height) => sum + height, 0);
}

const isOneLine = (column: Column, { lines }: Cell, width_pt: number): boolean =>
  lines.length === 1 && countLines(column, lines[0] ?? [], width_pt) <= 1;

/**
 * Sets cells side by side and moves below the tallest. Single lines share a baseline; beside a cell of several lines
 * all stand at half height.
 */
function setRow(column: Column, cells: readonly Cell[], tracks: readonly Track[], field: string): Part {
  const top_pt = column.y_pt;
  const placed = cells.flatMap((cell, i) => {
    const track = tracks[i];
    return track === undefined
      ? []
      : [{ cell, ...track, height_pt: height_pt(column, cell, track.width_pt) }];
  });
  const single = placed.every(({ cell, width_pt }) => isOneLine(column, cell, width_pt));
  const baseline_pt = Math.max(...cells.map(firstAscent_pt));
  const tallest_pt = Math.max(...placed.map((one) => one.height_pt));
  let bottom_pt = top_pt + tallest_pt;
  const parts = placed.map(({ cell, indent_pt, width_pt, height_pt }): Part => {
    column.y_pt = top_pt + (single ? baseline_pt - firstAscent_pt(cell) : (tallest_pt - height_pt) / 2);
    const pieces = cell.lines.flatMap(
      (line) => setText(column, line, { role: cell.role, field, indent_pt, width_pt }).pieces,
    );
    bottom_pt = Math.max(bottom_pt, column.y_pt);
    return { role: cell.role, pieces, parts: [] };
  });
  column.y_pt = bottom_pt;
  return group("TR", parts);
}

interface TableOptions {
  readonly tracks: readonly Track[];
  /** Which of the club's fields fills it. */
  readonly field: string;
  /** Hairlines between its columns too, for those that stand close. */
  readonly uprights?: boolean;
}

/** Sets a table, a hairline above each row but the first, and moves below it. */
export function addTable(column: Column, rows: readonly (readonly Cell[])[], options: TableOptions): void {
  const { tracks, field, uprights = false } = options;
  const top_pt = column.y_pt;
  const before_pt = column.heights_pt.get(field) ?? 0;
  const parts = rows.map((cells, i) => {
    if (i > 0) addRule(column, 0.4);
    return setRow(column, cells, tracks, field);
  });
  column.parts.push(group("Table", parts));
  if (uprights)
    column.decoration.push({
      kind: "shape",
      path: tracks
        .slice(1)
        .map(({ indent_pt }) => `M${column.left_pt + indent_pt - GUTTER_PT / 2} ${top_pt}V${column.y_pt}`)
        .join(""),
      stroke_pt: 0.4,
    });
  column.heights_pt.set(field, before_pt + column.y_pt - top_pt);
}
