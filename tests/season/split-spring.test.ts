import { describe, expect, test } from "vitest";
import { addDays, dateOfSeasonDay, daysBetween, seasonOf } from "../../build/model/calendar.ts";
import { forecastSeason } from "../../build/season/season.ts";
import open from "../reference/season-open-lakes.json" with { type: "json" };
import { clubOf, day, lakeOf, reportOf } from "./club.ts";

const SEASON = 2026;
const LAKES = open.lakes.map(({ slug, lat, lon, elevation_m, iceOff }) => {
  const records = Object.fromEntries(
    iceOff.map((date) => {
      const season = seasonOf(day(date), "north");
      return [season, daysBetween(dateOfSeasonDay(1, season, "north"), day(date)) + 1];
    }),
  );
  return lakeOf(slug, records, { position: { lat, lon }, elevation_m });
});
const usualOf = new Map(
  [...forecastSeason({ ...clubOf("2026-03-01", [], LAKES), season: SEASON }).lakes].map(
    ([slug, { evidence }]) => [slug, evidence.usualIceOff] as const,
  ),
);
const usual = (slug: string) => usualOf.get(slug) ?? day("2026-04-20");

/** Half of the lakes open early, the rest a fortnight late (NSIDC G01377, eight lakes); looked at while the late ones are iced. */
describe.each([
  ["every other lake", (i: number) => i % 2 === 0],
  ["the first four", (i: number) => i < 4],
  ["the last four", (i: number) => i >= 4],
  ["all but the first", (i: number) => i > 0],
  ["all but the last", (i: number) => i < 7],
] as const)("a split spring: %s early", (_, isEarly) => {
  const early = LAKES.filter((_lake, i) => isEarly(i));
  const late = LAKES.filter((_lake, i) => !isEarly(i));
  const opened = early.map(({ slug }, i) =>
    reportOf(slug, addDays(usual(slug), -5 - (i % 4)), { ice: "off" }),
  );

  test.each([-3, 0, 4, 8, 12, 16, 20, 25])(
    "still iced %i days from their usual dates: no middle day before it",
    (days) => {
      const iced = late.map(({ slug }) => reportOf(slug, addDays(usual(slug), days), { ice: "on" }));
      const asOf =
        [...opened, ...iced]
          .map(({ date }) => date)
          .sort()
          .at(-1) ?? day("2026-05-01");
      const forecast = forecastSeason({ ...clubOf(asOf, [...opened, ...iced], LAKES), season: SEASON });
      for (const { lake, date } of iced) {
        const middle = forecast.lakes.get(lake)?.iceOff.p50 ?? "";
        expect(middle > date).toBe(true);
      }
      expect(forecast.doubts.map(({ code }) => code)).not.toContain("median-before-ice");
    },
  );
});

describe("how uneven a spring is", () => {
  /** Every other lake opens `days` early and the rest as late, each seen on the day before and on its day. */
  const forecastAt = (days: number) => {
    const reports = LAKES.flatMap(({ slug }, i) => {
      const opened = addDays(usual(slug), i % 2 === 0 ? -days : days);
      return [reportOf(slug, addDays(opened, -1), { ice: "on" }), reportOf(slug, opened, { ice: "off" })];
    });
    return forecastSeason({ ...clubOf("2026-07-01", reports, LAKES), season: SEASON });
  };

  test.each([
    [0, false],
    [1, false],
    [8, true],
  ])("lakes %i days from their usual dates, both ways: named %s", (days, named) => {
    const { doubts, regions } = forecastAt(days);
    expect(doubts.some(({ code }) => code === "uneven-spring")).toBe(named);
    expect((regions[0]?.uneven ?? 0) > 0.5).toBe(named);
  });

  test("the more uneven, the larger its scatter: 0, 1, 4 and 8 days", () => {
    const scatters = [0, 1, 4, 8].map((days) => forecastAt(days).regions[0]?.scatter ?? 0);
    expect(scatters).toEqual([...scatters].sort((a, b) => a - b));
    expect(scatters[0]).toBeLessThan(1);
  });
});
