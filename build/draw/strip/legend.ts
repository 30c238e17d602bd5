import type { GuideLake } from "../../guide/guide-schema.ts";
import { DAY_STATES, type DayState, PHASES, STATE_WORDS } from "../../model/phase.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "../drawing.ts";
import { estimateTextWidth, tenth } from "../geometry.ts";
import { drawHatching } from "../hatching.ts";
import type { Ink } from "../ink.ts";
import { drawMarkShape, seenText } from "./marks.ts";

interface LegendOptions {
  readonly ink: Ink;
  /** In the drawing's units; items run on to a new line where it is full. */
  readonly width: number;
  /** The shapes of the marks as well as the states. */
  readonly marks: boolean;
}

interface Item {
  readonly text: string;
  readonly swatch: (x: number, y: number) => DrawingContent;
}

const SEEN: readonly GuideLake["marks"][number]["seen"][] = ["ice on", "ice part", "ice off", ...PHASES];

interface SwatchProps {
  readonly state: DayState;
  readonly ink: Ink;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const drawSwatch = ({ state, ink, left, right, top, bottom }: SwatchProps): DrawingContent =>
  group({}, [
    path({
      d: `M${left} ${top}H${right}V${bottom}H${left}Z`,
      fill: ink.states[state].ground,
      stroke: ink.line,
      "stroke-width": 0.7,
    }),
    drawHatching({ state, band: { xs: [left, right], upper: [top, top], lower: [bottom, bottom] }, ink }),
  ]);

/** One state's hatching alone, to stand beside its name; it has no words of its own. */
export const stateSwatch = (state: DayState, ink: Ink, width: number, height: number): Drawing =>
  createDrawing(
    { width, height, title: null },
    drawSwatch({ state, ink, left: 0.4, right: width - 0.4, top: 0.4, bottom: height - 0.4 }),
  );

/** Sets items side by side, a new line where the width is full. */
function placeItems(items: readonly Item[], ink: Ink, width: number, swatchWidth: number) {
  const leading = ink.textSize * 1.6;
  let x = 0;
  let line = 0;
  const placed = items.map((item) => {
    const itemWidth = swatchWidth + ink.textSize * 0.4 + estimateTextWidth(item.text, ink.textSize);
    if (x > 0 && x + itemWidth > width) {
      x = 0;
      line += 1;
    }
    const place = { ...item, x, y: line * leading };
    x += itemWidth + ink.textSize * 0.7;
    return place;
  });
  return { placed, height: (line + 1) * leading };
}

/** The key to every strip of a page: what each hatching and each mark's shape means. */
export function stripLegend({ ink, width, marks }: LegendOptions): Drawing {
  const size = ink.textSize;
  const swatchWidth = size * 1.8;
  const states = DAY_STATES.map((state) => ({
    text: STATE_WORDS[state].name,
    swatch: (x: number, y: number) =>
      drawSwatch({
        state,
        ink,
        left: tenth(x + 0.5),
        right: tenth(x + swatchWidth),
        top: tenth(y + size * 0.2),
        bottom: tenth(y + size * 1.4),
      }),
  }));
  const shapes = SEEN.map((seen) => ({
    text: `seen: ${seenText(seen)}`,
    swatch: (x: number, y: number) =>
      drawMarkShape({
        seen,
        doubted: false,
        x: tenth(x + swatchWidth / 2),
        y: tenth(y + size * 0.8),
        r: tenth(size * 0.3),
        ink,
      }),
  }));
  const { placed, height } = placeItems([...states, ...(marks ? shapes : [])], ink, width, swatchWidth);
  return createDrawing(
    {
      width: width,
      height: tenth(height),
      title: `Key to the season strip: ${placed.map(({ text }) => text).join(", ")}.`,
      textSize: size,
    },
    placed.map(({ x, y, text: label, swatch }) =>
      group({}, [
        swatch(x, y),
        text({ x: tenth(x + swatchWidth + size * 0.4), y: tenth(y + size * 1.12), fill: ink.words }, label),
      ]),
    ),
  );
}
