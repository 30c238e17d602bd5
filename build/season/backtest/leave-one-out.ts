import type { Lake } from "../../model/club.ts";
import { fitInputOf, regionsOf } from "../fit/fit-input.ts";
import { type Fit, fitPastSeasons } from "../fit/fit-past-seasons.ts";
import { dayChances, lakeDistribution, spanOf } from "../lake-distribution.ts";
import type { DaySpan, LakeEvidence } from "../lake-evidence.ts";
import { at, meanOf } from "../numbers.ts";
import { hemisphereOfLakes, type IceOffDays, iceOffBySeason, isExact, type PastLake } from "../records.ts";
import { silenceChance, USUAL_DELAY, watchChance } from "../reporting-law.ts";
import { type GridSize, priorGrid } from "../season-grid.ts";
import { type LakeAndEvidence, SHARED_WEIGHT, updateSeason } from "../season-posterior.ts";
import { datedChance, openChance, stillIcedChance } from "../statements.ts";
import { shiftedForecast, usualForecast } from "./baselines.ts";
import { type DayForecast, forecastOfChances } from "./scoring.ts";
import {
  type ReportingMode,
  type SimulatedLake,
  type SimulatedReport,
  simulatedLake,
} from "./simulated-reports.ts";

/** A season is scored when so many of its lakes have so many other seasons on record. */
const LEAST_LAKES = 6;
const LEAST_OTHER_SEASONS = 3;

/** Fewer rounds than a forecast's fit takes: under 1 % in CRPS. */
const FIT = { rounds: 15, settled_days: 1e-2, step_days: 5 };

export type LakeWithPast = PastLake & Pick<Lake, "slug">;

type History = readonly ReadonlyMap<number, IceOffDays>[];
type IsOther = (year: number) => boolean;

/** Known ice-off days of one lake in some seasons. */
const knownDays = (past: ReadonlyMap<number, IceOffDays> | undefined, isOther: IsOther): number[] =>
  [...(past ?? [])].flatMap(([year, days]) => (isOther(year) && isExact(days) ? [days.from] : []));

/** One season left out of the fit. */
export interface SeasonLeftOut {
  readonly season: number;
  readonly lakes: readonly LakeWithPast[];
  /** Ice-off day of the season by the lake's place, for the lakes whose day is known. */
  readonly opened: ReadonlyMap<number, number>;
  /** The places of those that have records enough besides. */
  readonly scored: readonly number[];
  readonly fit: Fit;
  readonly regions: readonly number[];
  /** Known ice-off days in the seasons of the fit, by the lake's place. */
  readonly pastDays: readonly (readonly number[])[];
}

const otherSeasons =
  (season: number, pastOnly: boolean): IsOther =>
  (year) =>
    pastOnly ? year < season : year !== season;

function seasonsToScore(
  history: History,
  pastOnly: boolean,
): Pick<SeasonLeftOut, "season" | "opened" | "scored">[] {
  const seasons = [...new Set(history.flatMap((past) => [...past.keys()]))].sort((a, b) => a - b);
  return seasons
    .map((season) => {
      const opened = new Map(
        history.flatMap((past, lake) => {
          const days = past.get(season);
          return days !== undefined && isExact(days) ? [[lake, Math.round(days.from)] as const] : [];
        }),
      );
      const scored = [...opened.keys()].filter(
        (lake) => knownDays(history[lake], otherSeasons(season, pastOnly)).length >= LEAST_OTHER_SEASONS,
      );
      return { season, opened, scored };
    })
    .filter(({ scored }) => scored.length >= LEAST_LAKES);
}

/**
 * Each past season with enough lakes, and the model fitted to the others.
 * @param season the season in progress, which is left out of all; null for none
 * @param pastOnly true to fit to earlier seasons only
 */
export function* seasonsLeftOut(
  lakes: readonly LakeWithPast[],
  season: number | null,
  pastOnly: boolean,
): Generator<SeasonLeftOut> {
  const hemisphere = hemisphereOfLakes(lakes);
  const regions = regionsOf(lakes);
  const history = lakes.map((lake) => {
    const past = new Map(iceOffBySeason(lake, hemisphere));
    if (season !== null) past.delete(season);
    return past;
  });
  for (const leftOut of seasonsToScore(history, pastOnly)) {
    const isOther = otherSeasons(leftOut.season, pastOnly);
    const others = history.map((past) => new Map([...past].filter(([year]) => isOther(year))));
    yield {
      ...leftOut,
      lakes,
      regions,
      fit: fitPastSeasons(fitInputOf(lakes, others, regions), FIT),
      pastDays: history.map((past) => knownDays(past, isOther)),
    };
  }
}

