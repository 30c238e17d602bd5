import type { CalendarDate } from "../model/calendar.ts";
import { GOOD_STATES, likeliestState, type Phase, stateOfPhase } from "../model/phase.ts";
import type { Spread } from "../model/shared-schemas.ts";
import { readingEffects } from "./after-ice/reading-effects.ts";
import { heatOn, statesOn } from "./after-ice/spring.ts";
import { type Change, chanceBy, dayBy } from "./after-ice/states.ts";
import { showsLayers } from "./after-ice/stratification.ts";
import { isDoubted } from "./doubts.ts";
import type { LakeForecast, PhaseWindow } from "./forecast.ts";
import { meanOf, roundTo } from "./numbers.ts";
import { goodOn } from "./pairs.ts";

import type { LakeSeason } from "./region-season.ts";
import type { DayWindow } from "./window.ts";

/** The day one stands on, the days to be told of, and what they are called. */
export interface Moment {
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
    ...(lasts("clear", "later") ? [windowOfPhase("post-turnover", "clear", "later")] : []),
  ];
}

/** Share of the best day's chance that a day must reach to count among the best days. */
const NEAR_BEST = 0.9;
/** No best days are named when even the best is less likely than this. */
const WORTH_NAMING = 0.05;

/** The run of days about the best one, by their places in the list; null where even the best is hardly likely. */
export function runAboutBest(
  chances: readonly number[],
): { readonly from: number; readonly to: number; readonly chance: number } | null {
  const best = Math.max(0, ...chances);
  if (best < WORTH_NAMING) return null;
  const near = (i: number): boolean => (chances[i] ?? 0) >= NEAR_BEST * best;
  let from = chances.indexOf(best);
  let to = from;
  while (near(from - 1)) from--;
  while (near(to + 1)) to++;
  return { from, to, chance: roundTo(meanOf(chances.slice(from, to + 1)), 4) };
}

/** The run of days about the best one, from today to the window's end. */
function bestDaysOf(lake: LakeSeason, { today, window, dateOf }: Moment): LakeForecast["bestDays"] {
  const first = Math.max(today, window.from);
  const run = runAboutBest(
    Array.from({ length: Math.max(0, window.to - first + 1) }, (_, i) => goodOn(lake, first + i)),
  );
  return run === null ? null : { ...run, from: dateOf(first + run.from), to: dateOf(first + run.to) };
}

function nowOf({ spring }: LakeSeason, today: number): LakeForecast["now"] {
  const states = statesOn(spring, today);
  const state = likeliestState(states);
  return { state, chance: states[state] };
}

/** Heat is told of days on which it is at least this likely. */
const REAL_HEAT = 0.01;

function heatOf({ spring }: LakeSeason, { window, dateOf }: Moment): LakeForecast["heat"] {
  return Array.from({ length: window.to - window.from + 1 }, (_, i) => ({
    date: dateOf(window.from + i),
    ...heatOn(spring, window.from + i),
  })).filter(({ takeCare }) => takeCare >= REAL_HEAT);
}

function readingsOf(lake: LakeSeason, dateOf: Moment["dateOf"]): LakeForecast["readings"] {
  return readingEffects(lake.clocks, lake.law, lake.readings).map(
    ({ reading, bestWeeks_d, laterWeeks_d }) => {
      const { day, surface_C, deep, secchiRatio, looks, phase } = reading;
      return {
        date: dateOf(day),
        surface_C: surface_C ?? null,
        deep:
          deep?.depth_m === undefined || typeof deep.water !== "number"
            ? null
            : {
                at_m: deep.depth_m,
                water_C: deep.water,
                layers: surface_C !== undefined && showsLayers(surface_C, deep.water),
              },
        secchiRatio: secchiRatio === undefined ? null : roundTo(secchiRatio, 2),
        looks: looks ?? null,
        phase: phase ?? null,
        bestWeeks_d: roundTo(bestWeeks_d, 1),
        laterWeeks_d: roundTo(laterWeeks_d, 1),
      };
    },
  );
}

/** Somebody saw the lake open, or its date is on record, and nothing speaks against it. */
export const isObserved = (lake: LakeSeason): boolean =>
  lake.statements.some(({ open }, place) => open && !isDoubted(lake, place));

/** All that is told of one lake. */
export function forecastOf(
  lake: LakeSeason,
  evidence: LakeForecast["evidence"],
  moment: Moment,
): LakeForecast {
  const { today, window, dateOf } = moment;
  const phases = windowsOf(lake, moment);
  return {
    iceOff: {
      ...spreadOf(daysOf(lake, "iceOff"), dateOf),
      status: isObserved(lake) ? "observed" : "forecast",
      openByNow: chanceBy(lake.spring, "iceOff", today),
    },
    phases,
    laterWeeks: spreadOf(daysOf(lake, "later"), dateOf),
    heat: heatOf(lake, moment),
    readings: readingsOf(lake, dateOf),
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
