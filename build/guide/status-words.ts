import type { CalendarDate } from "../model/calendar.ts";
import { dayMonth, daysBetween, weekdayDayMonth } from "../model/calendar.ts";
import type { Lake } from "../model/club.ts";
import { phaseName, STATE_WORDS } from "../model/phase.ts";
import type { Spread } from "../model/shared-schemas.ts";
import { chanceText, rounded } from "../model/units.ts";
import type { LakeForecast } from "../season/forecast.ts";

/** "28 May (24 May to 2 Jun)": the middle day and the days that hold eight chances in ten. */
export const spreadText = ({ p10, p50, p90 }: Spread): string =>
  p10 === p90 ? dayMonth(p50) : `${dayMonth(p50)} (${dayMonth(p10)} to ${dayMonth(p90)})`;

/** "Best weeks (83 %): clear again after turnover, feeding at depth." */
export const nowText = ({ now }: LakeForecast): string =>
  `${STATE_WORDS[now.state].name} (${chanceText(now.chance)}): ${STATE_WORDS[now.state].meaning}.`;

/** What comes next and when. */
export function nextText({ next, now, phases }: LakeForecast): string {
  const current = phases.find(({ phase }) => phaseName(phase) === STATE_WORDS[now.state].name);
  const ends = current === undefined ? [] : [`${phaseName(current.phase)} until ${spreadText(current.to)}.`];
  if (next !== null) return [...ends, `${phaseName(next.phase)} from ${spreadText(next.from)}.`].join(" ");
  return ends.length > 0 ? ends.join(" ") : "Its spring weeks are over.";
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

/** Why the forecast says what it says, a sentence each. */
export function whyText(
  forecast: LakeForecast,
  asOf: CalendarDate,
  lakesBySlug: ReadonlyMap<string, Pick<Lake, "name">>,
): string[] {
  const nameOf = (slug: string): string => lakesBySlug.get(slug)?.name ?? slug;
  const { movedBy, wouldSharpen } = forecast.evidence;
  const moved = movedBy
    .filter(({ days }) => Math.abs(days) >= 0.1)
    .map(
      ({ lake, date, seen, days }) =>
        `${nameOf(lake)}, “${seen}” on ${dayMonth(date)}, moved its ice-off ${movedText(days)}.`,
    );
  const sharpen =
    wouldSharpen === null || wouldSharpen.days < 0.1
      ? []
      : [
          `A report from ${nameOf(wouldSharpen.lake)} would sharpen it most (about ${rounded(wouldSharpen.days, 1)} days narrower).`,
        ];
  const stale = forecast.marks.at(-1);
  const last =
    stale === undefined
      ? []
      : [
          `Last seen ${weekdayDayMonth(stale.date)}, ${count(daysBetween(stale.date, asOf), "day")} before this guide.`,
        ];
  return [recordsText(forecast), springText(forecast), ...moved, ...last, ...sharpen];
}