/** How a left-out season's openings are reported, by the lake's place. */
export const simulatedSeason = (
  { season, lakes, opened }: SeasonLeftOut,
  mode: ReportingMode,
): ReadonlyMap<number, SimulatedLake> =>
  new Map(
    [...opened].map(([lake, day]) => [lake, simulatedLake(mode, season, lakes[lake]?.slug ?? "", day)]),
  );

/** The day on which a share of the reporting lakes has been reported open; at 0 the first of them. */
export function dayOfShare(lakes: Iterable<SimulatedLake>, share: number): number | undefined {
  const days = [...lakes].flatMap(({ reportedOpen }) => reportedOpen ?? []).sort((a, b) => a - b);
  return days[Math.max(0, Math.ceil(share * days.length) - 1)];
}

/** What was known of a lake on a day, weighed as in a forecast with nothing learnt of the club's reporting. */
function evidenceBy(reports: readonly SimulatedReport[], today: number, span: DaySpan): LakeEvidence {
  const iced = reports.some(({ ice }) => ice === "on");
  const watched = reports.some(({ ice }) => ice !== "on") ? 0 : watchChance(0, 0, iced);
  const chanceOf = ({ ice, day }: SimulatedReport, iceOff: number): number => {
    if (ice === "on") return stillIcedChance(day, iceOff);
    return ice === "dated"
      ? datedChance(day, iceOff)
      : openChance(day, iceOff, iced ? undefined : USUAL_DELAY);
  };
  const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) => {
    const iceOff = span.from + i;
    return reports.reduce(
      (product, report) => product * chanceOf(report, iceOff),
      silenceChance(watched, USUAL_DELAY, today - iceOff),
    );
  });
  return { span, chance };
}

/** How early or late the lakes reported open by a day were reported, against their own means. */
const anomaliesBy = (
  { opened, pastDays }: SeasonLeftOut,
  simulated: ReadonlyMap<number, SimulatedLake>,
  today: number,
): number[] =>
  [...opened.keys()].flatMap((lake) => {
    const reported = simulated.get(lake)?.reportedOpen;
    const past = pastDays[lake] ?? [];
    if (reported === undefined || reported > today || past.length === 0) return [];
    return [reported - meanOf(past)];
  });

/** A lake-season forecast from what was known on a day, with what came. */
export interface Case {
  readonly lake: number;
  readonly season: number;
  readonly observed: number;
  readonly usual: DayForecast;
  readonly shifted: DayForecast;
  readonly model: DayForecast;
  /** True for a lake already reported open, of which only the day is still unknown. */
  readonly reported: boolean;
}

/**
 * Forecasts every scored lake of the season left out, standing on a day of it.
 * @param today `undefined` before any report
 */
export function casesOn(
  leftOut: SeasonLeftOut,
  simulated: ReadonlyMap<number, SimulatedLake>,
  today: number | undefined,
  size: GridSize,
): Case[] {
  const { season, opened, scored, fit, regions, pastDays } = leftOut;
  const anomalies = today === undefined ? [] : anomaliesBy(leftOut, simulated, today);
  const knownOf = (lake: number): readonly SimulatedReport[] =>
    today === undefined ? [] : (simulated.get(lake)?.knownBy(today) ?? []);
  return [...new Set(regions)].flatMap((region) => {
    const grid = priorGrid(fit, region, size);
    const members = regions.flatMap((own, lake) => (own === region ? [lake] : []));
    const lakes = members.map((lake): LakeAndEvidence & { lake: number; span: DaySpan } => {
      const distribution = lakeDistribution(fit, lake);
      const span = spanOf(distribution, grid);
      const evidence =
        today === undefined || !simulated.has(lake) ? undefined : evidenceBy(knownOf(lake), today, span);
      return { lake, distribution, span, evidence };
    });
    const posterior = updateSeason(fit, region, lakes, { grid: size, sharedWeight: SHARED_WEIGHT });
    return lakes.flatMap(({ lake, distribution, span, evidence }, place): Case[] => {
      const observed = opened.get(lake);
      if (observed === undefined || !scored.includes(lake)) return [];
      const chances = dayChances(distribution, posterior.grid, posterior.without(place), span).map(
        (chance, i) => chance * (evidence === undefined ? 1 : at(evidence.chance, i)),
      );
      const past = pastDays[lake] ?? [];
      const seenIced = knownOf(lake).findLast(({ ice }) => ice === "on")?.day;
      return [
        {
          lake,
          season,
          observed,
          reported: knownOf(lake).some(({ ice }) => ice !== "on"),
          model: forecastOfChances(chances, span.from),
          usual: usualForecast(past, seenIced),
          shifted: shiftedForecast(past, anomalies, seenIced),
        },
      ];
    });
  });
}
