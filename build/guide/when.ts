import {
  addDays,
  type CalendarDate,
  daysBetween,
  daysFromTo,
  mondayOf,
  weekdayDayMonth,
  weekendFrom,
} from "../model/calendar.ts";
import type { Club } from "../model/club.ts";
import { GOOD_STATES } from "../model/phase.ts";
import { choosePair, isOpenOn, type LakeInReach, type LakePair, POOL } from "../season/choose-pair.ts";
import type { SeasonForecast } from "../season/season.ts";
import type { GuideLake } from "./guide-schema.ts";
import type { LeftOut, Occasion, Outing, When } from "./when-schema.ts";

/** A lake as far as it matters for choosing. */
export const lakeAccess = ({ slug, access }: Pick<GuideLake, "slug" | "access">): LakeInReach => ({
  slug,
  opens: access?.opens ?? null,
});

/** A pair of lakes with their names. */
export function outingOf(
  pair: LakePair | null,
  lakes: ReadonlyMap<string, Pick<GuideLake, "name">>,
): Outing | null {
  if (pair === null) return null;
  const named = (single: LakePair["pick"]) => ({
    ...single,
    name: lakes.get(single.slug)?.name ?? single.slug,
  });
  return {
    ...named(pair.pick),
    fallback: pair.fallback === null ? null : named(pair.fallback),
    either: pair.either,
  };
}

/** Why a lake does not count on some or all of the days; undefined when its road is open. */
export function roadClosedReason(lake: LakeInReach, days: readonly CalendarDate[]): string | undefined {
  const { opens } = lake;
  if (opens === null || days.every((date) => isOpenOn(lake, date))) return undefined;
  const day = weekdayDayMonth(opens);
  return days.some((date) => isOpenOn(lake, date))
    ? `its road opens on ${day}; the days before do not count`
    : `its road opens on ${day}`;
}

interface Days {
  readonly name: string | null;
  readonly from: CalendarDate;
  readonly to: CalendarDate;
}

const WEEK_DAYS = 7;

/** Weekends and holidays from the as-of date to the end of the window; a day already past is left off. */
function occasionDays({ asOf, holidays }: Pick<Club, "asOf" | "holidays">, last: CalendarDate): Days[] {
  const weekends: Days[] = [];
  for (let days = weekendFrom(asOf); ; days = weekendFrom(addDays(days.at(-1) ?? asOf, 1))) {
    const [from, to] = [days[0], days.at(-1)];
    if (from === undefined || to === undefined || to > last) break;
    weekends.push({ name: null, from, to });
  }
  const named = holidays
    .filter(({ from, to }) => to >= asOf && from <= last)
    .map(({ name, from, to }) => ({ name, from: from < asOf ? asOf : from, to: to > last ? last : to }));
  return [...weekends, ...named].sort((a, b) => daysBetween(b.from, a.from) || daysBetween(b.to, a.to));
}

const goodOnDay = (row: GuideLake["daily"][number]): number =>
  Math.min(
    1,
    GOOD_STATES.reduce((sum, state) => sum + row[state], 0),
  );

/** From this chance on a lake is worth naming. */
const MIN_CHANCE_NAMED = 0.1;

/** All of a lake that matters here, besides its forecast. */
interface WhenLake extends LakeInReach {
  readonly name: string;
}

/** Lakes named as fishable. */
const FISHABLE_NAMED = 3;
const MORE_LIKELY_THAN_NOT = 0.5;

/** The lakes that are more likely fishable than not, mean over the days; a day before the road opens counts as no chance. */
export function fishableLakes(
  days: readonly CalendarDate[],
  forecast: Pick<SeasonForecast, "fishable">,
  lakes: readonly LakeInReach[],
): Omit<Occasion["fishable"][number], "name">[] {
  return lakes
    .map((lake) => ({
      slug: lake.slug,
      chance:
        days.reduce((sum, date) => sum + (isOpenOn(lake, date) ? forecast.fishable(lake.slug, date) : 0), 0) /
        days.length,
    }))
    .filter(({ chance }) => chance >= MORE_LIKELY_THAN_NOT)
    .sort((a, b) => b.chance - a.chance)
    .slice(0, FISHABLE_NAMED);
}

