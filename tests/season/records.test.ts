import { describe, expect, test } from "vitest";
import { dateOfSeasonDay } from "../../build/model/calendar.ts";
import { pastSpringsOf } from "../../build/season/after-ice/lake-history.ts";
import { iceOffBySeason } from "../../build/season/records.ts";
import { day, lakeOf, withRow } from "./club.ts";

const where = { file: "lakes/alder.yaml", line: 1, column: 1 };

describe("iceOffBySeason", () => {
  test("a day is itself, days of season count from 1 January", () => {
    expect(iceOffBySeason(lakeOf("alder", { 2025: 110 }), "north").get(2025)).toEqual({ from: 110, to: 110 });
  });

  test("a season written three times is its median day", () => {
    const lake = [105, 140].reduce(
      (so_far, dayOfSeason) =>
        withRow(so_far, { season: 2025, on: dateOfSeasonDay(dayOfSeason, 2025, "north") }),
      lakeOf("alder", { 2025: 110 }),
    );
    expect(iceOffBySeason(lake, "north").get(2025)).toEqual({ from: 110, to: 110 });
  });

  test("still iced on the 11th, open by the 18th: between the end of the one and the end of the other", () => {
    const lake = withRow(lakeOf("alder"), { season: 2025, after: day("2025-05-11"), by: day("2025-05-18") });
    // 11 May is day 131
    expect(iceOffBySeason(lake, "north").get(2025)).toEqual({ from: 131.5, to: 138.5 });
  });

  test("iced one day and open the next is a known day", () => {
    const lake = withRow(lakeOf("alder"), { season: 2025, after: day("2025-05-11"), by: day("2025-05-12") });
    expect(iceOffBySeason(lake, "north").get(2025)).toEqual({ from: 132, to: 132 });
  });

  test("what is dated after the as-of date is not there, not even half a row", () => {
    const lake = withRow(lakeOf("alder", { 2024: 100, 2025: 110 }), {
      season: 2026,
      after: day("2026-05-01"),
      by: day("2026-05-09"),
    });
    const known = iceOffBySeason(lake, "north", day("2025-04-19"));
    expect([...known.keys()]).toEqual([2024]);
    const half = iceOffBySeason(lake, "north", day("2026-05-05")).get(2026);
    expect(half).toEqual({ from: 121.5, to: Number.POSITIVE_INFINITY });
  });

  test("south of the equator a season begins on 1 July", () => {
    const lake = withRow(lakeOf("alder"), { season: 2025, on: day("2025-10-01") });
    expect(iceOffBySeason(lake, "south").get(2025)).toEqual({ from: 93, to: 93 });
  });
});

describe("past springs", () => {
  const iceOff = new Map([
    [2024, { from: 100, to: 100 }],
    [2025, { from: 110, to: 110 }],
    [2026, { from: 105, to: 105 }],
  ]);
  const known = { season: 2026, asOf: day("2026-05-16"), hemisphere: "north" } as const;
  const turnover = (season: number, from: number, to: number) => ({
    season,
    from: dateOfSeasonDay(from, season, "north"),
    to: dateOfSeasonDay(to, season, "north"),
    where,
  });

  test("waits are counted from the ice-off of the same season; the season in progress is left out", () => {
    const seen = pastSpringsOf(
      {
        turnover: [turnover(2024, 110, 119), turnover(2025, 120, 131), turnover(2026, 110, 115)],
        lastGood: [{ season: 2025, on: dateOfSeasonDay(160, 2025, "north"), where }],
      },
      iceOff,
      known,
    );
    expect(seen).toEqual({ onset: [10, 10], clear: [20, 22], lastGood: [{ iceOff: 110, last: 160 }] });
  });

  test("a season whose ice-off is not known to the day says nothing", () => {
    const loose = new Map([[2024, { from: 98.5, to: 103.5 }]]);
    expect(pastSpringsOf({ turnover: [turnover(2024, 110, 119)], lastGood: [] }, loose, known).onset).toEqual(
      [],
    );
  });
});
