import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { addDays, dateOfSeasonDay, daysBetween } from "../../build/model/calendar.ts";
import type { IceState, Report } from "../../build/model/club.ts";
import { DAY_STATES, type DayState, PHASES } from "../../build/model/phase.ts";
import { forecastSeason, type SeasonForecast } from "../../build/season/season.ts";
import { lakeOf, moved, reportOf, SEASON, type SeasonClub } from "./club.ts";

/** The same clubs at every run. */
const RUNS = { seed: 20260516, numRuns: 5 };
const SLUGS = ["alder", "birch", "cedar", "dogwood"];

const seenOn = (lake: string, day: number, seen: Partial<Report>): Report =>
  reportOf(lake, dateOfSeasonDay(day, SEASON, "north"), seen);

const lakes = fc
  .tuple(
    fc.array(fc.integer({ min: 95, max: 125 }), { minLength: 4, maxLength: 4 }),
    fc.array(fc.integer({ min: -12, max: 12 }), { minLength: 5, maxLength: 5 }),
    fc.array(fc.boolean(), { minLength: 20, maxLength: 20 }),
    fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 20, maxLength: 20 }),
  )
  .map(([usual, springs, kept, errors]) =>
    SLUGS.map((slug, i) =>
      lakeOf(
        slug,
        Object.fromEntries(
          springs.flatMap((spring, y) =>
            kept[5 * i + y] === true
              ? [[2021 + y, (usual[i] ?? 110) + spring + (errors[5 * i + y] ?? 0)]]
              : [],
          ),
        ),
        { elevation_m: 200 + 70 * i },
      ),
    ),
  );

const reports = fc.array(
  fc
    .record({
      lake: fc.constantFrom(...SLUGS),
      day: fc.integer({ min: 85, max: 150 }),
      seen: fc.oneof(
        fc.constantFrom<IceState>("on", "part", "off").map((ice) => ({ ice })),
        fc.constantFrom(...PHASES).map((phase) => ({ phase })),
      ),
    })
    .map(({ lake, day, seen }) => seenOn(lake, day, seen)),
  { maxLength: 6 },
);

const clubs = fc.record({ lakes, reports, asOf: fc.integer({ min: 90, max: 150 }) }).map(
  ({ lakes, reports, asOf }): SeasonClub => ({
    season: SEASON,
    asOf: dateOfSeasonDay(asOf, SEASON, "north"),
    lakes,
    reports,
  }),
);

/** The largest difference of any chance of any lake on the days both tables hold, the second table moved back. */
function largestDifference(
  a: SeasonForecast,
  b: SeasonForecast,
  days = 0,
  states: readonly DayState[] = DAY_STATES,
): number {
  return Math.max(
    ...[...a.lakes].map(([slug, lake]) => {
      const other = new Map(b.lakes.get(slug)?.daily.map((row) => [addDays(row.date, -days), row]));
      return Math.max(
        ...lake.daily.map((row) =>
          Math.max(
            ...states.map((state) => Math.abs(row[state] - (other.get(row.date)?.[state] ?? row[state]))),
          ),
        ),
      );
    }),
  );
}
/** Chances are kept to four decimals: another order of sums may tip the last one. */
const LAST_DECIMAL = 1.001e-4;

describe("for any club", () => {
  test("each day's chances lie between 0 and 1 and sum to 1", () => {
    fc.assert(
      fc.property(clubs, (club) => {
        for (const { daily } of forecastSeason(club).lakes.values())
          for (const row of daily) {
            const chances = DAY_STATES.map((state) => row[state]);
            expect(Math.min(...chances)).toBeGreaterThanOrEqual(0);
            expect(Math.abs(chances.reduce((sum, chance) => sum + chance, 0) - 1)).toBeLessThan(1e-9);
          }
      }),
      RUNS,
    );
  });

  // What follows the ice depends on the sun as well, and moves by less.
  test("everything a number of days later gives the same ice that many days later", () => {
    fc.assert(
      fc.property(clubs, fc.integer({ min: -20, max: 20 }), (club, days) => {
        const later = forecastSeason(moved(club, days));
        expect(largestDifference(forecastSeason(club), later, days, ["iced"])).toBeLessThan(LAST_DECIMAL);
      }),
      RUNS,
    );
  });

  test("the order of lakes and of reports does not matter", () => {
    fc.assert(
      fc.property(clubs, (club) => {
        const turned = { ...club, lakes: [...club.lakes].reverse(), reports: [...club.reports].reverse() };
        expect(largestDifference(forecastSeason(club), forecastSeason(turned))).toBeLessThan(LAST_DECIMAL);
      }),
      RUNS,
    );
  });

  test("two lakes together are at least as good as the better and at most as good as both added", () => {
    fc.assert(
      fc.property(clubs, fc.integer({ min: 90, max: 170 }), (club, day) => {
        const forecast = forecastSeason(club);
        const date = dateOfSeasonDay(day, SEASON, "north");
        const [a, b] = [forecast.good("alder", date), forecast.good("birch", date)];
        const either = forecast.together("alder", "birch", date);
        expect(either).toBeGreaterThanOrEqual(Math.max(a, b) - 1e-12);
        expect(either).toBeLessThanOrEqual(Math.min(1, a + b) + 1e-12);
        expect(forecast.anyGood(SLUGS, date)).toBeGreaterThanOrEqual(either - 1e-9);
        expect(forecast.together("alder", "alder", date)).toBeCloseTo(a, 12);
      }),
      RUNS,
    );
  });
});

