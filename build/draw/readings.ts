import type { GuideLake } from "../guide/guide-schema.ts";
import {
  type CalendarDate,
  dayMonth,
  dayRange,
  daysBetween,
  hemisphereOf,
  seasonOf,
} from "../model/calendar.ts";
import { depthText, temperatureText, type UnitSystem } from "../model/units.ts";
import { circle, createDrawing, type Drawing, group, path, text } from "./drawing.ts";
import {
  type Box,
  boxAround,
  estimateTextWidth,
  isWithin,
  LEADING,
  linePath,
  overlaps,
  type Point,
  tenth,
} from "./geometry.ts";
import type { Ink } from "./ink.ts";

interface ReadingsOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** Whose readings. */
  readonly season: number;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
}

interface Reading {
  readonly date: CalendarDate;
  readonly value: number;
}

interface Series {
  readonly name: string;
  readonly readings: readonly Reading[];
  readonly text: (value: number) => string;
}

/** Rows of lettering the curve of one series has to run in. */
const CURVE_ROWS = 4;
/** With the series' name above it. */
const SERIES_ROWS = CURVE_ROWS + 1.9;

type Report = GuideLake["reports"][number];

const readingsOf = (reports: readonly Report[], value: (report: Report) => number | null): Reading[] =>
  reports
    .flatMap((report) => {
      const read = value(report);
      return read === null ? [] : [{ date: report.date, value: read }];
    })
    .toSorted((a, b) => daysBetween(b.date, a.date));

/** What was measured at least twice this season. */
function seriesOf(lake: GuideLake, units: UnitSystem, season: number): Series[] {
  const hemisphere = hemisphereOf(lake.position.lat);
  const reports = lake.reports.filter(({ date }) => seasonOf(date, hemisphere) === season);
  return [
    {
      name: "Water",
      readings: readingsOf(reports, ({ water_C }) => water_C),
      text: (value: number) => temperatureText(value, units),
    },
    {
      name: "Clear to",
      readings: readingsOf(reports, ({ clarity_m }) => clarity_m),
      text: (value: number) => depthText(value, units),
    },
  ].filter(({ readings }) => readings.length > 1);
}

interface Plotted {
  readonly text: string;
  readonly at: Point;
  /** Where its number stands, if it has room. */
  readonly word: Point | undefined;
}

/** Readings by date and value, each with its number above or below it where that is free; the first and last first. */
function plot(series: Series, room: Box, toX: (date: CalendarDate) => number, size: number): Plotted[] {
  const values = series.readings.map(({ value }) => value);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const span = high - low || 1;
  const spots = series.readings.map(({ date, value }) => ({
    text: series.text(value),
    at: {
      x: toX(date),
      y: room.bottom - size * (1.3 + ((value - low) / span) * (CURVE_ROWS - 2.6)),
    },
  }));
  const taken = spots.map(({ at }) => boxAround(at, size * 0.5, size * 0.5));
  const order = [0, spots.length - 1, ...spots.keys()];
  const words = new Map<number, Point>();
  for (const i of order) {
    const spot = spots[i];
    if (spot === undefined || words.has(i)) continue;
    const width = estimateTextWidth(spot.text, size) + size * 0.1;
    const x = Math.max(room.left + width / 2, Math.min(room.right - width / 2, spot.at.x));
    const places = [-0.85, 0.85].map((down) => ({ x, y: spot.at.y + down * size }));
    const free = places.find((place) => {
      const box = boxAround(place, width, size);
      return isWithin(box, room) && !taken.some((other) => overlaps(other, box));
    });
    if (free === undefined) continue;
    words.set(i, free);
    taken.push(boxAround(free, width, size));
  }
  return spots.map((spot, i) => ({ ...spot, word: words.get(i) }));
}

/** In one sentence, with the first and the last reading. */
function readingsTitle(all: readonly Series[], season: number): string {
  const sentences = all.map(({ name, readings, text }) => {
    const [first, last] = [readings[0], readings.at(-1)];
    return first === undefined || last === undefined
      ? name
      : `${name} ${text(first.value)} on ${dayMonth(first.date)}, ${text(last.value)} on ${dayMonth(last.date)}`;
  });
  return `Readings of ${season}. ${sentences.join(". ")}.`;
}

/** The season's water temperature and clarity over its days, one above the other; `null` with fewer than two readings of each. */
export function readings(lake: GuideLake, { ink, units, season, width }: ReadingsOptions): Drawing | null {
  const all = seriesOf(lake, units, season);
  const dates = all.flatMap((series) => series.readings.map(({ date }) => date)).toSorted();
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return null;
  const size = ink.textSize;
  const edge = size * 0.6;
  const days = Math.max(1, daysBetween(first, last));
  const toX = (date: CalendarDate): number => edge + (daysBetween(first, date) / days) * (width - 2 * edge);
  const bottom = size * SERIES_ROWS * all.length;
  return createDrawing(
    {
      width,
      height: tenth(bottom + size * LEADING),
      title: readingsTitle(all, season),
      textSize: size,
    },
    group({ fill: ink.words }, [
      all.map((series, i) => {
        const top = size * SERIES_ROWS * i;
        const room = { left: 0, right: width, top: top + size * 1.6, bottom: top + size * SERIES_ROWS };
        const plotted = plot(series, room, toX, size);
        return [
          text({ x: 0, y: tenth(top + size) }, series.name),
          path({ d: `M0 ${tenth(room.bottom)}H${width}`, stroke: ink.line, "stroke-width": 0.7 }),
          path({
            d: linePath(plotted.map(({ at }) => at)),
            fill: "none",
            stroke: ink.line,
            "stroke-width": 1,
          }),
          plotted.map(({ at }) => circle({ cx: tenth(at.x), cy: tenth(at.y), r: tenth(size * 0.2) })),
          plotted.map(({ text: reading, word }) =>
            word === undefined
              ? null
              : text({ x: tenth(word.x), y: tenth(word.y + size * 0.28), "text-anchor": "middle" }, reading),
          ),
        ];
      }),
      text({ x: 0, y: tenth(bottom + size) }, dayRange(first, last)),
    ]),
  );
}
