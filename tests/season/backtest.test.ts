import { describe, expect, test } from "vitest";
import { seasonOf } from "../../build/model/calendar.ts";
import type { Lake } from "../../build/model/club.ts";
import { unmemoized } from "../../build/model/memoize.ts";
import { backtest } from "../../build/season/backtest/backtest.ts";
import { shiftedForecast, usualForecast } from "../../build/season/backtest/baselines.ts";
import { quantile } from "../../build/season/backtest/scoring.ts";
import { REPORTING_MODES } from "../../build/season/backtest/simulated-reports.ts";
import { backtestRowSchema } from "../../build/season/forecast.ts";
import open from "../reference/season-open-lakes.json" with { type: "json" };
import { day, lakeOf } from "./club.ts";
import { normalCdf } from "./normal-cdf.ts";

const LAKES: readonly Lake[] = open.lakes.map(({ slug, name, lat, lon, elevation_m, iceOff }) => ({
  ...lakeOf(slug),
  name,
  position: { lat, lon },
  elevation_m,
  iceOff: iceOff.map((date) => ({
    season: seasonOf(day(date), "north"),
    on: day(date),
    where: { file: `lakes/${slug}.yaml`, line: 1, column: 1 },
  })),
}));

const PERFECT = { modes: ["perfect"], pastOnly: false } as const;
/** The row before any report. */
const backtestBefore = (lakes: readonly Lake[], season?: number) =>
  backtest(lakes, season, unmemoized, PERFECT)?.[0];

describe("backtest on eight open lakes over fifteen seasons (NSIDC G01377)", () => {
  const all = backtest(LAKES) ?? [];
  const rows = all.filter(({ reporting }) => reporting === "perfect");
  const at = (moment: string) => rows.find((row) => row.moment === moment);

  test("gives every moment by the schema, with fewer lakes left at each", () => {
    expect(rows.map(({ moment }) => moment)).toEqual(["before", "first", "25%", "50%", "75%"]);
    for (const row of all) expect(backtestRowSchema.safeParse(row).error?.issues).toBeUndefined();
    const counts = rows.map(({ n }) => n);
    expect(counts[0]).toBe(8 * 15);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
  });

  test("scores every way of reporting, and counts the seasons", () => {
    expect(all.map(({ reporting, moment }) => `${reporting} ${moment}`)).toEqual([
      "perfect before",
      ...REPORTING_MODES.flatMap((mode) => ["first", "25%", "50%", "75%"].map((share) => `${mode} ${share}`)),
    ]);
    for (const { moment, seasons } of all) {
      expect(seasons).toBeGreaterThan(10);
      expect(seasons).toBeLessThanOrEqual(15);
      if (moment === "before" || moment === "first") expect(seasons).toBe(15);
    }
  });

  /**
   * With the weighing of reports that this model replaced (all wrong reports alike, no delays, no silence, no scatter) coverage fails for
   * openings alone from 25 % on (59, 30 and 24 %), the distance to the shifted date for them in every row and for "dates4" at the first
   * and at 25 %, and the opening's own day in every mode at the first and at 25 %. Its brackets held in the two other modes.
   */
  describe.each([
    ["dates4", 0.6],
    ["delay4", 1],
    ["offonly", 1.2],
  ] as const)("%s", (mode, opening_d) => {
    test.each(["first", "25%", "50%", "75%"])("at %s the bracket holds about what it says", (moment) => {
      const row = all.find((one) => one.reporting === mode && one.moment === moment);
      // as few as 27 forecasts of seasons that err together
      expect(row?.model.cover80).toBeGreaterThan(0.7);
      expect(row?.model.cover80).toBeLessThan(0.96);
    });

    test.each(["first", "25%", "50%", "75%"])(
      "at %s it is at most a tenth worse than the shifted usual date",
      (moment) => {
        const row = all.find((one) => one.reporting === mode && one.moment === moment);
        expect(row?.model.crps).toBeLessThan(1.1 * (row?.shifted.crps ?? 0));
      },
    );

    test.each([
      ["first", 1.25],
      ["25%", 1],
      ["50%", 1],
      ["75%", 1],
    ] as const)("at %s open lakes are dated to a day or so", (moment, wider) => {
      const row = all.find((one) => one.reporting === mode && one.moment === moment);
      // the whole sets of open records: 0.3 to 0.9 days by mode; with reports that are wrong at any distance alike, 1.0 to 1.7
      expect(row?.opening?.crps).toBeLessThan(wider * opening_d);
    });
  });

  test("before any news the lake's own history is hard to beat", () => {
    const row = at("before");
    expect(row?.model.mae).toBeGreaterThan(0.85 * (row?.baseline.mae ?? 0));
  });

  test.each(["25%", "50%"])(
    "when %s have opened the model errs at most half as much as the lakes' own history",
    (moment) => {
      // on the whole set of 22 lakes the reference implementation errs 1.82 against 5.33 days, and 1.47 against 5.81
      const row = at(moment);
      expect(row?.model.mae).toBeLessThan(0.5 * (row?.baseline.mae ?? 0));
      expect(row?.model.crps).toBeLessThan(0.5 * (row?.baseline.crps ?? 0));
    },
  );

  test("intervals hold about what they say", () => {
    for (const { model } of rows.slice(0, 4)) {
      expect(Math.abs(model.cover80 - 0.8)).toBeLessThan(0.15);
      expect(Math.abs(model.cover50 - 0.5)).toBeLessThan(0.2);
    }
  });

  test("the season in progress is not scored", () => {
    expect(backtestBefore(LAKES, 1999)?.n).toBe(8 * 14);
  });

  describe("what was not known is not used", () => {
    /** Only 2025 can be scored, 20 days late: no other season has six lakes. */
    const club = (later: readonly number[]) =>
      later.map((days, i) => {
        const past = i < 3 ? { 2019: 4, 2020: -5, 2021: 1 } : { 2022: 6, 2023: -2, 2024: -4 };
        const others = Object.entries(past).map(([season, spring]) => [season, 100 + 3 * i + spring]);
        return lakeOf(`lake-${i}`, { ...Object.fromEntries(others), 2025: 120 + 3 * i + days });
      });
    const rowAt = (moment: string, later: readonly number[]) =>
      backtest(club(later), undefined, unmemoized, PERFECT)?.find((row) => row.moment === moment);

    test("the season left out: forecasts before any news stay where they were when it moves", () => {
      const [row, moved] = [rowAt("before", [0, 0, 0, 0, 0, 0]), rowAt("before", [12, 12, 12, 12, 12, 12])];
      expect(row?.n).toBe(6);
      expect((moved?.model.mae ?? 0) - (row?.model.mae ?? 0)).toBeCloseTo(12, 9);
      expect((moved?.baseline.mae ?? 0) - (row?.baseline.mae ?? 0)).toBeCloseTo(12, 9);
    });

    test("the days still to come: forecasts after the first opening stay when three of the five others move", () => {
      const [row, moved] = [rowAt("first", [0, 0, 0, 0, 0, 0]), rowAt("first", [0, 0, 0, 12, 12, 12])];
      expect(row?.n).toBe(5);
      expect((moved?.model.mae ?? 0) - (row?.model.mae ?? 0)).toBeCloseTo((12 * 3) / 5, 9);
    });
  });

  test("a club with five lakes or with three seasons has too little to score", () => {
    expect(backtest(LAKES.slice(0, 5))).toBeNull();
    expect(backtest(LAKES.map((lake) => ({ ...lake, iceOff: lake.iceOff.slice(0, 3) })))).toBeNull();
    expect(backtest([])).toBeNull();
    expect(backtestBefore(LAKES.map((lake) => ({ ...lake, iceOff: lake.iceOff.slice(0, 4) })))?.n).toBe(
      8 * 4,
    );
  });
});

