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
import type { Reading } from "./after-ice/readings.ts";
import type { Mark } from "./forecast.ts";
import { iceOffBySeason } from "./records.ts";
import { type DelayLaw, delayDensityRatio, USUAL_DELAY } from "./reporting-law.ts";
import type { SeasonEvidence, SeasonLake, SeasonReport } from "./season-evidence.ts";

/** Something seen on a lake this season, as a statement about its ice-off. */
export interface Statement {
  readonly lake: string;
  readonly date: CalendarDate;
  readonly day: number;
  readonly seen: Mark["seen"];
  /** Absent where nobody will be told of it. */
  readonly where?: SourceSpot;
  /** True when it can only be said of an open lake. */
  readonly open: boolean;
  /** The state it names; of the ice it says no more than that the lake is open. */
  readonly state?: Phase;
  fits(iceOff: number): boolean;
  /** Chance of the statement on a lake that opens on that day of season, in proportion. */
  likelihood(iceOff: number): number;
}

/** One report in fifty is taken to be wrong. No published source. */
const WRONG = 0.02;
/** A dated record is taken at its word: only one in ten thousand is taken to be wrong, and may then name any of 60 days. No published source. */
const WRONG_RECORD = 1e-4;
const WRONG_RECORDED_DAY = WRONG_RECORD / 60;
/** A report that is wrong is seldom wrong by many days: its chance falls off over so many, to a floor. Chosen on two open sets of records. */
const WRONG_FALL_D = 2;
const WRONG_FLOOR = 1e-5;
/** From "part" to open water takes a week at most. Common practice, no published source. */
const PART_DAYS = 7;

/** Chance of a report that is wrong by a number of days. */
const wrongBy = (days: number): number => Math.max(WRONG_FLOOR, WRONG * Math.exp(-days / WRONG_FALL_D));

/** Chance of "still iced on `day`" on a lake that opens on `iceOff`. */
export const stillIcedChance = (day: number, iceOff: number): number =>
  iceOff > day ? 1 - WRONG : wrongBy(day - iceOff);

/**
 * Chance of "open on `day`" on a lake that opens on `iceOff`.
 * @param delay the law of the first report of open water, where nothing was reported of the lake before; absent where the lake was
 * reported iced before, and of later reports
 */
export function openChance(day: number, iceOff: number, delay?: DelayLaw): number {
  if (iceOff > day) return wrongBy(iceOff - day);
  return (1 - WRONG) * (delay === undefined ? 1 : delayDensityRatio(delay, day - iceOff));
}

/** Chance of a dated record on a lake that opens on `iceOff`. */
export const datedChance = (day: number, iceOff: number): number =>
  iceOff === day ? 1 - WRONG : WRONG_RECORDED_DAY;

type Truth = Pick<Statement, "fits" | "likelihood">;

const eitherWay = (fits: Statement["fits"], wrong: number): Truth => ({
  fits,
  likelihood: (iceOff) => (fits(iceOff) ? 1 - WRONG : wrong),
});

const iceTruth = (ice: Exclude<IceState, "none">, t: number, delay?: DelayLaw): Truth =>
  ({
    on: {
      fits: (iceOff: number) => iceOff > t,
      likelihood: (iceOff: number) => stillIcedChance(t, iceOff),
    },
    part: eitherWay((iceOff) => iceOff >= t && iceOff <= t + PART_DAYS, WRONG),
    off: {
      fits: (iceOff: number) => iceOff <= t,
      likelihood: (iceOff: number) => openChance(t, iceOff, delay),
    },
  })[ice];

/** Surface water this warm is open water, degrees C. */
const OPEN_WATER_C = 6;

/** What readings of the water say of the ice: that the lake is open by then, or nothing. */
export const readingStatements = (readings: readonly Reading[]): readonly Pick<Statement, "likelihood">[] =>
  readings
    .filter(
      ({ surface_C, deep, secchiRatio, looks }) =>
        (surface_C ?? 0) >= OPEN_WATER_C || [deep, secchiRatio, looks].some((read) => read !== undefined),
    )
    .map(({ day }) => openTruth(day));

/** What can only be seen of an open lake. */
const openTruth = (t: number): Truth => eitherWay((iceOff) => iceOff <= t, WRONG);

/** One end of an interval record: like a report, but written with more care. */
const recordedEnd = (ice: "on" | "off", t: number): Truth => {
  const { fits, likelihood } = iceTruth(ice, t);
  return {
    fits,
    likelihood: (iceOff) => (fits(iceOff) ? 1 - WRONG : Math.min(WRONG_RECORD, likelihood(iceOff))),
  };
};

