import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { type CalendarDate, dayMonth, dayRange, daysBetween } from "../../model/calendar.ts";
import { DAY_STATES, type DayState, STATE_WORDS } from "../../model/phase.ts";
import { chanceText } from "../../model/units.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "../drawing.ts";
import { LEADING, tenth } from "../geometry.ts";
import { type Band, drawHatching, tallestBoxInBand } from "../hatching.ts";
import type { Ink } from "../ink.ts";
import { drawAsOf, drawMonths, type StripFrame, textWidth } from "./date-axis.ts";
import { drawMarks, placeMarks } from "./marks.ts";

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The lower edge of each state's band for each day, from the top down (ice on top): `edges[state][day]`, 0 to `height`.
 * The last edge is the bottom itself, so the bands fill the whole height on every day.
 */
export function stackedEdges(daily: GuideLake["daily"], height: number): number[][] {
  return DAY_STATES.map((_, state) =>
    daily.map((day) => {
      const all = DAY_STATES.reduce((sum, name) => sum + day[name], 0);
      const above = DAY_STATES.slice(0, state + 1).reduce((sum, name) => sum + day[name], 0);
      return (height * above) / all;
    }),
  );
}

const onTheWay = (a: Point, b: Point, c: Point): boolean =>
  Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) < 0.05 * (c.x - a.x);

/** Leaves out points that lie on the straight line between their neighbours, within a twentieth of a unit. */
export function withoutStraightPoints(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const [i, point] of points.entries()) {
    const before = kept.at(-1);
    const after = points[i + 1];
    if (before === undefined || after === undefined || !onTheWay(before, point, after)) kept.push(point);
  }
  return kept;
}

/** The band of each state, in the order a spring runs: flat for half a day before the first day's middle and after the last's. */
export function bandsOf({ daily, top, bottom, width, perDay }: StripFrame): Band[] {
  const edges = stackedEdges(daily, bottom - top).map((edge) => edge.map((y) => top + y));
  const roof = daily.map(() => top);
  const widened = (edge: readonly number[]): number[] => [edge[0] ?? top, ...edge, edge.at(-1) ?? top];
  const xs = [0, ...daily.map((_, i) => (i + 0.5) * perDay), width];
  return edges.map((lower, i) => ({ xs, upper: widened(edges[i - 1] ?? roof), lower: widened(lower) }));
}

const withStates = (bands: readonly Band[]) =>
  DAY_STATES.flatMap((state, i) => {
    const band = bands[i];
    return band === undefined ? [] : [{ state, band }];
  });

/** From a band's upper edge down to the bottom: the next state is painted over what is too much. */
function areaPath({ xs, upper }: Band, bottom: number): string {
  const line = withoutStraightPoints(xs.map((x, i) => ({ x, y: upper[i] ?? bottom })));
  return `M${line.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join("L")}V${tenth(bottom)}H0Z`;
}

/** The five areas, hatched, and the frame around them. */
export const drawAreas = ({
  frame,
  bands,
}: {
  frame: StripFrame;
  bands: readonly Band[];
}): DrawingContent => {
  const { ink, top, bottom, width } = frame;
  return group({}, [
    withStates(bands).map(({ state, band }) => [
      path({
        d: areaPath(band, bottom),
        fill: ink.states[state].ground,
        stroke: ink.line,
        "stroke-width": 0.7,
      }),
      drawHatching({ state, band, ink }),
    ]),
    path({
      d: `M0 ${tenth(top)}H${width}V${tenth(bottom)}H0Z`,
      fill: "none",
      stroke: ink.line,
      "stroke-width": 0.7,
    }),
  ]);
};

/** How a state's name is best set in its area: on one line or, where that is tight, a word a line. */
function bestSetting(name: string, band: Band, { ink, asOf_x }: StripFrame) {
  const settings = [[name], name.split(" ")].flatMap((lines) => {
    const width = Math.max(...lines.map((line) => textWidth(line, ink))) + ink.textSize * 0.5;
    const height = ink.textSize * LEADING * lines.length;
    const box = tallestBoxInBand(band, width, asOf_x);
    return box === undefined || box.height < height ? [] : [{ lines, width, height, box }];
  });
  return settings.find(({ box, height }) => box.height > height + ink.textSize * 0.5) ?? settings[0];
}

