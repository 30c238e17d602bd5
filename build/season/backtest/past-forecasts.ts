import { dateOfSeasonDay } from "../../model/calendar.ts";
import type { Lake } from "../../model/club.ts";
import { type Memoize, unmemoized } from "../../model/memoize.ts";
import type { PastForecast } from "../forecast.ts";
import { hemisphereOfLakes, pastOf } from "../records.ts";
import { USUAL_GRID } from "../season-grid.ts";
import { casesOn, dayOfShare, type LakeWithPast, seasonsLeftOut, simulatedSeason } from "./leave-one-out.ts";
import { quantile } from "./scoring.ts";

/** A coarser grid than a forecast uses, for brackets in whole days. */
const GRID = { ...USUAL_GRID, s: 61, k: 9 };
/** A larger club is taken in parts of at most so many lakes, spread over its list: the cost grows with the lakes alone. */
const MOST_LAKES = 60;
/** Seasons that a lake must have for them to be shown. */
const LEAST_PAST_FORECASTS = 5;

/**
 * What the guide would have said of each lake in past springs, standing on the day the club's first lake opened: each season is left
 * out in turn, the model fitted to all others. A lake that was itself the first has no forecast in that season.
 * @param season the season in progress, which is left out
 * @returns by slug, only lakes with five such forecasts or more
 */
export function pastForecasts(
  club: readonly Lake[],
  season: number,
  memoize: Memoize = unmemoized,
): ReadonlyMap<string, readonly PastForecast[]> {
  const parts = Math.ceil(club.length / MOST_LAKES);
  return new Map(
    Array.from({ length: parts }, (_, part) => {
      const lakes = club
        .filter((_lake, place) => place % parts === part)
        .map((lake) => ({ ...pastOf(lake), slug: lake.slug }));
      return memoize("past forecasts", { lakes, season }, forecastPast);
    }).flat(),
  );
}

function forecastPast({
  lakes,
  season,
}: {
  readonly lakes: readonly LakeWithPast[];
  readonly season: number;
}): (readonly [string, readonly PastForecast[]])[] {
  const hemisphere = hemisphereOfLakes(lakes);
  const byLake = lakes.map((): PastForecast[] => []);
  for (const leftOut of seasonsLeftOut(lakes, season, false)) {
    const simulated = simulatedSeason(leftOut, "perfect");
    const today = dayOfShare(simulated.values(), 0);
    const dateOf = (day: number) => dateOfSeasonDay(day, leftOut.season, hemisphere);
    for (const { lake, observed, model, reported } of casesOn(leftOut, simulated, today, GRID))
      byLake[lake]?.push({
        season: leftOut.season,
        opened: dateOf(observed),
        forecast:
          reported || today === undefined
            ? null
            : {
                from: dateOf(today),
                p10: dateOf(quantile(model, 0.1)),
                p50: dateOf(quantile(model, 0.5)),
                p90: dateOf(quantile(model, 0.9)),
              },
      });
  }
  return lakes.flatMap(({ slug }, lake) => {
    const past = byLake[lake] ?? [];
    return past.filter(({ forecast }) => forecast !== null).length >= LEAST_PAST_FORECASTS
      ? [[slug, past] as const]
      : [];
  });
}