describe("usualForecast", () => {
  const past = [100, 104, 107, 111, 118];

  test("shifted, it moves by the mean anomaly of the lakes already open, with a spread of 4 days", () => {
    const { firstDay, by } = shiftedForecast(past, [-6, -2], undefined);
    expect(quantile(shiftedForecast(past, [-6, -2], undefined), 0.5)).toBe(104);
    expect(by[100 - firstDay]).toBeCloseTo(normalCdf((100.5 - 104) / 4), 2);
  });

  test("is a normal of the past mean and standard deviation", () => {
    // mean 108, sample standard deviation sqrt(190 / 4) = 6.89
    expect(quantile(usualForecast(past, undefined), 0.5)).toBe(108);
    const { firstDay, by } = usualForecast(past, undefined);
    expect(by[100 - firstDay]).toBeCloseTo(normalCdf((100.5 - 108) / Math.sqrt(190 / 4)), 3);
  });

  test("is cut off at the last day seen iced", () => {
    const cut = usualForecast(past, 112);
    expect(cut.firstDay).toBe(113);
    const tail = 1 - normalCdf((112.5 - 108) / Math.sqrt(190 / 4));
    expect(cut.by[2]).toBeCloseTo((normalCdf((115.5 - 108) / Math.sqrt(190 / 4)) - (1 - tail)) / tail, 2);
  });

  test("still works when the lake is iced long after any year on record", () => {
    expect(quantile(usualForecast(past, 250), 0.5)).toBe(251);
  });
});
