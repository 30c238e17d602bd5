import type { CalendarDate } from "../model/calendar.ts";
import { dayMonth, daysBetween, weekdayDayMonth } from "../model/calendar.ts";
import type { Lake } from "../model/club.ts";
import { phaseName, STATE_WORDS } from "../model/phase.ts";
import type { Spread } from "../model/shared-schemas.ts";
import { chanceText, depthText, rounded, temperatureText, type UnitSystem } from "../model/units.ts";
import { isUneven } from "../season/doubts.ts";
import type { LakeForecast, RegionForecast } from "../season/forecast.ts";

/** "28 May (24 May to 2 Jun)": the middle day and the days that hold eight chances in ten. */
export const spreadText = ({ p10, p50, p90 }: Spread): string =>
  p10 === p90 ? dayMonth(p50) : `${dayMonth(p50)} (${dayMonth(p10)} to ${dayMonth(p90)})`;

/** "Best weeks (83 %): clear again after turnover, feeding at depth." */
export const nowText = ({ now }: LakeForecast): string =>
  `${STATE_WORDS[now.state].name} (${chanceText(now.chance)}): ${STATE_WORDS[now.state].meaning}.`;

/** What comes next and when. */
export function nextText({ next, now, phases, laterWeeks }: LakeForecast): string {
  const current = phases.find(({ phase }) => phaseName(phase) === STATE_WORDS[now.state].name);
  const ends = current === undefined ? [] : [`${phaseName(current.phase)} until ${spreadText(current.to)}.`];
  if (next !== null) return [...ends, `${phaseName(next.phase)} from ${spreadText(next.from)}.`].join(" ");
  if (now.state === "laterWeeks") return `Its best weeks ended about ${spreadText(laterWeeks)}.`;
  return [...ends, `Later weeks from ${spreadText(laterWeeks)}.`].join(" ");
}

const count = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** "9 days late", "2 days early", "about as usual". */
export function latenessText(days: number): string {
  const whole = Math.round(Math.abs(days));
  return whole === 0 ? "about as usual" : `${count(whole, "day")} ${days > 0 ? "late" : "early"}`;
}

function recordsText({ evidence }: LakeForecast): string {
  const { seasons, firstSeason, lastSeason, usualIceOff } = evidence;
  const usual = `in a middling spring it opens about ${dayMonth(usualIceOff)}`;
  if (seasons === 0) return `No records of its own yet: by its place and height ${usual}.`;
  const years = firstSeason === lastSeason ? `${firstSeason}` : `${firstSeason} to ${lastSeason}`;
  return `From ${count(seasons, "season")} of its own records (${years}), ${usual}.`;
}

function springText({ evidence }: LakeForecast): string {
  const { spring } = evidence;
  return spring === null
    ? "No report tells yet whether this spring is early or late: past years are all there is."
    : `This spring runs ${latenessText(spring.days)}, by reports from ${count(spring.lakes, "lake")}.`;
}

const movedText = (days: number): string =>
  `${rounded(Math.abs(days), 1)} ${Math.abs(days) === 1 ? "day" : "days"} ${days > 0 ? "later" : "earlier"}`;

const wholeDays = (days: number): string => count(Math.round(Math.abs(days)), "day");

/** "moved the best weeks 3 days later": what a reading changed most; nothing where it changed under half a day. */
function effectText({ bestWeeks_d, laterWeeks_d }: LakeForecast["readings"][number]): string {
  const [days, what] =
    Math.abs(bestWeeks_d) >= Math.abs(laterWeeks_d)
      ? [bestWeeks_d, "the best weeks"]
      : [laterWeeks_d, "the later weeks"];
  return Math.abs(days) < 0.5
    ? "moved nothing by half a day"
    : `moved ${what} ${wholeDays(days)} ${days > 0 ? "later" : "earlier"}`;
}