/** A state's name where its area has room for it. */
function drawStateName({ frame, band, state }: { frame: StripFrame; band: Band; state: DayState }) {
  const { ink } = frame;
  const setting = bestSetting(STATE_WORDS[state].name, band, frame);
  if (setting === undefined) return null;
  const { lines, width, height, box } = setting;
  const { ground, words } = ink.states[state];
  const [x, y] = [box.x, box.y - height / 2];
  return group({ "text-anchor": "middle", fill: words }, [
    path({
      d: `M${tenth(x - width / 2)} ${tenth(y)}h${tenth(width)}v${tenth(height)}h${tenth(-width)}Z`,
      fill: ground,
    }),
    lines.map((line, i) => text({ x: tenth(x), y: tenth(y + ink.textSize * (LEADING * i + 0.93)) }, line)),
  ]);
}

/** The states' names, each where there is room. */
const drawStateNames = ({ frame, bands }: { frame: StripFrame; bands: readonly Band[] }): DrawingContent =>
  group({}, [withStates(bands).map(({ state, band }) => drawStateName({ frame, band, state }))]);

interface StripOptions {
  readonly ink: Ink;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  readonly height: number;
  /** First and last day shown; by default the guide's whole window. */
  readonly from?: CalendarDate;
  readonly to?: CalendarDate;
  /** A row of the board: areas and as-of line, no lettering. */
  readonly compact: boolean;
}

/** What the strip shows, in one sentence. */
function stripTitle(
  lake: Pick<GuideLake, "name" | "now">,
  asOf: CalendarDate,
  daily: GuideLake["daily"],
): string {
  const first = daily[0]?.date ?? asOf;
  const last = daily.at(-1)?.date ?? asOf;
  const { state, chance } = lake.now;
  return `${lake.name}: chance of each state by day, ${dayRange(first, last)}. As of ${dayMonth(asOf)}: ${STATE_WORDS[state].name} (${chanceText(chance)}).`;
}

/**
 * One lake's spring as an SVG drawing: the chance of each day state as stacked areas, ice on top.
 * It has no ids, so any number of drawings can stand on one page.
 */
export function seasonStrip(
  lake: Pick<GuideLake, "name" | "now" | "daily" | "marks">,
  guide: Pick<Guide, "window" | "asOf">,
  { ink, width, height, from = guide.window.from, to = guide.window.to, compact }: StripOptions,
): Drawing {
  const daily = lake.daily.filter(({ date }) => date >= from && date <= to);
  const perDay = width / Math.max(1, daily.length);
  const first = daily[0]?.date ?? from;
  const middleOf = (date: CalendarDate): number => (daysBetween(first, date) + 0.5) * perDay;
  const marks = lake.marks
    .filter(({ date }) => daily.some((day) => day.date === date))
    .map((mark) => ({ mark, x: tenth(middleOf(mark.date)) }));
  const placed = placeMarks(width, marks, ink);
  const lane = ink.textSize * 1.4;
  const markRows = placed.length === 0 ? 0 : placed.some(({ word }) => word?.row === 1) ? 2 : 1;
  const marksTop = height - ink.textSize * (0.2 + LEADING * markRows);
  const frame: StripFrame = {
    ink,
    daily,
    asOf_x: daily.some(({ date }) => date === guide.asOf) ? middleOf(guide.asOf) : -1,
    from: first,
    width,
    top: compact ? 0 : lane,
    bottom: compact ? height : marksTop - lane,
    perDay,
  };
  const bands = bandsOf(frame);
  return createDrawing(
    {
      width: width,
      height: height,
      title: stripTitle(lake, guide.asOf, daily),
      stretch: compact,
      ...(compact ? {} : { textSize: ink.textSize }),
    },
    [
      drawAreas({ frame, bands }),
      drawAsOf({ frame, date: guide.asOf, lettered: !compact }),
      compact ? null : drawStateNames({ frame, bands }),
      compact ? null : drawMonths({ frame }),
      compact || markRows === 0 ? null : drawMarks({ placed, ink, y: marksTop + ink.textSize * 0.6 }),
    ],
  );
}
