import type { GuideTrip } from "../guide/guide-schema.ts";
import { varietyText } from "../guide/trip-words.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "./drawing.ts";
import { estimateTextWidth, LEADING, tenth } from "./geometry.ts";
import type { Ink } from "./ink.ts";

type Row = GuideTrip["box"]["rows"][number];

interface FlyBoxOptions {
  readonly ink: Ink;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  /** Which rows are drawn, from 0, the end exclusive; by default all. */
  readonly part?: readonly [from: number, to: number];
}

/** From one fly to the next in its row, as a share of the lettering, where there is room. */
const PITCH = 0.74;
/** The widest that the box itself may be, as a share of the drawing. */
const BOX_SHARE = 0.38;
/** Between the box's edge and its first fly, as a share of the lettering. */
const EDGE = 0.5;
/** The line with the key below the box, as a share of the lettering. */
const KEY = 1.9;

interface Plan {
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly pitch: number;
  /** Right edge of the numbers of flies. */
  readonly count: number;
  readonly label: number;
  /** Whether the size and colour stand below the name. */
  readonly below: boolean;
  readonly row: number;
}

/** Columns that every part of one box shares. */
function planOf(rows: readonly Row[], { ink: { textSize: size }, width }: FlyBoxOptions): Plan {
  const most = Math.max(1, ...rows.map(({ carry }) => carry));
  const widest = (texts: readonly string[]): number =>
    Math.max(0, ...texts.map((text) => estimateTextWidth(text, size)));
  const left = widest(rows.map(({ row }) => String(row))) + size * 0.6;
  const flies = Math.min(width * BOX_SHARE - 2 * EDGE * size, most * PITCH * size);
  const right = left + flies + 2 * EDGE * size;
  const count = right + size * 0.5 + widest(rows.map(({ carry }) => String(carry)));
  const label = count + size * 0.5;
  const below = widest(rows.map((row) => `${row.name} ${varietyText(row)}`)) > width - label;
  const row = size * (below ? 2 : 1) * LEADING;
  return { size, left, right, pitch: flies / most, count, label, below, row };
}

/** How many rows of a box can be drawn in this height. */
export function rowsThatFit(rows: readonly Row[], options: FlyBoxOptions, height: number): number {
  const { size, row } = planOf(rows, options);
  return Math.max(1, Math.floor((height - size * (KEY + 0.2)) / row));
}

interface FlyProps {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  /** Distance of its neighbours: where many stand in one row each is slimmer. */
  readonly pitch: number;
  readonly tied: boolean;
  readonly ink: Ink;
}

/** A fly from above: filled where it is in the box, open where it is still to be tied. */
function drawFly({ x, y, size, pitch, tied, ink }: FlyProps) {
  const [half, long] = [Math.min(size * 0.2, pitch * 0.3), size * 0.4];
  return path({
    class: tied ? "tied" : "to-tie",
    d: `M${tenth(x)} ${tenth(y - long)}q${tenth(2 * half)} ${tenth(long)} 0 ${tenth(2 * long)}q${tenth(-2 * half)} ${tenth(-long)} 0 ${tenth(-2 * long)}Z`,
    fill: tied ? ink.words : ink.paper,
    stroke: ink.words,
    "stroke-width": tenth(Math.min(0.9, pitch * 0.25)),
  });
}

function drawBoxRow({ row, top, plan, ink }: { row: Row; top: number; plan: Plan; ink: Ink }) {
  const { size, left, count, label, pitch, below } = plan;
  const middle = top + plan.row / 2;
  const base = middle + size * 0.34;
  const first = below ? base - (size * LEADING) / 2 : base;
  return group({ class: "row", fill: ink.words }, [
    text({ x: tenth(left - size * 0.45), y: tenth(base), "text-anchor": "end" }, row.row),
    Array.from({ length: row.carry }, (_, i) =>
      drawFly({
        x: left + EDGE * size + pitch * (i + 0.5),
        y: middle,
        size,
        pitch,
        tied: i < row.carry - row.tie,
        ink,
      }),
    ),
    text({ x: tenth(count), y: tenth(base), "text-anchor": "end", "font-weight": "bold" }, row.carry),
    text({ x: tenth(label), y: tenth(first) }, below ? row.name : `${row.name} ${varietyText(row)}`),
    below ? text({ x: tenth(label), y: tenth(first + size * LEADING) }, varietyText(row)) : null,
  ]);
}

/** What a filled and an open fly mean. */
function drawKey({ x, y, ink }: { x: number; y: number; ink: Ink }): DrawingContent {
  const size = ink.textSize;
  const second = x + size * 0.8 + estimateTextWidth("in the club’s box", size) + size;
  const at = (left: number, tied: boolean, words: string) =>
    group({ fill: ink.words }, [
      drawFly({ x: left + size * 0.3, y: y - size * 0.32, size, pitch: size, tied, ink }),
      text({ x: tenth(left + size * 0.8), y: tenth(y) }, words),
    ]);
  return [at(x, true, "in the club’s box"), at(second, false, "to tie")];
}

/** In one sentence. */
const flyBoxTitle = (rows: readonly Row[]): string =>
  `The box, row by row from the top: ${rows.map((row) => `${row.row}, ${row.carry} ${row.name} ${varietyText(row)}`).join("; ")}.`;

/**
 * A fly box seen from above, its rows numbered down the left edge: the flies of each row as marks, how many, and which.
 * A heavier line parts one pattern from the next.
 * Name and variety stand one below the other where they have no room side by side.
 */
export function flyBox(rows: readonly Row[], options: FlyBoxOptions): Drawing {
  const { ink, width, part = [0, rows.length] } = options;
  const plan = planOf(rows, options);
  const { size, left, right } = plan;
  const drawn = rows.slice(...part);
  const top = size * 0.2;
  const bottom = top + drawn.length * plan.row;
  const edge = (out: number): string =>
    `M${tenth(left - out)} ${tenth(top - out)}H${tenth(right + out)}V${tenth(bottom + out)}H${tenth(left - out)}Z`;
  const strips = drawn.slice(1).map(({ pattern }, i) => ({
    path: `M${tenth(left)} ${tenth(top + (i + 1) * plan.row)}H${tenth(right)}`,
    isNew: pattern !== drawn[i]?.pattern,
  }));
  return createDrawing(
    { width, height: Math.ceil(bottom + size * KEY), title: flyBoxTitle(drawn), textSize: size },
    [
      [true, false].map((isNew) =>
        path({
          d: strips.flatMap((strip) => (strip.isNew === isNew ? [strip.path] : [])).join(""),
          stroke: ink.line,
          "stroke-width": isNew ? 1 : 0.35,
        }),
      ),
      path({ d: edge(0), fill: "none", stroke: ink.line, "stroke-width": 0.5 }),
      path({ d: edge(1.6), fill: "none", stroke: ink.line, "stroke-width": 1.2 }),
      drawn.map((row, i) => drawBoxRow({ row, top: top + i * plan.row, plan, ink })),
      drawKey({ x: left, y: bottom + size * 1.5, ink }),
    ],
  );
}
