import type { JSX } from "preact";
import { renderToString } from "preact-render-to-string";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import {
  type CalendarDate,
  dayMonth,
  dayOfMonth,
  dayRange,
  daysBetween,
  monthOf,
} from "../model/calendar.ts";
import { DAY_STATES, type DayState, STATE_WORDS } from "../model/phase.ts";
import { chanceText } from "../model/units.ts";

import { type Band, roomiestBox } from "./band.ts";
import { Hatching } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { roughWidth } from "./lettering.ts";
import { MarkShape, seenText } from "./mark-shape.tsx";
import { stackedEdges, withoutStraightPoints } from "./stacked.ts";

export interface StripOptions {
  readonly ink: Ink;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  readonly height: number;
  /** First and last day shown; the guide's whole window unless said. */
  readonly from?: CalendarDate;
  readonly to?: CalendarDate;
  /** A row of the board: areas and as-of line, no lettering. */
  readonly compact: boolean;
}

/** Where things stand in one strip. */
interface Frame {
  readonly ink: Ink;
  readonly daily: GuideLake["daily"];
  /** Middle of the day the guide speaks from; below 0 when that day is not shown. */
  readonly asOf_x: number;
  readonly from: CalendarDate;
  readonly width: number;
  /** Top and bottom of the areas. */
  readonly top: number;
  readonly bottom: number;
  readonly perDay: number;
}

/** Distance of lines of lettering as a multiple of its size. */
const LEADING = 1.25;
const lettering = (text: string, ink: Ink): number => roughWidth(text, ink.textSize);

const tenth = (value: number): number => Math.round(value * 10) / 10;
const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

const dayLeft = ({ from, perDay }: Frame, date: CalendarDate): number => daysBetween(from, date) * perDay;
const dayMiddle = (frame: Frame, date: CalendarDate): number => dayLeft(frame, date) + frame.perDay / 2;

/** The area of one state: flat for half a day before the first day's middle and after the last's. */
function bandOf(
  edges: readonly number[][],
  state: number,
  { daily, top, bottom, width, perDay }: Frame,
): Band {
  const middles = daily.map((_, i) => (i + 0.5) * perDay);
  const along = (edge: readonly number[] | undefined, otherwise: number): number[] => {
    const ys = daily.map((_, i) => (edge === undefined ? otherwise : top + (edge[i] ?? 0)));
    return [ys[0] ?? otherwise, ...ys, ys.at(-1) ?? otherwise];
  };
  return {
    xs: [0, ...middles, width],
    upper: along(edges[state - 1], top),
    lower: along(edges[state], bottom),
  };
}

/** From a band's upper edge down to the bottom: the next state is painted over what is too much. */
function areaPath({ xs, upper }: Band, bottom: number): string {
  const line = withoutStraightPoints(xs.map((x, i) => ({ x, y: upper[i] ?? bottom })));
  return `M${line.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join("L")}V${tenth(bottom)}H0Z`;
}

/** The five areas, hatched, and the frame around them. */
const Areas = ({ frame, edges }: { frame: Frame; edges: readonly number[][] }): JSX.Element => {
  const { ink, top, bottom, width } = frame;
  return (
    <g>
      {DAY_STATES.map((state, i) => {
        const band = bandOf(edges, i, frame);
        return (
          <>
            <path
              d={areaPath(band, bottom)}
              fill={ink.states[state].ground}
              stroke={ink.line}
              stroke-width={0.7}
            />
            <Hatching state={state} band={band} ink={ink} />
          </>
        );
      })}
      <path
        d={`M0 ${tenth(top)}H${width}V${tenth(bottom)}H0Z`}
        fill="none"
        stroke={ink.line}
        stroke-width={0.7}
      />
    </g>
  );
};

/** How a state's name is best set in its area: on one line or, where that is tight, a word a line. */
function bestSetting(name: string, band: Band, { ink, asOf_x }: Frame) {
  const settings = [[name], name.split(" ")].flatMap((lines) => {
    const width = Math.max(...lines.map((line) => lettering(line, ink))) + ink.textSize * 0.5;
    const height = ink.textSize * LEADING * lines.length;
    const box = roomiestBox(band, width, asOf_x);
    return box === undefined || box.height < height ? [] : [{ lines, width, height, box }];
  });
  return settings.find(({ box, height }) => box.height > height + ink.textSize * 0.5) ?? settings[0];
}

