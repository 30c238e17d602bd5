import {
  type CalendarDate,
  dateOfSeasonDay,
  type Hemisphere,
  seasonDay,
  seasonOf,
} from "../model/calendar.ts";
import type { IceState } from "../model/club.ts";
import type { SourceSpot } from "../model/diagnostic.ts";
import type { Phase } from "../model/phase.ts";
import type { Mark } from "./forecast.ts";
import { iceOffBySeason } from "./records.ts";
import type { SeasonEvidence, SeasonLake, SeasonReport } from "./season-evidence.ts";

/** One possible spring of a lake, in days of season. */
export interface SpringDays {
  /** First day of open water. */
  readonly iceOff: number;
  /** First cloudy day. */
  readonly onset: number;
  /** First clear day after turnover. */
  readonly clear: number;
}

/** Something seen on a lake this season, as a statement about its spring. */
export interface Statement {
  readonly lake: string;
  readonly date: CalendarDate;
  readonly day: number;
  readonly seen: Mark["seen"];
  /** Absent where nobody will be told of it. */
  readonly where?: SourceSpot;
  /** True when it can only be said of an open lake. */
  readonly open: boolean;
  /** True when it speaks of turnover, not of ice alone. */
  readonly ofTurnover: boolean;
  fits(spring: SpringDays): boolean;
  /** Chance of the statement in a spring it does not fit. */
  readonly ifWrong: number;
}

/** One report in fifty is taken to be wrong. No published source. */
export const WRONG = 0.02;
/** A dated record is taken at its word: only one in ten thousand is taken to be wrong, and may then name any of 60 days. No published source. */
const WRONG_RECORD = 1e-4;
export const WRONG_RECORDED_DAY = WRONG_RECORD / 60;
/** From "part" to open water takes a week at most. Common practice, no published source. */
const PART_DAYS = 7;

type Fits = (spring: SpringDays) => boolean;

const iceFits = (ice: IceState, t: number): Fits =>
  ({
    on: ({ iceOff }: SpringDays) => iceOff > t,
    part: ({ iceOff }: SpringDays) => iceOff >= t && iceOff <= t + PART_DAYS,
    off: ({ iceOff }: SpringDays) => iceOff <= t,
  })[ice];

const phaseFits = (phase: Phase, t: number): Fits =>
  ({
    "ice-off": ({ iceOff, onset }: SpringDays) => iceOff <= t && t < onset,
    turnover: ({ onset, clear }: SpringDays) => onset <= t && t < clear,
    "post-turnover": ({ clear }: SpringDays) => clear <= t,
  })[phase];

/** A report as one statement: when it names ice and phase, both must fit. A report of neither says nothing here. */
function statementOf(report: SeasonReport, season: number, hemisphere: Hemisphere): Statement | undefined {
  const { lake, date, ice, phase, where } = report;
  const day = seasonDay(date, season, hemisphere);
  const parts = [
    ...(ice === undefined ? [] : [iceFits(ice, day)]),
    ...(phase === undefined ? [] : [phaseFits(phase, day)]),
  ];
  const seen = phase ?? (ice === undefined ? undefined : (`ice ${ice}` as const));
  if (seen === undefined) return undefined;
  return {
    lake,
    date,
    day,
    seen,
    ...(where === undefined ? {} : { where }),
    open: phase !== undefined || ice === "off",
    ofTurnover: phase !== undefined,
    fits: (spring) => parts.every((part) => part(spring)),
    ifWrong: WRONG,
  };
}

/** This season's rows of a lake's own records, as they were known on the as-of date. */
function recordStatements(
  lake: SeasonLake,
  season: number,
  asOf: CalendarDate,
  hemisphere: Hemisphere,
): Statement[] {
  const make = (
    day: number,
    seen: Mark["seen"],
    where: SourceSpot | undefined,
    ifWrong: number,
    fits: Fits,
  ): Statement => ({
    lake: lake.slug,
    date: dateOfSeasonDay(day, season, hemisphere),
    day,
    seen,
    ...(where === undefined ? {} : { where }),
    open: seen !== "ice on",
    ofTurnover: seen === "turnover",
    fits,
    ifWrong,
  });
  const dayOf = (date: CalendarDate): number => seasonDay(date, season, hemisphere);
  const rows = lake.iceOff.filter((record) => record.season === season);
  const [row] = rows;
  const days = iceOffBySeason({ ...lake, iceOff: rows }, hemisphere, asOf).get(season);
  const iceOff: Statement[] = [];
  if (row !== undefined && days !== undefined) {
    const [from, to] = [Math.floor(days.from), Math.floor(days.to)];
    if (days.from === days.to)
      iceOff.push(make(from, "ice off", row.where, WRONG_RECORDED_DAY, (spring) => spring.iceOff === from));
    else {
      if (Number.isFinite(from))
        iceOff.push(make(from, "ice on", row.where, WRONG_RECORD, iceFits("on", from)));
      if (Number.isFinite(to)) iceOff.push(make(to, "ice off", row.where, WRONG_RECORD, iceFits("off", to)));
    }
  }
  const turnover = lake.turnover
    .filter((record) => record.season === season && record.from <= asOf)
    .flatMap(({ from, to, where }) => {
      const [first, last] = [dayOf(from), dayOf(to)];
      return [
        make(first, "turnover", where, WRONG_RECORDED_DAY, ({ onset }) => onset === first),
        ...(to <= asOf
          ? [make(last, "turnover", where, WRONG_RECORDED_DAY, ({ clear }) => clear === last + 1)]
          : []),
      ];
    });
  return [...iceOff, ...turnover];
}

/** Everything seen this season up to the as-of date, lake by lake, in order of date. */
export function statementsByLake(
  club: SeasonEvidence,
  hemisphere: Hemisphere,
): ReadonlyMap<string, readonly Statement[]> {
  const { season, asOf } = club;
  const byLake = new Map<string, Statement[]>();
  for (const lake of club.lakes) byLake.set(lake.slug, recordStatements(lake, season, asOf, hemisphere));
  for (const report of club.reports) {
    if (report.date > asOf || seasonOf(report.date, hemisphere) !== season) continue;
    const statement = statementOf(report, season, hemisphere);
    if (statement !== undefined) byLake.get(report.lake)?.push(statement);
  }
  for (const statements of byLake.values()) statements.sort((a, b) => a.day - b.day);
  return byLake;
}
