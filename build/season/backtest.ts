import type { Lake } from "../model/club.ts";
import { type Memoize, unmemoized } from "../model/memoize.ts";
import { baselineForecast } from "./baseline.ts";
import { type Fit, fitPastSeasons } from "./fit.ts";
import { isExact } from "./fit-input.ts";
import type { BacktestRow } from "./forecast.ts";
import type { DaySpan, LakeEvidence } from "./lake-evidence.ts";
import { dayChances, lawOf, spanOf } from "./lake-law.ts";
import { at } from "./numbers.ts";
import { hemisphereOfLakes, type IceOffDays, iceOffBySeason, type PastLake, pastOf } from "./records.ts";
import { fitInputOf, regionsOf } from "./region-season.ts";
import { crps, type DayForecast, forecastOfChances, quantile, shareBelow } from "./scoring.ts";
import { priorGrid } from "./season-grid.ts";
import { type LakeAndEvidence, SHARED_WEIGHT, updateSeason } from "./season-posterior.ts";
import { WRONG, WRONG_RECORDED_DAY } from "./statements.ts";

/** A season is scored when so many of its lakes have so many other seasons on record. */
const LEAST_LAKES = 6;
const LEAST_OTHER_SEASONS = 3;

/** Where one stands: before any news, when the first lake has opened, and when a share of the lakes has. */
const MOMENTS = [
  { moment: "before", share: undefined },
  { moment: "first", share: 0 },
  { moment: "25%", share: 0.25 },
  { moment: "50%", share: 0.5 },
  { moment: "75%", share: 0.75 },
] as const;

const SAID = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/** A coarser grid and fewer rounds than a forecast uses: under 1 % in CRPS, and many times faster. */
const GRID = { s: 81, k: 9 };
const FIT = { rounds: 15, settled_days: 1e-2, step_days: 5 };

/** Of a larger club only every so many-th lake takes part, in evidence as in scores: its score is that of a club this large. */
const MOST_LAKES = 60;

/** A lake-season to be forecast, with what came. */
interface Case {
  readonly observed: number;
  readonly baseline: DayForecast;
  readonly model: DayForecast;
}

type History = readonly ReadonlyMap<number, IceOffDays>[];

/** Known ice-off days of one lake, without one season. */
const otherDays = (past: ReadonlyMap<number, IceOffDays>, season: number): number[] =>
  [...past].flatMap(([year, days]) => (year !== season && isExact(days) ? [days.from] : []));

/** The lakes whose ice-off day in a season is known, and which have records enough besides. */
interface SeasonLeftOut {
  readonly season: number;
  readonly opened: ReadonlyMap<number, number>;
  readonly scored: readonly number[];
}

function seasonsToScore(history: History): SeasonLeftOut[] {
  const seasons = [...new Set(history.flatMap((past) => [...past.keys()]))].sort((a, b) => a - b);
  return seasons
    .map((season) => {
      const opened = new Map(
        history.flatMap((past, lake) => {
          const days = past.get(season);
          return days !== undefined && isExact(days) ? [[lake, days.from] as const] : [];
        }),
      );
      const scored = [...opened.keys()].filter(
        (lake) => otherDays(history[lake] ?? new Map(), season).length >= LEAST_OTHER_SEASONS,
      );
      return { season, opened, scored };
    })
    .filter(({ scored }) => scored.length >= LEAST_LAKES);
}

/** The day one stands on; `undefined` before any news. */
function dayOfMoment(opened: ReadonlyMap<number, number>, share: number | undefined): number | undefined {
  if (share === undefined) return undefined;
  const days = [...opened.values()].sort((a, b) => a - b);
  return days[Math.max(0, Math.ceil(share * days.length) - 1)];
}

/** What was known of a lake on a day: the day it opened, or that it was still iced. Weighed as records and reports are in a forecast. */
function evidenceBy(opened: number, today: number, span: DaySpan): LakeEvidence {
  const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) => {
    const day = span.from + i;
    if (opened > today) return day > today ? 1 - WRONG : WRONG;
    return day === Math.round(opened) ? 1 - WRONG : WRONG_RECORDED_DAY;
  });
  return { span, chance };
}