interface Seen {
  readonly day: number;
  readonly seen: Mark["seen"];
  readonly where: SourceSpot | undefined;
  readonly state?: Phase;
}

const statement = (
  lake: string,
  dateOf: (day: number) => CalendarDate,
  { day, seen, where, state }: Seen,
  truth: Truth,
): Statement => ({
  lake,
  date: dateOf(day),
  day,
  seen,
  ...(where === undefined ? {} : { where }),
  open: seen !== "ice on" && seen !== "ice part",
  ...(state === undefined ? {} : { state }),
  ...truth,
});

/** A lake's reports of this season as statements, in order of date; one that names ice and phase is two. */
function reportStatements(
  lake: string,
  reports: readonly (SeasonReport & { readonly day: number })[],
  dateOf: (day: number) => CalendarDate,
  icedBefore: (day: number) => boolean,
  delay: DelayLaw,
): Statement[] {
  const firstOff = reports.find(({ ice }) => ice === "off");
  return reports.flatMap((report) => {
    const { day, ice, phase, where } = report;
    const waits = report === firstOff && !icedBefore(day);
    return [
      ...(ice === undefined || ice === "none"
        ? []
        : [
            statement(
              lake,
              dateOf,
              { day, seen: `ice ${ice}`, where },
              iceTruth(ice, day, waits ? delay : undefined),
            ),
          ]),
      ...(phase === undefined
        ? []
        : [statement(lake, dateOf, { day, seen: phase, where, state: phase }, openTruth(day))]),
    ];
  });
}

/** This season's rows of a lake's own records, as they were known on the as-of date. */
function recordStatements(
  lake: SeasonLake,
  season: number,
  asOf: CalendarDate,
  hemisphere: Hemisphere,
  dateOf: (day: number) => CalendarDate,
): Statement[] {
  const make = (day: number, seen: Mark["seen"], where: SourceSpot | undefined, truth: Truth): Statement =>
    statement(
      lake.slug,
      dateOf,
      { day, seen, where, ...(seen === "turnover" ? { state: seen } : {}) },
      truth,
    );
  const rows = lake.iceOff.filter((record) => record.season === season);
  const [row] = rows;
  const days = iceOffBySeason({ ...lake, iceOff: rows }, hemisphere, asOf).get(season);
  const iceOff: Statement[] = [];
  if (row !== undefined && days !== undefined) {
    const [from, to] = [Math.floor(days.from), Math.floor(days.to)];
    if (days.from === days.to)
      iceOff.push(
        make(from, "ice off", row.where, {
          fits: (day) => day === from,
          likelihood: (day) => datedChance(from, day),
        }),
      );
    else {
      if (Number.isFinite(from)) iceOff.push(make(from, "ice on", row.where, recordedEnd("on", from)));
      if (Number.isFinite(to)) iceOff.push(make(to, "ice off", row.where, recordedEnd("off", to)));
    }
  }
  const turnover = lake.turnover
    .filter((record) => record.season === season && record.from <= asOf)
    .flatMap(({ from, to, where }) => {
      const [first, last] = [from, to].map((date) => seasonDay(date, season, hemisphere));
      if (first === undefined || last === undefined) return [];
      return [first, ...(to <= asOf ? [last] : [])].map((day) =>
        make(day, "turnover", where, openTruth(day)),
      );
    });
  return [...iceOff, ...turnover];
}

/** Everything seen this season up to the as-of date, lake by lake, in order of date. */
export function statementsByLake(
  club: SeasonEvidence,
  hemisphere: Hemisphere,
  delay: DelayLaw = USUAL_DELAY,
): ReadonlyMap<string, readonly Statement[]> {
  const { season, asOf } = club;
  const dateOf = (day: number): CalendarDate => dateOfSeasonDay(day, season, hemisphere);
  const reports = new Map(club.lakes.map(({ slug }) => [slug, [] as (SeasonReport & { day: number })[]]));
  for (const report of club.reports)
    if (report.date <= asOf && seasonOf(report.date, hemisphere) === season)
      reports.get(report.lake)?.push({ ...report, day: seasonDay(report.date, season, hemisphere) });
  return new Map(
    club.lakes.map((lake) => {
      const own = (reports.get(lake.slug) ?? []).sort((a, b) => a.day - b.day);
      const records = recordStatements(lake, season, asOf, hemisphere, dateOf);
      const icedBefore = (day: number): boolean =>
        own.some((report) => report.ice === "on" && report.day < day) ||
        records.some((record) => record.seen.startsWith("ice ") && record.day < day);
      const statements = [...records, ...reportStatements(lake.slug, own, dateOf, icedBefore, delay)];
      return [lake.slug, statements.sort((a, b) => a.day - b.day)];
    }),
  );
}
