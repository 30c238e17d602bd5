import { type Hemisphere, seasonOf } from "../model/calendar.ts";
import type { RegionForecast, Reporting } from "./forecast.ts";
import { at, meanOf, roundTo } from "./numbers.ts";
import type { ClubSeason, RegionSeason } from "./region-season.ts";
import { watchChanceOf } from "./reporting-law.ts";
import type { SeasonEvidence } from "./season-evidence.ts";
import { scatterChances } from "./season-grid.ts";

/** What is told of a whole region's season. */
export function regionForecast(
  { lakes, posterior: { grid, weights }, indicators }: RegionSeason,
  mostInformative: RegionForecast["mostInformative"],
): RegionForecast {
  const chances = scatterChances(grid, weights);
  const statements = lakes.flatMap((lake) => lake.statements);
  return {
    region: lakes[0]?.lake.region ?? null,
    scatter: roundTo(
      chances.reduce((sum, chance, j) => sum + chance * at(grid.scatter, j), 0),
      3,
    ),
    uneven: roundTo(at(chances, chances.length - 1), 4),
    openingsOnly: statements.some(({ open }) => open) && statements.every(({ open }) => open),
    mostInformative,
    indicators:
      indicators === undefined
        ? null
        : {
            lakes: indicators.lakes,
            seasons: indicators.seasons,
            anomaly_d: roundTo(indicators.anomaly_d, 2),
            loading: roundTo(indicators.loading, 3),
            error_d: roundTo(indicators.error_d, 2),
          },
  };
}

/** What was learnt of the club's reporting, in its own numbers. */
export function reportingOf(
  { reporting }: Pick<ClubSeason, "reporting">,
  { season, reports, lakes }: SeasonEvidence,
  hemisphere: Hemisphere,
): Reporting {
  const { delay, delays_d, delaySeasons, visitSeasons, visits } = reporting;
  const counted = new Set(visitSeasons);
  return {
    delay: {
      shape: roundTo(delay.shape, 3),
      theta_d: roundTo(delay.theta_d, 3),
      reports: delays_d.length,
      mean_d: delays_d.length === 0 ? null : roundTo(meanOf(delays_d), 2),
      seasons: [...delaySeasons],
    },
    visits: {
      seasons: [...visitSeasons],
      reports: reports.filter(({ ice, date }) => {
        const year = seasonOf(date, hemisphere);
        return ice !== undefined && year < season && counted.has(year) && lakes.length > 0;
      }).length,
      watched: lakes.map((lake) => ({
        lake: lake.slug,
        visited: visits.get(lake.slug) ?? 0,
        chance: roundTo(watchChanceOf(lake, reporting, false), 4),
      })),
    },
  };
}
