import { addDays, type CalendarDate, daysBetween, daysFromTo } from "../model/calendar.ts";
import { chanceOf, type DayState, GOOD_STATES, likeliestState } from "../model/phase.ts";
import { isOpenOn } from "../season/choose-pair.ts";
import type { Guide, GuideLake } from "./guide-schema.ts";
import { lakeAccess } from "./when.ts";
import type { Occasion } from "./when-schema.ts";

/** Days on which people can go: a weekend, or a holiday in its place. */
export type Outdoors = Pick<Occasion, "name" | "from" | "to">;

/** What a lake is on some days; null where its road is shut on all of them, or the forecast does not cover them. */
export interface OnDays {
  /** Likeliest on the first of the days that the lake can be reached. */
  readonly state: DayState;
  /** Mean chance that it is good; a day before its road opens counts as none. */
  readonly good: number;
}

/** All that the chart draws of a lake. */
export type ChartLake = Pick<GuideLake, "slug" | "name" | "daily" | "access" | "phases" | "iceOff">;

export interface ChartRow {
  readonly lake: ChartLake;
  /** First day of an open road within the chart; null where it is open all along. */
  readonly opens: CalendarDate | null;
  /** One for each of the chart's columns. */
  readonly on: readonly (OnDays | null)[];
}

/** Every lake's spring, one under the other. */
export interface SeasonChart {
  readonly from: CalendarDate;
  readonly to: CalendarDate;
  readonly columns: readonly Outdoors[];
  readonly rows: readonly ChartRow[];
}

const LIKELY = 0.5;
/** Days drawn before the as-of day, after the last likely good one, and at the least after the as-of day. */
const SHOWN_DAYS = { before: 7, after: 7, least: 28 };

const earlier = (a: CalendarDate, b: CalendarDate): CalendarDate => (a < b ? a : b);
const later = (a: CalendarDate, b: CalendarDate): CalendarDate => (a > b ? a : b);

const goodAndOpen = (lake: ChartLake, row: GuideLake["daily"][number]): number =>
  isOpenOn(lakeAccess(lake), row.date) ? Math.min(1, chanceOf(row, GOOD_STATES)) : 0;

/** What a lake is on the days from one to another, both included. */
export function onDays(lake: ChartLake, from: CalendarDate, to: CalendarDate): OnDays | null {
  const rows = lake.daily.filter(({ date }) => date >= from && date <= to);
  const first = rows.find(({ date }) => isOpenOn(lakeAccess(lake), date));
  if (first === undefined) return null;
  return {
    state: likeliestState(first),
    good: rows.reduce((sum, row) => sum + goodAndOpen(lake, row), 0) / rows.length,
  };
}

/** The last day up to which a lake stays likely good from a day on; null where it is not likely good then. */
export function goodUntil(lake: ChartLake, from: CalendarDate): CalendarDate | null {
  const ahead = lake.daily.filter(({ date }) => date >= from);
  const end = ahead.findIndex((row) => goodAndOpen(lake, row) < LIKELY);
  return (end < 0 ? ahead.at(-1) : ahead[end - 1])?.date ?? null;
}

/** Days, counted from a fixed one, to the middle of a lake's best weeks; without them, to its ice-off. */
function middle_d({ phases, iceOff }: ChartLake, origin: CalendarDate): number {
  const best = phases.find(({ phase }) => phase === "post-turnover");
  return best === undefined
    ? daysBetween(origin, iceOff.p50)
    : (daysBetween(origin, best.from.p50) + daysBetween(origin, best.to.p50)) / 2;
}

/** Weekends and holidays in order; a weekend that a holiday holds gives way to it. */
export const outdoorDays = (occasions: readonly Outdoors[]): Outdoors[] =>
  occasions.filter(
    (one) =>
      one.name !== null ||
      !occasions.some(({ name, from, to }) => name !== null && from <= one.from && to >= one.to),
  );

/** Days from the as-of day to a week after the last on which some lake is likely good, within the forecast. */
function chartSpan(lakes: readonly ChartLake[], { asOf, window }: Pick<Guide, "asOf" | "window">) {
  const ends = lakes.map(
    (lake) => lake.daily.findLast((row) => goodAndOpen(lake, row) >= LIKELY)?.date ?? asOf,
  );
  const last = ends.reduce(later, addDays(asOf, SHOWN_DAYS.least));
  const to = earlier(window.to, addDays(last, SHOWN_DAYS.after));
  return { from: earlier(to, later(window.from, addDays(asOf, -SHOWN_DAYS.before))), to };
}

/** The chart of all lakes, ordered by the middle of their best weeks, and what each is on the days to come. */
export function seasonChart(
  lakes: readonly ChartLake[],
  occasions: readonly Outdoors[],
  guide: Pick<Guide, "asOf" | "window">,
): SeasonChart {
  const { from, to } = chartSpan(lakes, guide);
  const columns = outdoorDays(occasions).filter((days) => days.to <= to);
  const rows = lakes
    .toSorted((a, b) => middle_d(a, guide.asOf) - middle_d(b, guide.asOf) || (a.name < b.name ? -1 : 1))
    .map((lake) => {
      const { opens } = lakeAccess(lake);
      return {
        lake,
        opens: opens !== null && opens > from && opens > guide.asOf ? opens : null,
        on: columns.map((days) => onDays(lake, days.from, days.to)),
      };
    });
  return { from, to, columns, rows };
}

/** How many days the chart shows. */
export const chartDays = ({ from, to }: Pick<SeasonChart, "from" | "to">): CalendarDate[] =>
  daysFromTo(from, to);

const WATER_WORDS = new Set(["Lake", "Lakes", "Pond", "Ponds", "Reservoir", "Tarn", "Loch", "Lough", "Mere"]);

/** Names as a list of lakes needs them: without "Lake" at the end, unless two would then be the same. */
export function shortNames(lakes: readonly Pick<GuideLake, "slug" | "name">[]): ReadonlyMap<string, string> {
  const shortened = lakes.map(({ name }) => {
    const words = name.split(" ");
    return words.length > 1 && WATER_WORDS.has(words.at(-1) ?? "") ? words.slice(0, -1).join(" ") : name;
  });
  return new Map(
    lakes.map(({ slug, name }, i) => {
      const short = shortened[i] ?? name;
      return [slug, shortened.filter((other) => other === short).length > 1 ? name : short];
    }),
  );
}
