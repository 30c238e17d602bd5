import { type CalendarDate, dateOfSeasonDay, type Hemisphere, seasonDay } from "../model/calendar.ts";
import type { Club } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Spread } from "../model/exported.ts";
import { DAY_STATES, GOOD_STATES, type Phase, stateOfPhase } from "../model/phase.ts";
import { doubtsOf, isDoubted } from "./doubts.ts";
import { explainRegion } from "./explain.ts";
import type { LakeForecast, PhaseWindow } from "./forecast.ts";
import { anyGoodOn, goodOn } from "./pairs.ts";
import { type Change, chanceBy, dayBy, statesOn } from "./phases.ts";
import { hemisphereOfLakes } from "./records.ts";
import { type LakeSeason, type RegionSeason, regionSeasons } from "./region-season.ts";
import { statementsByLake } from "./statements.ts";
import { type DayWindow, windowOf } from "./window.ts";

/** Everything the season model says about a club's lakes, standing on the as-of date. */
export interface SeasonForecast {
  /** The days every daily table covers. */
  readonly window: { readonly from: CalendarDate; readonly to: CalendarDate };
  /** By slug. */
  readonly lakes: ReadonlyMap<string, LakeForecast>;
  /** Reports that contradict each other or the rest of the evidence; warnings only. */
  readonly doubts: readonly Diagnostic[];
  /** Chance that a lake is in a good phase on a day. @throws RangeError for a lake that is not the club's */
  good(slug: string, date: CalendarDate): number;
  /** Chance that at least one of two lakes is good on a day, sharing one spring. @throws RangeError as above */
  together(slugA: string, slugB: string, date: CalendarDate): number;
  /** Chance that at least one of several lakes is good on a day. @throws RangeError as above */
  anyGood(slugs: readonly string[], date: CalendarDate): number;
}

/** Turns days of season into dates, each only once. */
function datesOf(season: number, hemisphere: Hemisphere): (day: number) => CalendarDate {
  const dates = new Map<number, CalendarDate>();
  return (day) => {
    const known = dates.get(day);
    if (known !== undefined) return known;
    const date = dateOfSeasonDay(day, season, hemisphere);
    dates.set(day, date);
    return date;
  };
}

interface Moment {
  readonly today: number;
  readonly window: DayWindow;
  readonly dateOf: (day: number) => CalendarDate;
}

/** Chances at which an unsure day is named. */
const NAMED = [0.1, 0.5, 0.9];

/** Days by which a change has come with chances of 10, 50 and 90 %. */
const daysOf = ({ spring }: LakeSeason, change: Change): readonly number[] =>
  NAMED.map((chance) => dayBy(spring, change, chance));

function spreadOf(days: readonly number[], dateOf: Moment["dateOf"]): Spread {
  const [p10 = 0, p50 = 0, p90 = 0] = days;
  return { p10: dateOf(p10), p50: dateOf(p50), p90: dateOf(p90) };
}

/** A phase lasts from one change to the day before the next. */
function windowsOf(lake: LakeSeason, { dateOf }: Moment): PhaseWindow[] {
  const windowOfPhase = (phase: Phase, first: Change, next: Change): PhaseWindow => {
    const firsts = daysOf(lake, first);
    const lasts = daysOf(lake, next).map((day, i) => Math.max(day - 1, firsts[i] ?? day));
    return { phase, from: spreadOf(firsts, dateOf), to: spreadOf(lasts, dateOf) };
  };
  const lasts = (first: Change, next: Change): boolean =>
    dayBy(lake.spring, next, 0.5) > dayBy(lake.spring, first, 0.5);
  return [
    windowOfPhase("ice-off", "iceOff", "onset"),
    ...(lake.lake.turnoverRule.turnsOver ? [windowOfPhase("turnover", "onset", "clear")] : []),
    ...(lasts("clear", "summer") ? [windowOfPhase("post-turnover", "clear", "summer")] : []),
  ];
}

/** Share of the best day's chance that a day must reach to count among the best days. */
const NEAR_BEST = 0.9;
/** No best days are named when even the best is less likely than this. */
const WORTH_NAMING = 0.05;

