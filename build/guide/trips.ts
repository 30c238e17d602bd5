import { boxPlan } from "../flies/box-plan.ts";
import { type CalendarDate, daysFromTo } from "../model/calendar.ts";
import type { Pattern, RigBox, Trip } from "../model/club.ts";
import type { UnitSystem } from "../model/units.ts";
import type { SeasonForecast } from "../season/season.ts";
import type { GuideLake, GuideTrip } from "./guide-schema.ts";
import { renderMarkdown } from "./markdown.ts";
import { tripGear } from "./trip-gear.ts";

type Pick = NonNullable<GuideTrip["pick"]>;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The lake with the best mean chance over the days, and the second lake that most raises the chance of one being good. */
function pickLakes(
  trip: Trip,
  days: readonly CalendarDate[],
  forecast: SeasonForecast,
  nameOf: (slug: string) => string,
): Pick {
  const best = <T>(
    candidates: readonly T[],
    score: (candidate: T) => number,
  ): { choice: T; score: number } | undefined =>
    candidates
      .map((choice) => ({ choice, score: score(choice) }))
      .reduce<{ choice: T; score: number } | undefined>(
        (a, b) => (a === undefined || b.score > a.score ? b : a),
        undefined,
      );
  const first = best(trip.lakes, (slug) => mean(days.map((day) => forecast.good(slug, day))));
  if (first === undefined) throw new RangeError(`trip ${trip.slug} names no lake`);
  const second = best(
    trip.lakes.filter((slug) => slug !== first.choice),
    (slug) => mean(days.map((day) => forecast.together(first.choice, slug, day))),
  );
  return {
    slug: first.choice,
    name: nameOf(first.choice),
    good: first.score,
    fallback: second === undefined ? null : { slug: second.choice, name: nameOf(second.choice) },
    either: second?.score ?? first.score,
  };
}

/** The pick, the fallback, then the trip's other lakes. */
const inOrderFished = ({ lakes }: Trip, { slug, fallback }: Pick): string[] => [
  ...new Set([slug, ...(fallback === null ? [] : [fallback.slug]), ...lakes]),
];

/** A trip worked out: the chances of its lakes day by day, the lake to pick and the fallback. */
export function composeTrip(
  trip: Trip,
  forecast: SeasonForecast,
  lakes: ReadonlyMap<string, GuideLake>,
  box: RigBox,
  units: UnitSystem,
  patterns: readonly Pattern[],
): GuideTrip {
  const nameOf = (slug: string): string => lakes.get(slug)?.name ?? slug;
  const days = daysFromTo(trip.from, trip.to);
  const pick = pickLakes(trip, days, forecast, nameOf);
  return {
    slug: trip.slug,
    name: trip.name,
    from: trip.from,
    to: trip.to,
    rods: trip.rods,
    unlisted: trip.unlisted,
    notes: trip.notes === undefined ? null : renderMarkdown(trip.notes),
    days: days.map((date) => ({
      date,
      lakes: trip.lakes.map((slug) => ({ slug, name: nameOf(slug), good: forecast.good(slug, date) })),
      anyGood: forecast.anyGood(trip.lakes, date),
    })),
    gear: tripGear(
      trip,
      trip.lakes.flatMap((slug) => lakes.get(slug) ?? []),
      box,
      units,
    ),
    box: boxPlan(
      { ...trip, days, lakes: inOrderFished(trip, pick).flatMap((slug) => lakes.get(slug) ?? []) },
      patterns,
    ),
    pick,
  };
}