function occasion(
  { name, from, to }: Days,
  forecast: SeasonForecast,
  lakes: ReadonlyMap<string, WhenLake>,
): Occasion {
  const days = daysFromTo(from, to);
  const { best, next } = choosePair(forecast, [...lakes.values()], days);
  const least = best?.fallback?.good ?? best?.pick.good ?? 0;
  const out = [...lakes.values()].flatMap((lake): LeftOut[] => {
    const why = roadClosedReason(lake, days);
    if (why === undefined) return [];
    const good = days.reduce((sum, date) => sum + forecast.good(lake.slug, date), 0) / days.length;
    return good < Math.max(least, MIN_CHANCE_NAMED) ? [] : [{ slug: lake.slug, name: lake.name, why }];
  });
  return {
    name,
    from,
    to,
    best: outingOf(best, lakes),
    isLikely: (best?.either ?? 0) >= MIN_CHANCE_NAMED,
    next: outingOf(next, lakes),
    fishable: fishableLakes(days, forecast, [...lakes.values()]).map(({ slug, chance }) => ({
      slug,
      name: lakes.get(slug)?.name ?? slug,
      chance,
    })),
    out,
  };
}

/** Weeks from Monday to Sunday; the first begins on the as-of date. */
function weeksFrom(asOf: CalendarDate, last: CalendarDate): { from: CalendarDate; to: CalendarDate }[] {
  const weeks: { from: CalendarDate; to: CalendarDate }[] = [];
  for (let from = asOf; from <= last; from = addDays(mondayOf(from), WEEK_DAYS)) {
    const sunday = addDays(mondayOf(from), WEEK_DAYS - 1);
    weeks.push({ from, to: sunday > last ? last : sunday });
  }
  return weeks;
}

/** A lake's mean chance over each week; a day before its road opens counts as no chance. */
function weekly(lake: WhenLake, daily: GuideLake["daily"], weeks: When["weeks"]): When["lakes"][number] {
  const first = daily[0]?.date;
  return {
    slug: lake.slug,
    name: lake.name,
    good: weeks.map(({ from, to }) => {
      if (first === undefined || !isOpenOn(lake, to)) return null;
      const rows = daily.slice(daysBetween(first, from), daysBetween(first, to) + 1);
      const sum = rows.reduce((all, row) => all + (isOpenOn(lake, row.date) ? goodOnDay(row) : 0), 0);
      return rows.length === 0 ? null : sum / rows.length;
    }),
  };
}

/** What this follows from, besides the forecast. */
interface WhenInputs extends Pick<Club, "asOf" | "holidays"> {
  readonly lakes: readonly WhenLake[];
}

function whenOf({ asOf, holidays, lakes }: WhenInputs, forecast: SeasonForecast): When {
  const { from, to } = forecast.window;
  const start = daysBetween(from, asOf) < 0 ? from : asOf;
  const bySlug = new Map(lakes.map((lake) => [lake.slug, lake]));
  const weeks = weeksFrom(start, to);
  return {
    occasions: occasionDays({ asOf: start, holidays }, to).map((days) => occasion(days, forecast, bySlug)),
    pool: lakes.length > POOL ? POOL : null,
    weeks,
    lakes: lakes.map((lake) => weekly(lake, forecast.lakes.get(lake.slug)?.daily ?? [], weeks)),
  };
}

/** Where to go on every weekend and holiday still to come, and all lakes by weeks. */
export const composeWhen = (
  { asOf, holidays }: Pick<Club, "asOf" | "holidays">,
  forecast: SeasonForecast,
  lakes: readonly GuideLake[],
): When =>
  forecast.memoize(
    "where to go when",
    { asOf, holidays, lakes: lakes.map((lake) => ({ ...lakeAccess(lake), name: lake.name })) },
    (needs) => whenOf(needs, forecast),
  );