/** The run of days about the best one, from today to the window's end. */
function bestDaysOf(lake: LakeSeason, { today, window, dateOf }: Moment): LakeForecast["bestDays"] {
  const first = Math.max(today, window.from);
  const chances = Array.from({ length: Math.max(0, window.to - first + 1) }, (_, i) =>
    goodOn(lake, first + i),
  );
  const best = Math.max(0, ...chances);
  if (best < WORTH_NAMING) return null;
  const near = (i: number): boolean => (chances[i] ?? 0) >= NEAR_BEST * best;
  let from = chances.indexOf(best);
  let to = from;
  while (near(from - 1)) from--;
  while (near(to + 1)) to++;
  const run = chances.slice(from, to + 1);
  return {
    from: dateOf(first + from),
    to: dateOf(first + to),
    chance: run.reduce((sum, chance) => sum + chance, 0) / run.length,
  };
}

function nowOf({ spring }: LakeSeason, today: number): LakeForecast["now"] {
  const states = statesOn(spring, today);
  const state = DAY_STATES.reduce((best, name) => (states[name] > states[best] ? name : best));
  return { state, chance: states[state] };
}

/** Somebody saw the lake open, or its date is on record, and nothing speaks against it. */
const isObserved = (lake: LakeSeason): boolean =>
  lake.statements.some(({ open }, place) => open && !isDoubted(lake, place));

function forecastOf(lake: LakeSeason, evidence: LakeForecast["evidence"], moment: Moment): LakeForecast {
  const { today, window, dateOf } = moment;
  const phases = windowsOf(lake, moment);
  return {
    iceOff: {
      ...spreadOf(daysOf(lake, "iceOff"), dateOf),
      status: isObserved(lake) ? "observed" : "forecast",
      openByNow: chanceBy(lake.spring, "iceOff", today),
    },
    phases,
    daily: Array.from({ length: window.to - window.from + 1 }, (_, i) => ({
      date: dateOf(window.from + i),
      ...statesOn(lake.spring, window.from + i),
    })),
    now: nowOf(lake, today),
    next:
      phases.find(
        ({ phase, from }) => GOOD_STATES.includes(stateOfPhase(phase)) && from.p50 > dateOf(today),
      ) ?? null,
    bestDays: bestDaysOf(lake, moment),
    marks: lake.statements.map(({ date, seen }, place) => ({ date, seen, doubted: isDoubted(lake, place) })),
    evidence,
  };
}

/**
 * Forecasts a season from past records and this season's reports. Nothing dated after the as-of date is used.
 * Pure: the same club gives the same forecast.
 */
export function forecastSeason(club: Pick<Club, "season" | "asOf" | "lakes" | "reports">): SeasonForecast {
  const hemisphere = hemisphereOfLakes(club.lakes);
  const regions = regionSeasons(club, hemisphere, statementsByLake(club, hemisphere));
  const today = seasonDay(club.asOf, club.season, hemisphere);
  const dateOf = datesOf(club.season, hemisphere);
  const all = regions.flatMap((region) => region.lakes.map((lake) => ({ lake, region })));
  const window = windowOf(
    all.map(({ lake }) => lake.spring),
    today,
  );
  const bySlug = new Map(all.map((entry) => [entry.lake.lake.slug, entry]));
  const known = (slug: string): { readonly lake: LakeSeason; readonly region: RegionSeason } => {
    const entry = bySlug.get(slug);
    if (entry === undefined) throw new RangeError(`no lake “${slug}” in this club`);
    return entry;
  };
  const evidence = new Map(regions.flatMap((region) => [...explainRegion(region, isObserved, dateOf)]));
  const dayOf = (date: CalendarDate): number => seasonDay(date, club.season, hemisphere);
  const anyGood = (slugs: readonly string[], date: CalendarDate): number =>
    anyGoodOn([...new Set(slugs)].map(known), dayOf(date));
  return {
    window: { from: dateOf(window.from), to: dateOf(window.to) },
    lakes: new Map(
      club.lakes.flatMap(({ slug }) => {
        const why = evidence.get(slug);
        return why === undefined
          ? []
          : [[slug, forecastOf(known(slug).lake, why, { today, window, dateOf })] as const];
      }),
    ),
    doubts: club.lakes.flatMap(({ slug }) => doubtsOf(known(slug).lake)),
    good: (slug, date) => goodOn(known(slug).lake, dayOf(date)),
    together: (slugA, slugB, date) => anyGood([slugA, slugB], date),
    anyGood,
  };
}