/** A state's name where its area has room for it. */
function StateName({ frame, edges, state }: { frame: Frame; edges: readonly number[][]; state: DayState }) {
  const { ink } = frame;
  const setting = bestSetting(
    STATE_WORDS[state].name,
    bandOf(edges, DAY_STATES.indexOf(state), frame),
    frame,
  );
  if (setting === undefined) return null;
  const { lines, width, height, box } = setting;
  const { ground, words } = ink.states[state];
  const [x, y] = [box.x, box.y - height / 2];
  return (
    <g text-anchor="middle" fill={words}>
      <path
        d={`M${tenth(x - width / 2)} ${tenth(y)}h${tenth(width)}v${tenth(height)}h${tenth(-width)}Z`}
        fill={ground}
      />
      {lines.map((line, i) => (
        <text x={tenth(x)} y={tenth(y + ink.textSize * (LEADING * i + 0.93))}>
          {line}
        </text>
      ))}
    </g>
  );
}

/** Month names at their first day; a short tick and number at the 10th and 20th where there is room. */
function Months({ frame }: { frame: Frame }): JSX.Element {
  const { ink, daily, bottom, width } = frame;
  const y = tenth(bottom + ink.textSize * 1.02);
  const numbers = frame.perDay * 10 > lettering("Mmm", ink) * 1.5;
  const ticks = daily.flatMap(({ date }) => {
    const day = dayOfMonth(date);
    const x = tenth(day === 1 ? dayLeft(frame, date) : dayMiddle(frame, date));
    if (day === 1) return [{ x, length: ink.textSize * 0.5, text: monthOf(date) }];
    return day === 10 || day === 20
      ? [{ x, length: ink.textSize * 0.25, text: numbers ? `${day}` : "" }]
      : [];
  });
  return (
    <g stroke={ink.line} stroke-width={1}>
      {ticks.map(({ x, length, text }) => {
        const half = lettering(text, ink) / 2;
        return (
          <g>
            <path d={`M${x} ${tenth(bottom)}v${tenth(length)}`} />
            {text === "" ? null : (
              <text
                x={tenth(clamp(x, half, width - half))}
                y={tenth(y + ink.textSize * 0.25)}
                text-anchor="middle"
                fill={ink.words}
                stroke="none"
              >
                {text}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** The day the guide speaks from. */
function AsOf({ frame, date, lettered }: { frame: Frame; date: CalendarDate; lettered: boolean }) {
  const { ink, top, bottom, width, asOf_x } = frame;
  if (asOf_x < 0) return null;
  const x = tenth(asOf_x);
  const text = `as of ${dayMonth(date)}`;
  const half = lettering(text, ink) / 2;
  const tail = lettered ? ink.textSize * 0.25 : 0;
  return (
    <g>
      <path d={`M${x} ${tenth(top)}V${tenth(bottom)}`} stroke={ink.paper} stroke-width={5} />
      <path d={`M${x} ${tenth(top - tail)}V${tenth(bottom)}`} stroke={ink.accent} stroke-width={2} />
      {lettered ? (
        <text
          x={tenth(clamp(x, half, width - half))}
          y={tenth(top - ink.textSize * 0.45)}
          text-anchor="middle"
          font-weight="bold"
          fill={ink.words}
        >
          {text}
        </text>
      ) : null}
    </g>
  );
}

interface PlacedMark {
  readonly mark: GuideLake["marks"][number];
  readonly x: number;
  /** Its word and where it stands; the latest mark of its kind speaks for the earlier ones. */
  readonly word?: WordPlace & { readonly text: string };
}

interface WordPlace {
  readonly anchor: "start" | "end" | "middle";
  readonly x: number;
  readonly row: 0 | 1;
}

type Stretch = readonly [from: number, to: number];

/** Finds room for the word of each kind of mark: after its shape, else well clear before it, else below it. */
function placeMarks(width: number, marks: readonly PlacedMark[], ink: Ink): PlacedMark[] {
  const r = markRadius(ink);
  const shapes: Stretch[] = marks.map(({ x }) => [x - r * 1.6, x + r * 1.6]);
  const taken: readonly [Stretch[], Stretch[]] = [shapes, []];
  const said = new Set<string>();
  return marks.toReversed().map((placed) => {
    const text = `${seenText(placed.mark.seen)}${placed.mark.doubted ? "?" : ""}`;
    if (said.has(text)) return placed;
    said.add(text);
    const length = lettering(text, ink);
    const [after, before] = [placed.x + r * 2, placed.x - r * 2];
    const clear = before < length ? -1 : Math.max(0, before - length - ink.textSize);
    const below = clamp(placed.x, length / 2, width - length / 2);
    const places: readonly (WordPlace & { readonly room: Stretch })[] = [
      { x: after, row: 0, anchor: "start", room: [after, after + length] },
      { x: before, row: 0, anchor: "end", room: [clear, before] },
      { x: below, row: 1, anchor: "middle", room: [below - length / 2, below + length / 2] },
    ];
    const free = places.find(
      ({ row, room: [from, to] }) =>
        from >= 0 && to <= width && taken[row].every(([a, b]) => to <= a || from >= b),
    );
    if (free === undefined) return placed;
    taken[free.row].push([free.room[0] - r, free.room[1] + r]);
    return { ...placed, word: { text, x: free.x, row: free.row, anchor: free.anchor } };
  });
}

/** Half the width of a mark's shape. */
const markRadius = (ink: Ink): number => tenth(ink.textSize * 0.3);

/** What was seen, in a lane of its own. */
function Marks({ placed, ink, y }: { placed: readonly PlacedMark[]; ink: Ink; y: number }): JSX.Element {
  return (
    <g>
      {placed.map(({ mark, x, word }) => (
        <g>
          <title>{`${dayMonth(mark.date)}: seen, ${seenText(mark.seen)}${mark.doubted ? " (doubted)" : ""}`}</title>
          <MarkShape
            seen={mark.seen}
            doubted={mark.doubted}
            x={x}
            y={tenth(y)}
            r={markRadius(ink)}
            ink={ink}
          />
          {word === undefined ? null : (
            <text
              x={tenth(word.x)}
              y={tenth(y + ink.textSize * (0.34 + LEADING * word.row))}
              text-anchor={word.anchor}
              fill={ink.words}
            >
              {word.text}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

/** What the strip shows, in one sentence. */
export function stripTitle(lake: GuideLake, asOf: CalendarDate, daily: GuideLake["daily"]): string {
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
  lake: GuideLake,
  guide: Pick<Guide, "window" | "asOf">,
  { ink, width, height, from = guide.window.from, to = guide.window.to, compact }: StripOptions,
): string {
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
  const frame: Frame = {
    ink,
    daily,
    asOf_x: daily.some(({ date }) => date === guide.asOf) ? middleOf(guide.asOf) : -1,
    from: first,
    width,
    top: compact ? 0 : lane,
    bottom: compact ? height : marksTop - lane,
    perDay,
  };
  const { top, bottom } = frame;
  const edges = stackedEdges(daily, bottom - top);
  return renderToString(
    <svg
      xmlns="http://www.w3.org/2000/svg"
      role="img"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      {...(compact ? { preserveAspectRatio: "none" } : { "font-size": ink.textSize })}
    >
      <title>{stripTitle(lake, guide.asOf, daily)}</title>
      <Areas frame={frame} edges={edges} />
      {compact ? null : DAY_STATES.map((state) => <StateName frame={frame} edges={edges} state={state} />)}
      <AsOf frame={frame} date={guide.asOf} lettered={!compact} />
      {compact ? null : <Months frame={frame} />}
      {compact || markRows === 0 ? null : (
        <Marks placed={placed} ink={ink} y={marksTop + ink.textSize * 0.6} />
      )}
    </svg>,
  );
}