/**
 * The chance of "still iced" grows with the lake's ice-off day, so against no news it only ever makes it later. (Of two dates of "still
 * iced" the later one need not: far beyond belief it is taken for a mistake, and with other reports at hand it may speak for a slope
 * instead of a late spring.) The chance of "open" falls with the day where the lake was reported iced before. Where it was not, an opening
 * is likelier the nearer it lies before the report, so that a late first report may make an early lake later; but never later than itself.
 * Other lakes may answer the season's slope the other way, and move against both.
 */
describe("the first report of a season", () => {
  const middleDays = (forecast: SeasonForecast) =>
    SLUGS.map((slug) => forecast.lakes.get(slug)?.iceOff.p50 ?? "");

  test("that a lake is still iced makes no lake's ice-off earlier", () => {
    fc.assert(
      fc.property(lakes, fc.constantFrom(...SLUGS), fc.integer({ min: 60, max: 160 }), (lakes, slug, day) => {
        const asOf = dateOfSeasonDay(160, SEASON, "north");
        const before = middleDays(forecastSeason({ season: SEASON, asOf, lakes, reports: [] }));
        const after = middleDays(
          forecastSeason({ season: SEASON, asOf, lakes, reports: [seenOn(slug, day, { ice: "on" })] }),
        );
        after.forEach((date, i) => {
          expect(date >= (before[i] ?? "")).toBe(true);
        });
      }),
      RUNS,
    );
  });

  const middleAfter = (lakes: SeasonClub["lakes"], slug: string, reports: readonly Report[]): string =>
    forecastSeason({ season: SEASON, asOf: dateOfSeasonDay(160, SEASON, "north"), lakes, reports }).lakes.get(
      slug,
    )?.iceOff.p50 ?? "";

  test("that a lake is open makes its ice-off no later, where it was reported iced before", () => {
    fc.assert(
      fc.property(
        lakes,
        fc.constantFrom(...SLUGS),
        fc.integer({ min: 60, max: 140 }),
        fc.integer({ min: 1, max: 20 }),
        (lakes, slug, day, wait) => {
          const iced = seenOn(slug, day, { ice: "on" });
          const open = seenOn(slug, day + wait, { ice: "off" });
          const after = middleAfter(lakes, slug, [iced, open]);
          expect(after <= middleAfter(lakes, slug, [iced])).toBe(true);
        },
      ),
      RUNS,
    );
  });

  test("that a lake is open puts its ice-off no later than both the report and the day expected without it", () => {
    fc.assert(
      fc.property(lakes, fc.constantFrom(...SLUGS), fc.integer({ min: 60, max: 160 }), (lakes, slug, day) => {
        const open = seenOn(slug, day, { ice: "off" });
        const after = middleAfter(lakes, slug, [open]);
        const before = middleAfter(lakes, slug, []);
        expect(after <= before || after <= open.date).toBe(true);
      }),
      RUNS,
    );
  });

  test("within the range of springs on record, later ice on one lake means later ice-off on the others", () => {
    const club = [
      lakeOf("alder", { 2022: 108, 2023: 99, 2024: 95, 2025: 113 }),
      lakeOf("birch", { 2022: 112, 2023: 104, 2024: 100, 2025: 116 }),
    ];
    const middles = [92, 98, 104, 110].map((day) => {
      const forecast = forecastSeason({
        season: SEASON,
        asOf: dateOfSeasonDay(115, SEASON, "north"),
        lakes: club,
        reports: [seenOn("alder", day, { ice: "on" })],
      });
      return forecast.lakes.get("birch")?.iceOff.p50 ?? addDays(dateOfSeasonDay(1, SEASON, "north"), 0);
    });
    middles.slice(1).forEach((date, i) => {
      expect(daysBetween(middles[i] ?? date, date)).toBeGreaterThan(0);
    });
  });
});
