import type { Lake } from "../../model/club.ts";
import { type Memoize, unmemoized } from "../../model/memoize.ts";
import { fitInputOf, regionsOf } from "../fit/fit-input.ts";
import { type Fit, fitPastSeasons } from "../fit/fit-past-seasons.ts";
import type { BacktestRow } from "../forecast.ts";
import { dayChances, lakeDistribution, spanOf } from "../lake-distribution.ts";
import type { DaySpan, LakeEvidence } from "../lake-evidence.ts";
import { at } from "../numbers.ts";
import {
  hemisphereOfLakes,
  type IceOffDays,
  iceOffBySeason,
  isExact,
  type PastLake,
  pastOf,
} from "../records.ts";
import { silenceChance, USUAL_DELAY, watchChance } from "../reporting-law.ts";
import { priorGrid, USUAL_GRID } from "../season-grid.ts";
import { type LakeAndEvidence, SHARED_WEIGHT, updateSeason } from "../season-posterior.ts";
import { datedChance, openChance, stillIcedChance } from "../statements.ts";
import { shiftedForecast, usualForecast } from "./baselines.ts";
import { crps, type DayForecast, forecastOfChances, quantile, shareBelow } from "./scoring.ts";
import {
  REPORTING_MODES,
  type ReportingMode,
  type SimulatedLake,
  type SimulatedReport,
  simulatedLake,
} from "./simulated-reports.ts";

/** A season is scored when so many of its lakes have so many other seasons on record. */
const LEAST_LAKES = 6;
const LEAST_OTHER_SEASONS = 3;

/** Where one stands: before any news, when the first lake is reported open, and when a share of the reporting lakes is. */
const MOMENTS = [
  { moment: "before", share: undefined },
  { moment: "first", share: 0 },
  { moment: "25%", share: 0.25 },
  { moment: "50%", share: 0.5 },
  { moment: "75%", share: 0.75 },
] as const;

const SAID = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/** A coarser grid and fewer rounds than a forecast uses: under 1 % in CRPS, and many times faster. */
const GRID = { ...USUAL_GRID, s: 81, k: 9 };
const FIT = { rounds: 15, settled_days: 1e-2, step_days: 5 };

/** Of a larger club only every so many-th lake takes part, in evidence as in scores: its score is that of a club this large. */
const MOST_LAKES = 60;

export interface BacktestSettings {
  readonly modes: readonly ReportingMode[];
  /** True to fit each season to earlier ones only, not to all others. */
  readonly pastOnly: boolean;
}
const USUAL_SETTINGS: BacktestSettings = { modes: REPORTING_MODES, pastOnly: false };

/** A lake-season to be forecast, with what came. */
interface Case {
  readonly season: number;
  readonly observed: number;
  readonly usual: DayForecast;
  readonly shifted: DayForecast;
  readonly model: DayForecast;
  /** True for a lake already reported open, of which the day is still to be told. */
  readonly reported: boolean;
}

type History = readonly ReadonlyMap<number, IceOffDays>[];
type IsOther = (year: number) => boolean;

/** Known ice-off days of one lake in some seasons. */
const knownDays = (past: ReadonlyMap<number, IceOffDays> | undefined, isOther: IsOther): number[] =>
  [...(past ?? [])].flatMap(([year, days]) => (isOther(year) && isExact(days) ? [days.from] : []));

/** The lakes whose ice-off day in a season is known, and which have records enough besides. */
interface SeasonLeftOut {
  readonly season: number;
  readonly opened: ReadonlyMap<number, number>;
  readonly scored: readonly number[];
}

const otherSeasons =
  (season: number, pastOnly: boolean): IsOther =>
  (year) =>
    pastOnly ? year < season : year !== season;