/** "46 °F over 41 °F at 15 ft on Tue 2 Jun: layers show; moved the best weeks 3 days earlier." */
function readingText(reading: LakeForecast["readings"][number], units: UnitSystem): string {
  const { date, surface_C, deep, secchiRatio, looks, phase } = reading;
  const read = [
    surface_C === null
      ? []
      : [
          deep === null
            ? temperatureText(surface_C, units)
            : `${temperatureText(surface_C, units)} over ${temperatureText(deep.water_C, units)} at ${depthText(deep.at_m, units)}`,
        ],
    secchiRatio === null ? [] : [`clarity ${Math.round(100 * secchiRatio)} % of the usual`],
    looks === null ? [] : [`the water looked ${looks}`],
    phase === null ? [] : [`“${phaseName(phase).toLowerCase()}”`],
  ].flat();
  const layers = deep === null ? "" : deep.layers ? "layers show; " : "still mixing; ";
  return `${read.join(", ")} on ${weekdayDayMonth(date)}: ${layers}${effectText(reading)}.`;
}

type Mover = LakeForecast["evidence"]["movedBy"][number];

function moverText({ lake, date, seen, reports, days }: Mover, nameOf: (slug: string) => string): string {
  const moved = `moved its ice-off ${movedText(days)}`;
  if (seen === "no report") return `No report from ${nameOf(lake)} up to ${dayMonth(date)} ${moved}.`;
  const others = reports > 1 ? `, with ${count(reports - 1, "other report")}` : "";
  return `${nameOf(lake)}, “${seen}” on ${dayMonth(date)}${others}, ${moved}.`;
}

/** Less is not worth a sentence, days. */
const LEAST_DAYS = 0.1;

/** Where a look would help this lake, and where it would help the others most. */
function lookText(
  { evidence: { wouldSharpen } }: LakeForecast,
  { mostInformative, openingsOnly }: RegionForecast,
  nameOf: (slug: string) => string,
): string[] {
  const own =
    wouldSharpen === null || wouldSharpen.days < LEAST_DAYS
      ? []
      : [
          `A look at ${nameOf(wouldSharpen.lake)} today, still iced or open, would narrow it most (by about ${rounded(wouldSharpen.days, 1)} days).`,
        ];
  if (mostInformative === null) return own;
  const best = nameOf(mostInformative.lake);
  if (openingsOnly)
    return [
      ...own,
      `This spring’s reports tell of openings only: one look at ${best}, still iced or not, would help most.`,
    ];
  return mostInformative.lake === wouldSharpen?.lake
    ? own
    : [...own, `Of all lakes, a look at ${best} would narrow the others most.`];
}

/** A middle day that the lake's own latest report of ice speaks against. */
function medianText({ iceOff: { p50, status }, marks }: LakeForecast): string[] {
  const iced = marks.findLast(({ seen }) => seen === "ice on");
  if (iced === undefined || status === "observed" || p50 > iced.date) return [];
  return [
    `Its middle day, ${dayMonth(p50)}, is not after its own “ice on” of ${dayMonth(iced.date)}: the other lakes speak for an earlier opening. Look again before you trust either.`,
  ];
}

/** Why the forecast says what it says, a sentence each. */
export function whyText(
  forecast: LakeForecast,
  region: RegionForecast,
  asOf: CalendarDate,
  lakesBySlug: ReadonlyMap<string, Pick<Lake, "name">>,
  units: UnitSystem,
): string[] {
  const nameOf = (slug: string): string => lakesBySlug.get(slug)?.name ?? slug;
  const moved = forecast.evidence.movedBy
    .filter(({ days }) => Math.abs(days) >= LEAST_DAYS)
    .map((mover) => moverText(mover, nameOf));
  const { indicators } = region;
  const outside =
    indicators === null
      ? []
      : [
          `Until the club’s own first opening, ${count(indicators.lakes, "lake")} outside it tell of the season: ${latenessText(indicators.anomaly_d)} there.`,
        ];
  const stale = forecast.marks.at(-1);
  const last =
    stale === undefined
      ? []
      : [
          `Last seen ${weekdayDayMonth(stale.date)}, ${count(daysBetween(stale.date, asOf), "day")} before this guide.`,
        ];
  const read = forecast.readings.map((reading) => readingText(reading, units));
  return [
    recordsText(forecast),
    springText(forecast),
    ...(isUneven(region) ? ["This spring is unusually uneven: spreads are wider."] : []),
    ...outside,
    ...moved,
    ...medianText(forecast),
    ...read,
    ...last,
    ...lookText(forecast, region, nameOf),
  ];
}
