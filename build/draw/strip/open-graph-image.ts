import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { weekdayDayMonth } from "../../model/calendar.ts";
import { STATE_WORDS } from "../../model/phase.ts";
import { chanceText } from "../../model/units.ts";
import {
  createDrawing,
  type Drawing,
  type DrawingContent,
  group,
  path,
  placedDrawing,
  text,
} from "../drawing.ts";
import { estimateTextWidth, tenth } from "../geometry.ts";
import { type Ink, paperInk } from "../ink.ts";
import { springDays } from "./date-axis.ts";
import { seasonStrip } from "./season-strip.ts";

/** Pixels; the shape in which programs show a link, about 1.91 to 1. */
export const OPEN_GRAPH_IMAGE = { width: 1200, height: 630 };
const MARGIN = 60;
const COLUMN = OPEN_GRAPH_IMAGE.width - 2 * MARGIN;
/** Shown small: everything is large. */
const INK: Ink = { ...paperInk, textSize: 28 };
/** Lakes that the board's picture has room for. */
const ROWS = 5;

/** The largest type, up to `size`, in which a line fits the picture. */
const fitting = (text: string, size: number, width = COLUMN): number =>
  Math.min(size, (size * width) / estimateTextWidth(text, size));

const drawLine = (y: number, size: number, words: string, isBold = false): DrawingContent =>
  text(
    {
      x: MARGIN,
      y,
      "font-size": tenth(fitting(words, size)),
      ...(isBold ? { "font-weight": "bold" } : {}),
    },
    words,
  );

const frame = (margin: number): string => {
  const { width, height } = OPEN_GRAPH_IMAGE;
  return `M${margin} ${margin}H${width - margin}V${height - margin}H${margin}Z`;
};

/** On paper with a border. It has no title: what becomes of it has no words but those of the link it stands beside. */
const createImage = (content: DrawingContent): Drawing =>
  createDrawing({ ...OPEN_GRAPH_IMAGE, title: null }, [
    path({ d: frame(0), fill: INK.paper }),
    path({ d: frame(20), fill: "none", stroke: INK.line, "stroke-width": 3 }),
    group({ fill: INK.words }, content),
  ]);

const asOfText = ({ asOf, club }: GuideFrame): string => `${club.name}, as of ${weekdayDayMonth(asOf)}`;

/** What a link to a lake's page shows: its name, what it is now and what comes next, and its spring. */
export const lakeOpenGraphImage = (lake: GuideLake, guide: GuideFrame): Drawing =>
  createImage([
    drawLine(120, 72, lake.name, true),
    drawLine(190, 44, `${STATE_WORDS[lake.now.state].name} ${chanceText(lake.now.chance)}`),
    drawLine(245, 34, lake.status.next),
    placedDrawing(
      MARGIN,
      270,
      seasonStrip(lake, guide, {
        ink: INK,
        width: COLUMN,
        height: 260,
        compact: false,
        ...springDays(lake, guide),
      }),
    ),
    drawLine(580, 30, asOfText(guide)),
  ]);

/** The lakes at the top of the board, as many as its picture has room for. */
export const boardPictureLakes = ({ board, lakes }: Pick<Guide, "board" | "lakes">): GuideLake[] =>
  board.groups
    .flatMap((group) => group.lakes)
    .slice(0, ROWS)
    .flatMap(({ slug }) => lakes.find((lake) => lake.slug === slug) ?? []);

/** What a link to the board shows: the lakes at its top, with their springs. */
export const boardOpenGraphImage = (lakes: readonly GuideLake[], guide: GuideFrame): Drawing =>
  createImage([
    drawLine(120, 72, `Season ${guide.season}`, true),
    lakes.map((lake, i) => [
      text({ x: MARGIN, y: 205 + 72 * i, "font-size": tenth(fitting(lake.name, 36, 400)) }, lake.name),
      placedDrawing(
        MARGIN + 420,
        170 + 72 * i,
        seasonStrip(lake, guide, { ink: INK, width: COLUMN - 420, height: 48, compact: true }),
      ),
    ]),
    drawLine(580, 30, asOfText(guide)),
  ]);
