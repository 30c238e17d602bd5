import type { Guide } from "../guide/guide-schema.ts";
import { createDrawing, type Drawing, group, path, text } from "./drawing.ts";
import type { Ink } from "./ink.ts";

type BacktestRow = NonNullable<Guide["backtest"]>[number];

/** Whose forecast of a past season an error is of; dashes distinguish the lines without colour. */
const FORECASTERS = [
  { key: "model", name: "This guide", dashes: {} },
  { key: "shifted", name: "Usual date, shifted", dashes: { "stroke-dasharray": "7 4" } },
  { key: "baseline", name: "Usual date", dashes: { "stroke-dasharray": "2 4" } },
] as const;

/** Shares of the reporting lakes reported open at which a season is scored, in words as short as an axis takes. */
const MOMENTS: readonly (readonly [BacktestRow["moment"], string])[] = [
  ["first", "first"],
  ["25%", "¼"],
  ["50%", "½"],
  ["75%", "¾"],
];

const LEFT = 40;
const TOP = 12;
const WIDE = 250;
const HIGH = 190;
const KEY_LEADING = 20;
const STEP_DAYS = 2;
/** More marks than this would run into each other. */
const MOST_STEPS = 10;

/** Mean error of the middle date by the share of lakes reported open, of the guide and of the usual dates. */
export function errorPlot(rows: readonly BacktestRow[], ink: Ink): Drawing {
  const shown = MOMENTS.flatMap(([moment, word]) => {
    const row = rows.find((one) => one.moment === moment);
    return row === undefined ? [] : [{ row, word }];
  });
  const most = Math.max(0, ...shown.flatMap(({ row }) => FORECASTERS.map(({ key }) => row[key].mae)));
  const step = STEP_DAYS * Math.max(1, Math.ceil(most / (STEP_DAYS * MOST_STEPS)));
  const top = Math.max(1, Math.ceil(most / step)) * step;
  const rounded = (value: number): number => Math.round(value * 10) / 10;
  const x = (i: number): number => rounded(LEFT + ((i + 0.5) * WIDE) / Math.max(1, shown.length));
  const y = (days: number): number => rounded(TOP + HIGH * (1 - days / top));
  const keyTop = y(0) + 2 * ink.textSize + 30;
  return createDrawing(
    {
      width: LEFT + WIDE + 16,
      height: Math.ceil(keyTop + FORECASTERS.length * KEY_LEADING),
      title: "Mean error of the middle date by share of lakes reported open; the table has the same figures.",
      textSize: ink.textSize,
    },
    [
      group({ fill: ink.words }, [
        path({ d: `M${LEFT} ${y(top)}V${y(0)}H${LEFT + WIDE}`, fill: "none", stroke: ink.line }),
        Array.from({ length: top / step + 1 }, (_, i) => i * step).map((days) => [
          path({ d: `M${LEFT} ${y(days)}h-5`, stroke: ink.line, fill: "none" }),
          text({ x: LEFT - 8, y: y(days) + ink.textSize * 0.35, "text-anchor": "end" }, days),
        ]),
        shown.map(({ word }, i) =>
          text({ x: x(i), y: y(0) + 5 + ink.textSize, "text-anchor": "middle" }, word),
        ),
        text(
          { x: LEFT + WIDE, y: y(0) + 10 + 2 * ink.textSize, "text-anchor": "end" },
          "lakes reported open",
        ),
        text({ x: LEFT + 6, y: TOP + ink.textSize * 0.8 }, "error, days"),
      ]),
      FORECASTERS.map(({ key, name, dashes }, i) => {
        const points = shown.map(({ row }, place) => `${x(place)} ${y(row[key].mae)}`);
        const line = {
          fill: "none",
          stroke: key === "model" ? ink.accent : ink.words,
          "stroke-width": key === "model" ? 2.5 : 1.5,
          ...dashes,
        };
        return [
          points.length === 0 ? null : path({ d: `M${points.join("L")}`, ...line }),
          path({ d: `M${LEFT} ${keyTop + i * KEY_LEADING}h28`, ...line }),
          text({ x: LEFT + 36, y: keyTop + i * KEY_LEADING + ink.textSize * 0.35, fill: ink.words }, name),
        ];
      }),
    ],
  );
}
