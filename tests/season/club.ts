import {
  addDays,
  type CalendarDate,
  dateOfSeasonDay,
  parseCalendarDate,
} from "../../build/model/calendar.ts";
import {
  type Club,
  type IceOffRecord,
  type Lake,
  type Report,
  USUAL_TURNOVER,
} from "../../build/model/club.ts";

export type SeasonClub = Pick<Club, "season" | "asOf" | "lakes" | "reports"> &
  Partial<Pick<Club, "indicators">>;

export const SEASON = 2026;

/** A day that is certainly in the calendar. */
export function day(text: string): CalendarDate {
  const date = parseCalendarDate(text);
  if (date === undefined) throw new Error(`not a day: ${text}`);
  return date;
}

const spot = (file: string, line = 1) => ({ file, line, column: 3 });

/** A lake in the north that opened on these days of these seasons. */
export function lakeOf(
  slug: string,
  iceOff: Readonly<Record<number, number>> = {},
  change: Partial<Lake> = {},
): Lake {
  return {
    slug,
    name: slug,
    position: { lat: 45, lon: -106 },
    hazards: [],
    places: [],
    depthBands: {},
    iceOff: Object.entries(iceOff).map(([season, dayOfSeason]) => ({
      season: Number(season),
      on: dateOfSeasonDay(dayOfSeason, Number(season), "north"),
      where: spot(`lakes/${slug}.yaml`),
    })),
    turnover: [],
    turnoverRule: USUAL_TURNOVER,
    lastGood: [],
    ...change,
  };
}

/** One more ice-off row. */
export const withRow = (lake: Lake, row: object): Lake => ({
  ...lake,
  iceOff: [...lake.iceOff, { where: spot(`lakes/${lake.slug}.yaml`, 9), ...row } as IceOffRecord],
});

export const reportOf = (lake: string, date: string, seen: Partial<Report>, line = 1): Report => ({
  lake,
  date: day(date),
  where: spot("reports/2026.yaml", line),
  catches: [],
  samples: [],
  ...seen,
});

/** Four lakes with four seasons, two of them without gaps; the days of the reference implementation's first set, moved on to 2022 to 2025. */
export const FOUR_LAKES: readonly Lake[] = [
  lakeOf("alder", { 2022: 108, 2023: 99, 2024: 95, 2025: 113 }, { elevation_m: 200 }),
  lakeOf("birch", { 2022: 112, 2023: 104, 2025: 116 }, { elevation_m: 250 }),
  lakeOf("cedar", { 2022: 120, 2024: 110, 2025: 126 }, { elevation_m: 420 }),
  lakeOf("dogwood", { 2023: 118, 2024: 112, 2025: 130 }, { elevation_m: 450 }),
];

export const clubOf = (
  asOf: string,
  reports: readonly Report[] = [],
  lakes: readonly Lake[] = FOUR_LAKES,
): SeasonClub => ({ season: SEASON, asOf: day(asOf), lakes, reports });

/** The same club with everything a number of days later. */
export function moved(club: SeasonClub, days: number): SeasonClub {
  const later = (date: CalendarDate): CalendarDate => addDays(date, days);
  return {
    season: club.season,
    asOf: later(club.asOf),
    lakes: club.lakes.map((lake) => ({
      ...lake,
      iceOff: lake.iceOff.map((row) => ("on" in row ? { ...row, on: later(row.on) } : row)),
    })),
    reports: club.reports.map((report) => ({ ...report, date: later(report.date) })),
  };
}
