import type { Guide } from "../guide/guide-schema.ts";
import { createDrawing, type Drawing, group, path, text } from "./drawing.ts";
import { tenth } from "./geometry.ts";
import type { Ink } from "./ink.ts";

const WIDTH = 48;
const HEIGHT = 14;
const MIDDLE = HEIGHT / 2;

/** A share on a scale from 0 to 1: a thick line over its likely range, with a gap at the estimate. No title: its figures stand beside it. */
export const shareBar = (
  { share, low, high }: { readonly share: number; readonly low: number; readonly high: number },
  ink: Ink,
): Drawing => {
  const x = (part: number): number => tenth(part * WIDTH);
  return createDrawing({ width: WIDTH, height: HEIGHT, title: null }, [
    path({
      d: `M0 2V${HEIGHT - 2}M0 ${MIDDLE}H${WIDTH}M${WIDTH} 2V${HEIGHT - 2}`,
      fill: "none",
      stroke: ink.line,
    }),
    path({ d: `M${x(low)} ${MIDDLE}H${x(high)}`, stroke: ink.line, "stroke-width": 7 }),
    path({ d: `M${x(share)} 0V${HEIGHT}`, stroke: ink.paper, "stroke-width": 2.5 }),
  ]);
};

type BacktestRow = NonNullable<Guide["backtest"]>[number];

/** The moments of a season at which it is scored, in words. */
export const MOMENT_WORDS: Readonly<Record<BacktestRow["moment"], string>> = {
  before: "Before any opens",
  first: "First lake open",
  "25%": "A quarter open",
  "50%": "Half open",
  "75%": "Three quarters open",
};

const SIDE = 260;
const LEFT = 44;
const TOP = 10;
const KEY_LEADING = 20;

/** Shape of each moment's points, centred on 0 0; distinct without colour. */
const SHAPES: Readonly<
  Record<BacktestRow["moment"], { readonly outline: string; readonly filled: boolean }>
> = {
  before: { outline: "M-4 -4H4V4H-4Z", filled: false },
  first: { outline: "M-4 -4H4V4H-4Z", filled: true },
  "25%": { outline: "M0 -5.5L5.5 0L0 5.5L-5.5 0Z", filled: false },
  "50%": { outline: "M0 -5.5L5.5 0L0 5.5L-5.5 0Z", filled: true },
  "75%": { outline: "M-5 4.5H5L0 -5Z", filled: true },
};

const x = (chance: number): number => Math.round((LEFT + chance * SIDE) * 10) / 10;
const y = (chance: number): number => Math.round((TOP + (1 - chance) * SIDE) * 10) / 10;
const percent = (chance: number): string => `${Math.round(chance * 100)} %`;

const drawPoint = ({
  moment,
  at,
  ink,
}: {
  moment: BacktestRow["moment"];
  at: readonly [number, number];
  ink: Ink;
}) =>
  path({
    d: SHAPES[moment].outline,
    transform: { translate: at },
    fill: SHAPES[moment].filled ? ink.words : ink.paper,
    stroke: ink.words,
    "stroke-width": 1.2,
  });

const drawAxes = ({ ink }: { ink: Ink }) =>
  group({ fill: ink.words }, [
    path({ d: `M${x(0)} ${y(1)}H${x(1)}V${y(0)}H${x(0)}Z`, fill: "none", stroke: ink.line }),
    path({ d: `M${x(0)} ${y(0)}L${x(1)} ${y(1)}`, fill: "none", stroke: ink.accent, "stroke-width": 1.5 }),
    [0, 0.25, 0.5, 0.75, 1].map((chance) => [
      path({ d: `M${x(chance)} ${y(0)}v5M${x(0)} ${y(chance)}h-5`, stroke: ink.line, fill: "none" }),
      text({ x: x(chance), y: y(0) + 5 + ink.textSize, "text-anchor": "middle" }, percent(chance)),
      text(
        { x: x(0) - 8, y: y(chance) + ink.textSize * 0.35, "text-anchor": "end" },
        Math.round(chance * 100),
      ),
    ]),
    text({ x: x(1), y: y(0) + 10 + 2 * ink.textSize, "text-anchor": "end" }, "chance said"),
    text({ x: x(0) + 6, y: y(1) + 4 + ink.textSize }, "came by then, %"),
  ]);

/**
 * Chance said against share that came, a point shape for each moment of the season: on the slanted line, chances come
 * true as often as they say.
 */
export function calibrationPlot(rows: readonly BacktestRow[], ink: Ink): Drawing {
  const keyTop = y(0) + 2 * ink.textSize + 32;
  const height = Math.ceil(keyTop + rows.length * KEY_LEADING);
  const width = LEFT + SIDE + 24;
  return createDrawing(
    {
      width: width,
      height: height,
      title: "Chance said against share that came, for past seasons; the table below has the same figures.",
      textSize: ink.textSize,
    },
    [
      drawAxes({ ink }),
      rows.map(({ moment, calibration }) =>
        calibration.map(({ said, came }) => drawPoint({ moment, at: [x(said), y(came)], ink })),
      ),
      rows.map(({ moment }, i) =>
        group({ fill: ink.words }, [
          drawPoint({ moment, at: [x(0) + 6, keyTop + i * KEY_LEADING], ink }),
          text({ x: x(0) + 20, y: keyTop + i * KEY_LEADING + ink.textSize * 0.35 }, MOMENT_WORDS[moment]),
        ]),
      ),
    ],
  );
}
