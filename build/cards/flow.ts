import type { TypeStyle } from "./type-styles.ts";

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

export interface Line {
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
export function flow(runs: readonly Run[], width_pt: number, ruler: Ruler): Line[] {
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
