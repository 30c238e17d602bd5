import { type DrawingContent, group, path, text } from "../drawing.ts";
import { estimateTextWidth, LEADING, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

/** A word beside a drawing, and the point in the drawing it names. */
export interface Label {
  readonly at: { readonly x: number; readonly y: number };
  readonly text: string;
  readonly bold?: boolean;
}

interface PlacedLabel extends Label {
  readonly lines: readonly string[];
  /** Middle of its first line. */
  readonly y: number;
}

/** The spaces a text may be broken at: not those inside "8.5 ft", "3 × BB" or "No. 4". */
const BREAKS = /(?<!\bNo\.|×) (?!×|(?:ft|m|in|cm|s)\b)/;

/** A text broken at its spaces into lines no wider than `width`; what holds together may be wider. */
function wrapLabel(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(BREAKS)) {
    const last = lines.at(-1);
    if (last !== undefined && estimateTextWidth(`${last} ${word}`, size) <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Where a column of labels runs. */
export interface LabelColumn {
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** Between one label and the next, as a share of the lettering. */
const BETWEEN = 0.15;

/** How tall the labels stand one under the other. */
export function labelsHeight(labels: readonly Label[], { left, right }: LabelColumn, ink: Ink): number {
  const lines = labels.reduce(
    (sum, { text }) => sum + wrapLabel(text, right - left, ink.textSize).length * LEADING + BETWEEN,
    0,
  );
  return lines * ink.textSize;
}

/** Each label as near as possible to the height of what it names, without overlaps, from the top down. */
export function placeLabels(
  labels: readonly Label[],
  column: LabelColumn,
  bottom: number,
  ink: Ink,
): PlacedLabel[] {
  const size = ink.textSize;
  const leading = size * LEADING;
  const blocks = labels.map((label) => {
    const lines = wrapLabel(label.text, column.right - column.left, size);
    return { ...label, lines, height: lines.length * leading + size * BETWEEN };
  });
  const tops: number[] = [];
  let free = column.top;
  for (const { at, height } of blocks) {
    const top = Math.max(free, at.y - leading / 2);
    tops.push(top);
    free = top + height;
  }
  let floor = bottom;
  for (let i = blocks.length - 1; i >= 0; i--) {
    const height = blocks[i]?.height ?? 0;
    const top = Math.min(tops[i] ?? 0, floor - height);
    tops[i] = top;
    floor = top;
  }
  return blocks.map(({ height: _, ...block }, i) => ({ ...block, y: (tops[i] ?? 0) + leading / 2 }));
}

/** A column of labels, each joined by a hairline to what it names. */
export const drawLabels = ({
  placed,
  column,
  ink,
}: {
  placed: readonly PlacedLabel[];
  column: LabelColumn;
  ink: Ink;
}): DrawingContent =>
  group({}, [
    path({
      d: placed
        .map(
          ({ at, y }) =>
            `M${tenth(at.x)} ${tenth(at.y)}L${tenth(column.left - ink.textSize * 0.7)} ${tenth(y)}H${tenth(column.left - ink.textSize * 0.2)}`,
        )
        .join(""),
      fill: "none",
      stroke: ink.line,
      "stroke-width": 0.5,
    }),
    group({ fill: ink.words }, [
      placed.map(({ lines, y, bold }) =>
        lines.map((line, i) =>
          text(
            {
              x: tenth(column.left),
              y: tenth(y + ink.textSize * (0.35 + LEADING * i)),
              ...(bold === true ? { "font-weight": "bold" } : {}),
            },
            line,
          ),
        ),
      ),
    ]),
  ]);