function seasonsToScore(history: History, pastOnly: boolean): SeasonLeftOut[] {
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

/** The day one stands on: when the share of the reporting lakes has been reported open; `undefined` before any news. */
function dayOfMoment(lakes: Iterable<SimulatedLake>, share: number | undefined): number | undefined {
  if (share === undefined) return undefined;
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

interface Moment {
  readonly leftOut: SeasonLeftOut;
  readonly today: number | undefined;
  readonly simulated: ReadonlyMap<number, SimulatedLake>;
}

/** How early or late the lakes reported open by a day were reported, against their own means. */
const anomaliesBy = (
  { leftOut: { opened }, today, simulated }: Moment,
  pastDaysOf: (lake: number) => readonly number[],
): number[] =>
  [...opened.keys()].flatMap((lake) => {
    const reported = simulated.get(lake)?.reportedOpen;
    const past = pastDaysOf(lake);
    if (reported === undefined || today === undefined || reported > today || past.length === 0) return [];
    return [reported - meanOf(past, (day) => day)];
  });

/** Forecasts every scored lake at one moment of the season left out. */
function casesAt(
  moment: Moment,
  fit: Fit,
  regions: readonly number[],
  pastDaysOf: (lake: number) => readonly number[],
): Case[] {
  const { leftOut, today, simulated } = moment;
  const { season, opened, scored } = leftOut;
  const anomalies = anomaliesBy(moment, pastDaysOf);
  return [...new Set(regions)].flatMap((region) => {
    const grid = priorGrid(fit, region, GRID);
    const members = regions.flatMap((own, lake) => (own === region ? [lake] : []));
    const lakes = members.map((lake): LakeAndEvidence & { lake: number; span: DaySpan } => {
      const distribution = lakeDistribution(fit, lake);
      const span = spanOf(distribution, grid);
      const reports = simulated.get(lake);
      const evidence =
        reports === undefined || today === undefined
          ? undefined
          : evidenceBy(reports.knownBy(today), today, span);
      return { lake, distribution, span, evidence };
    });
    const posterior = updateSeason(fit, region, lakes, { grid: GRID, sharedWeight: SHARED_WEIGHT });
    return lakes.flatMap(({ lake, distribution, span, evidence }, place): Case[] => {
      const observed = opened.get(lake);
      if (observed === undefined || !scored.includes(lake)) return [];
      const chances = dayChances(distribution, posterior.grid, posterior.without(place), span).map(
        (chance, i) => chance * (evidence === undefined ? 1 : at(evidence.chance, i)),
      );
      const past = pastDaysOf(lake);
      const looks = today === undefined ? [] : (simulated.get(lake)?.knownBy(today) ?? []);
      const seenIced = looks.findLast(({ ice }) => ice === "on")?.day;
      const reported = (simulated.get(lake)?.reportedOpen ?? Number.POSITIVE_INFINITY) <= (today ?? 0);
      return [
        {
          season,
          observed,
          reported: today !== undefined && reported,
          model: forecastOfChances(chances, span.from),
          usual: usualForecast(past, seenIced),
          shifted: shiftedForecast(past, anomalies, seenIced),
        },
      ];
    });
  });
}

const meanOf = <T>(values: readonly T[], measure: (value: T) => number): number =>
  values.reduce((sum, value) => sum + measure(value), 0) / values.length;

function rowOf(reporting: ReportingMode, moment: BacktestRow["moment"], all: readonly Case[]): BacktestRow {
  const cases = all.filter(({ reported }) => !reported);
  const score = (some: readonly Case[], which: "usual" | "shifted" | "model"): BacktestRow["baseline"] => ({
    mae: meanOf(some, (one) => Math.abs(quantile(one[which], 0.5) - one.observed)),
    crps: meanOf(some, (one) => crps(one[which], one.observed)),
  });
  const came = (said: number): number =>
    meanOf(cases, ({ model, observed }) => shareBelow(model, observed, said));
  const opened = all.filter(({ reported }) => reported);
  return {
    moment,
    reporting,
    n: cases.length,
    seasons: new Set(cases.map(({ season }) => season)).size,
    baseline: score(cases, "usual"),
    shifted: score(cases, "shifted"),
    model: { ...score(cases, "model"), cover50: came(0.75) - came(0.25), cover80: came(0.9) - came(0.1) },
    opening: opened.length === 0 ? null : { n: opened.length, ...score(opened, "model") },
    calibration: SAID.map((said) => ({ said, came: came(said) })),
  };
}

/**
 * How well the model would have called past seasons: each season is left out in turn, the model fitted to all others, and every lake not
 * yet reported open is forecast at a few moments of it, from what was known then.
 * @param season the season in progress, which is not scored
 * @returns `null` when no season can be scored: it takes 6 lakes with 3 other seasons each
 */
export function backtest(
  club: readonly Lake[],
  season?: number,
  memoize: Memoize = unmemoized,
  settings: BacktestSettings = USUAL_SETTINGS,
): BacktestRow[] | null {
  const every = Math.ceil(club.length / MOST_LAKES);
  const some = club.filter((_, place) => place % every === 0);
  const lakes = some.map((lake) => ({ ...pastOf(lake), slug: lake.slug }));
  return memoize("backtest", { lakes, season: season ?? null, settings }, scoreSeasons);
}

interface PastSeasons {
  readonly lakes: readonly (PastLake & Pick<Lake, "slug">)[];
  /** Not scored. */
  readonly season: number | null;
  readonly settings: BacktestSettings;
}

function scoreSeasons({ lakes, season, settings: { modes, pastOnly } }: PastSeasons): BacktestRow[] | null {
  const hemisphere = hemisphereOfLakes(lakes);
  const regions = regionsOf(lakes);
  const history = lakes.map((lake) => {
    const past = new Map(iceOffBySeason(lake, hemisphere));
    if (season !== null) past.delete(season);
    return past;
  });
  const rows = modes.flatMap((mode) =>
    MOMENTS.filter(({ share }) => share !== undefined || mode === "perfect").map(({ moment, share }) => ({
      mode,
      moment,
      share,
      cases: [] as Case[],
    })),
  );
  for (const leftOut of seasonsToScore(history, pastOnly)) {
    const isOther = otherSeasons(leftOut.season, pastOnly);
    const others = history.map((past) => new Map([...past].filter(([year]) => isOther(year))));
    const fit = fitPastSeasons(fitInputOf(lakes, others, regions), FIT);
    const pastDays = history.map((past) => knownDays(past, isOther));
    for (const mode of modes) {
      const simulated = new Map(
        [...leftOut.opened].map(([lake, day]) => [
          lake,
          simulatedLake(mode, leftOut.season, lakes[lake]?.slug ?? "", day),
        ]),
      );
      for (const row of rows.filter((one) => one.mode === mode)) {
        const today = dayOfMoment(simulated.values(), row.share);
        if (row.share !== undefined && today === undefined) continue;
        row.cases.push(
          ...casesAt({ leftOut, today, simulated }, fit, regions, (lake) => pastDays[lake] ?? []),
        );
      }
    }
  }
  const scored = rows
    .filter(({ cases }) => cases.some(({ reported }) => !reported))
    .map(({ mode, moment, cases }) => rowOf(mode, moment, cases));
  return scored.length === 0 ? null : scored;
}
