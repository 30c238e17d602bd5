import type { Drawing } from "../../draw/drawing.ts";
import { ascent_pt, inMm, leading_pt, type Overflow, type Part, type Piece, type TypeStyle } from "./page.ts";

/** Measures text; the fonts behind it are not the layout's business. */
export interface Ruler {
  width_pt(text: string, style: TypeStyle): number;
  /** The characters the typeface lacks. */
  missing(text: string, style: TypeStyle): string[];
  xHeight_pt(style: TypeStyle): number;
}

/** A stretch of text in one style. */
export interface Run {
  readonly text: string;
  readonly style: TypeStyle;
}

export const run = (text: string, style: TypeStyle): Run => ({ text, style });

interface Segment extends Run {
  /** From the start of the line. */
  readonly x_pt: number;
}

interface Line {
  readonly segments: readonly Segment[];
  readonly width_pt: number;
}

interface Word extends Run {
  /** With the space after it. */
  readonly width_pt: number;
  readonly inked_pt: number;
}

/** Where a line may break: after a space, and after a slash in an address. */
const words = ({ text, style }: Run, ruler: Ruler): Word[] =>
  text
    .split(/(?<=[ /])/)
    .filter((word) => word !== "")
    .map((word) => ({
      text: word,
      style,
      width_pt: ruler.width_pt(word, style),
      inked_pt: ruler.width_pt(word.trimEnd(), style),
    }));

/**
 * Sets words on one line; neighbours of one style become one segment. A space at the end takes no room, but stays for
 * whoever reads the text out.
 */
function setLine(line: readonly Word[]): Line {
  const segments: Segment[] = [];
  let x_pt = 0;
  for (const { text, style, width_pt } of line) {
    const last = segments.at(-1);
    if (last?.style === style) segments.splice(-1, 1, { ...last, text: last.text + text });
    else segments.push({ text, style, x_pt });
    x_pt += width_pt;
  }
  const last = line.at(-1);
  return { segments, width_pt: last === undefined ? 0 : x_pt - last.width_pt + last.inked_pt };
}

/** Sums of the same widths in another order may differ by so much. */
export const ROUNDING_PT = 0.01;

/**
 * Breaks runs into lines no wider than `width_pt`. A single word that is wider stands on a line of its own, and the
 * line's width says so.
 */
function flow(runs: readonly Run[], width_pt: number, ruler: Ruler): Line[] {
  const lines: Line[] = [];
  let line: Word[] = [];
  let used_pt = 0;
  for (const word of runs.flatMap((run) => words(run, ruler))) {
    if (line.length > 0 && used_pt + word.inked_pt > width_pt + ROUNDING_PT) {
      lines.push(setLine(line));
      line = [];
      used_pt = 0;
    }
    line.push(word);
    used_pt += word.width_pt;
  }
  return line.length === 0 ? lines : [...lines, setLine(line)];
}

/** What was placed in a column so far. */
export interface Column {
  readonly left_pt: number;
  readonly width_pt: number;
  /** Where the next line begins. */
  y_pt: number;
  readonly parts: Part[];
  readonly decoration: Piece[];
  readonly misfits: Overflow[];
  /** Height taken by each of the club's fields. */
  readonly heights_pt: Map<string, number>;
  readonly ruler: Ruler;
}

export const createColumn = (ruler: Ruler, left_pt: number, width_pt: number, top_pt: number): Column => ({
  left_pt,
  width_pt,
  y_pt: top_pt,
  parts: [],
  decoration: [],
  misfits: [],
  heights_pt: new Map(),
  ruler,
});

interface TextOptions {
  readonly role: Part["role"];
  /** Which of the club's fields the text comes from. */
  readonly field: string;
  /** From the column's left. */
  readonly indent_pt?: number;
  /** By default up to the column's right edge. */
  readonly width_pt?: number;
  readonly maxLines?: number;
  readonly reversed?: boolean;
}

const codeOf = (c: string): string =>
  `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;

/** The characters of a text that the typeface lacks, as misfits of their field. */
export function missingGlyphs(runs: readonly Run[], field: string, ruler: Ruler): Overflow[] {
  return [...new Set(runs.flatMap(({ text, style }) => ruler.missing(text, style)))].map((c) => ({
    field,
    message: `the card's typeface has no “${c}” (${codeOf(c)})`,
    hint: `Write ${field} without it.`,
  }));
}