/** Forecasts every scored lake that is still iced at one moment of the season left out. */
function casesAt(
  { season, opened, scored }: SeasonLeftOut,
  today: number | undefined,
  history: History,
  fit: Fit,
  regions: readonly number[],
): Case[] {
  return [...new Set(regions)].flatMap((region) => {
    const grid = priorGrid(fit, region, GRID);
    const members = regions.flatMap((own, lake) => (own === region ? [lake] : []));
    const lakes = members.map((lake): LakeAndEvidence & { lake: number; span: DaySpan } => {
      const law = lawOf(fit, lake);
      const span = spanOf(law, grid);
      const day = opened.get(lake);
      const evidence = day === undefined || today === undefined ? undefined : evidenceBy(day, today, span);
      return { lake, law, span, evidence };
    });
    const posterior = updateSeason(fit, region, lakes, { grid: GRID, sharedWeight: SHARED_WEIGHT });
    return lakes.flatMap(({ lake, law, span, evidence }, place): Case[] => {
      const observed = opened.get(lake);
      if (observed === undefined || !scored.includes(lake) || observed <= (today ?? Number.NEGATIVE_INFINITY))
        return [];
      const chances = dayChances(law, posterior.grid, posterior.without(place), span).map(
        (chance, i) => chance * (evidence === undefined ? 1 : at(evidence.chance, i)),
      );
      return [
        {
          observed,
          model: forecastOfChances(chances, span.from),
          baseline: baselineForecast(otherDays(history[lake] ?? new Map(), season), today),
        },
      ];
    });
  });
}

const meanOf = <T>(values: readonly T[], measure: (value: T) => number): number =>
  values.reduce((sum, value) => sum + measure(value), 0) / values.length;

function rowOf(moment: BacktestRow["moment"], cases: readonly Case[]): BacktestRow {
  const score = (which: "baseline" | "model"): BacktestRow["baseline"] => ({
    mae: meanOf(cases, (one) => Math.abs(quantile(one[which], 0.5) - one.observed)),
    crps: meanOf(cases, (one) => crps(one[which], one.observed)),
  });
  const came = (said: number): number =>
    meanOf(cases, ({ model, observed }) => shareBelow(model, observed, said));
  return {
    moment,
    n: cases.length,
    baseline: score("baseline"),
    model: { ...score("model"), cover50: came(0.75) - came(0.25), cover80: came(0.9) - came(0.1) },
    calibration: SAID.map((said) => ({ said, came: came(said) })),
  };
}

/**
 * How well the model would have called past seasons: each season is left out in turn, the model fitted to all others, and the lakes still
 * iced at a few moments of it are forecast from what was known then.
 * @param season the season in progress, which is not scored
 * @returns `null` when no season can be scored: it takes 6 lakes with 3 other seasons each
 */
export function backtest(
  club: readonly Lake[],
  season?: number,
  memoize: Memoize = unmemoized,
): BacktestRow[] | null {
  const every = Math.ceil(club.length / MOST_LAKES);
  const lakes = club.filter((_, place) => place % every === 0).map(pastOf);
  return memoize("backtest", { lakes, season: season ?? null }, scoreSeasons);
}

interface PastSeasons {
  readonly lakes: readonly PastLake[];
  /** Not scored. */
  readonly season: number | null;
}

function scoreSeasons({ lakes, season }: PastSeasons): BacktestRow[] | null {
  const hemisphere = hemisphereOfLakes(lakes);
  const regions = regionsOf(lakes);
  const history = lakes.map((lake) => {
    const past = new Map(iceOffBySeason(lake, hemisphere));
    if (season !== null) past.delete(season);
    return past;
  });
  const cases = new Map<BacktestRow["moment"], Case[]>(MOMENTS.map(({ moment }) => [moment, []]));
  for (const leftOut of seasonsToScore(history)) {
    const others = history.map((past) => new Map([...past].filter(([year]) => year !== leftOut.season)));
    const fit = fitPastSeasons(fitInputOf(lakes, others, regions), FIT);
    for (const { moment, share } of MOMENTS)
      cases.get(moment)?.push(...casesAt(leftOut, dayOfMoment(leftOut.opened, share), history, fit, regions));
  }
  const rows = [...cases]
    .filter(([, scored]) => scored.length > 0)
    .map(([moment, scored]) => rowOf(moment, scored));
  return rows.length === 0 ? null : rows;
}
