import type { Guide } from "../../guide/guide-schema.ts";
import { depthText, rounded } from "../../model/units.ts";
import { circle, createDrawing, type Drawing, group, path, text } from "../drawing.ts";
import { estimateTextWidth, tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";
import { drawWindArrow } from "./anchor-plan.ts";
import type { RigOptions } from "./rig-drawing.ts";

type Swing = Guide["rigs"]["swing"];

interface SwingDrawing {
  readonly swing: Swing;
  readonly rod_m: number;
  /** Which column's times are written: seconds for the indicator to pass one rod length. */
  readonly rod_s: number;
}

/** A rowing boat, m; for illustration only. */
const BOAT = { length_m: 4, beam_m: 1.4 } as const;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The holder angles, widest first, and the seconds of swing in one drift. */
const timesOf = ({ swing, rod_s }: SwingDrawing) =>
  swing.rows
    .map(({ holder_deg, cells }) => ({
      holder_deg,
      text: cells.find((cell) => cell.rod_s === rod_s)?.text ?? "–",
    }))
    .sort((a, b) => b.holder_deg - a.holder_deg);

/** What the drawing shows, in sentences. */
const swingTitle = (drawing: SwingDrawing, units: RigOptions["units"]): string =>
  `Seen from above: a boat at anchor across the wind, rods in holders, ${depthText(drawing.swing.line_m, units)} of line from rod tip to indicator. Swing to within ${rounded(drawing.swing.until_deg)}° of straight downwind, in a drift of one rod length in ${rounded(drawing.rod_s)} s: ${timesOf(
    drawing,
  )
    .map(({ holder_deg, text }) => `from ${rounded(holder_deg)}° ${text}`)
    .join(", ")}.`;

type Point = readonly [x: number, y: number];

/** Some length away at an angle from straight downwind. */
const away = ([x, y]: Point, length: number, degrees: number): Point => [
  x + length * Math.sin(radians(degrees)),
  y + length * Math.cos(radians(degrees)),
];

const at = ([x, y]: Point): string => `${tenth(x)} ${tenth(y)}`;

/** Boat across the wind with an anchor line from each end. */
function drawBoat({ middle: [x, y], perMetre, ink }: { middle: Point; perMetre: number; ink: Ink }) {
  const [half, beam] = [(BOAT.length_m / 2) * perMetre, BOAT.beam_m * perMetre];
  const reach = ink.textSize * 1.1;
  return group({ fill: "none", stroke: ink.words }, [
    path({
      d: `M${at([x - half, y])}m${tenth(-reach)} ${tenth(-reach)}l${tenth(reach)} ${tenth(reach)}M${at([x + half, y])}m${tenth(reach)} ${tenth(-reach)}l${tenth(-reach)} ${tenth(reach)}`,
      "stroke-width": 0.8,
      "stroke-dasharray": "2 2",
    }),
    path({
      d: `M${at([x - half, y])}Q${at([x, y - beam])} ${at([x + half, y])}Q${at([x, y + beam])} ${at([x - half, y])}Z`,
      fill: ink.paper,
      "stroke-width": 1.2,
    }),
  ]);
}

/**
 * A boat at anchor from above: a rod at each holder angle with its seconds of swing, and the widest swing drawn from
 * start to end. Lengths of rods and lines are to one scale.
 */
export function swingDrawing(
  drawing: SwingDrawing,
  { ink, units, width, height: least }: RigOptions,
): Drawing {
  const { swing, rod_m } = drawing;
  const size = ink.textSize;
  const times = timesOf(drawing);
  const words = Math.max(
    ...times.map(({ holder_deg, text }) => estimateTextWidth(`${holder_deg}° ${text}`, size)),
  );
  const reach_m = rod_m + swing.line_m;
  const left = size * 3.4;
  const perMetre = (width - words - left - size * 0.8) / reach_m;
  const holder: Point = [left, size * 3];
  const [rod, line] = [rod_m * perMetre, swing.line_m * perMetre];
  const bottom = holder[1] + rod + line;
  const height = Math.ceil(Math.max(least, bottom + size * 2.8));
  const widest = times[0]?.holder_deg ?? 90;
  const widestTip = away(holder, rod, widest);
  const start = away(widestTip, line, widest);
  const end = away(widestTip, line, swing.until_deg);
  const dot = tenth(size * 0.3);
  return createDrawing({ width, height, title: swingTitle(drawing, units), textSize: size }, [
    drawWindArrow({ x: size * 0.6, y: size * 0.2, ink }),
    path({
      d: `M${at(widestTip)}L${at(end)}`,
      stroke: ink.words,
      "stroke-width": 0.9,
      "stroke-dasharray": "4 3",
    }),
    path({
      d: `M${at(start)}A${tenth(line)} ${tenth(line)} 0 0 1 ${at(end)}`,
      fill: "none",
      stroke: ink.accent,
      "stroke-width": 1.6,
    }),
    path({
      d: `M${at(end)}m${tenth(size * 0.75)} ${tenth(-size * 0.55)}l${tenth(-size * 0.5)} ${tenth(size * 0.42)}l${tenth(size * 0.6)} ${tenth(size * 0.3)}`,
      fill: "none",
      stroke: ink.accent,
      "stroke-width": 1.6,
    }),
    times.map(({ holder_deg, text: time }) => {
      const tip = away(holder, rod, holder_deg);
      const ball = away(tip, line, holder_deg);
      return group({ class: "holder" }, [
        path({ d: `M${at(tip)}L${at(ball)}`, stroke: ink.words, "stroke-width": 0.9 }),
        path({ d: `M${at(holder)}L${at(tip)}`, stroke: ink.words, "stroke-width": 2.4 }),
        circle({ cx: tenth(ball[0]), cy: tenth(ball[1]), r: dot, fill: ink.words }),
        text({ x: tenth(ball[0] + size * 0.6), y: tenth(ball[1] + size * 0.35), fill: ink.words }, [
          { text: `${rounded(holder_deg)}° `, isBold: false },
          { text: time, isBold: true },
        ]),
      ]);
    }),
    circle({ cx: tenth(end[0]), cy: tenth(end[1]), r: dot, fill: ink.paper, stroke: ink.words }),
    path({
      d: `M${at([holder[0], holder[1] + rod])}V${tenth(bottom)}`,
      stroke: ink.line,
      "stroke-width": 0.6,
      "stroke-dasharray": "1.5 2",
    }),
    group({ fill: ink.words }, [
      text({ x: 0, y: tenth(bottom + size * 1.1) }, "straight downwind"),
      text({ x: 0, y: tenth(bottom + size * 2.4) }, `one rod in ${rounded(drawing.rod_s)} s`),
    ]),
    drawBoat({ middle: holder, perMetre, ink }),
  ]);
}