/** Sets text from the column's present height on and moves below it; says what does not fit. */
export function setText(column: Column, runs: readonly Run[], options: TextOptions): Part {
  const { ruler } = column;
  const { role, field, indent_pt = 0, reversed = false, maxLines = Number.POSITIVE_INFINITY } = options;
  const { width_pt = column.width_pt - indent_pt } = options;
  const lines = flow(runs, width_pt, ruler);
  column.misfits.push(...missingGlyphs(runs, field, ruler));
  const top_pt = column.y_pt;
  const pieces: Piece[] = [];
  for (const line of lines) {
    const styles = line.segments.map(({ style }) => style);
    const over_pt = line.width_pt - width_pt;
    if (over_pt > ROUNDING_PT)
      column.misfits.push({
        field,
        message: `“${line.segments.map(({ text }) => text).join("")}” is ${Math.ceil(inMm(over_pt))} mm too wide`,
        hint: `Shorten ${field}, or put a space where it may break.`,
      });
    const baseline_pt = column.y_pt + Math.max(...styles.map(ascent_pt));
    for (const { text, x_pt, style } of line.segments)
      pieces.push({
        kind: "text",
        text,
        x_pt: column.left_pt + indent_pt + x_pt,
        y_pt: baseline_pt,
        style,
        reversed,
      });
    column.y_pt += Math.max(...styles.map(leading_pt));
  }
  if (lines.length > maxLines)
    column.misfits.push({
      field,
      message: `${lines.length} lines long, ${maxLines} fit`,
      hint: `Shorten ${field}.`,
    });
  column.heights_pt.set(field, (column.heights_pt.get(field) ?? 0) + column.y_pt - top_pt);
  return { role, pieces, parts: [] };
}

/** Sets text and adds it to the column's parts. */
export function addText(column: Column, runs: readonly Run[], options: TextOptions): void {
  column.parts.push(setText(column, runs, options));
}

/** How many lines a text would take, without setting it. */
export const countLines = ({ ruler }: Column, runs: readonly Run[], width_pt: number): number =>
  flow(runs, width_pt, ruler).length;

/** A part that only holds others. */
export const group = (role: Part["role"], parts: readonly Part[]): Part => ({ role, pieces: [], parts });

/** A level rule across the column at its present height. */
export function addRule(column: Column, stroke_pt: number): void {
  const { left_pt, width_pt, y_pt } = column;
  column.decoration.push({
    kind: "shape",
    path: `M${left_pt} ${y_pt}H${left_pt + width_pt}`,
    stroke_pt,
  });
}

/** Which field took the most beyond its usual share of the height. */
function longestField(column: Column, usual_pt: Readonly<Record<string, number>>): string {
  const over = [...column.heights_pt]
    .filter(([field]) => field in usual_pt)
    .map(([field, height_pt]) => ({ field, over_pt: height_pt - (usual_pt[field] ?? 0) }))
    .sort((a, b) => b.over_pt - a.over_pt);
  return over[0]?.field ?? "the lake's texts";
}

/** The misfit of a column that runs past `bottom_pt`, blamed on the field furthest over its usual height. */
export function columnOverflow(
  column: Column,
  bottom_pt: number,
  usual_pt: Readonly<Record<string, number>>,
): Overflow[] {
  const over_pt = column.y_pt - bottom_pt;
  if (over_pt <= ROUNDING_PT) return [];
  const field = longestField(column, usual_pt);
  return [{ field, message: `${Math.ceil(inMm(over_pt))} mm too long`, hint: `Shorten ${field}.` }];
}

/** Places a drawing in its own size, its lettering full size, and moves below it. */
export function addDrawing(column: Column, drawing: Drawing): void {
  const { left_pt, y_pt } = column;
  column.parts.push({
    role: "Figure",
    ...(drawing.title === null ? {} : { alt: drawing.title }),
    parts: [],
    pieces: [{ kind: "drawing", drawing, x_pt: left_pt, y_pt }],
  });
  column.y_pt += drawing.height;
}
