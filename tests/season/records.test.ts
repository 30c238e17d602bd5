import { describe, expect, test } from "vitest";
import { dateOfSeasonDay } from "../../build/model/calendar.ts";
import { iceOffBySeason } from "../../build/season/records.ts";
import { turnoverCases } from "../../build/season/turnover-times.ts";
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

describe("turnoverCases", () => {
  const cases = (change: object) => {
    const lake = lakeOf("alder", { 2024: 100, 2025: 110 }, change);
    return turnoverCases(lake, iceOffBySeason(lake, "north"), 2026, day("2026-05-16"), "north");
  };
  const chanceOfOnset = (found: ReturnType<typeof cases>, onset: number): number =>
    found.filter((one) => one.onset === onset).reduce((sum, { chance }) => sum + chance, 0);

  test("the club's rule: each of 8 days as likely as another", () => {
    for (let onset = 8; onset <= 15; onset++) expect(chanceOfOnset(cases({}), onset)).toBeCloseTo(1 / 8, 12);
    expect(chanceOfOnset(cases({}), 16)).toBe(0);
  });

  test("two turnovers seen on day 10 weigh 2 beside the rule's 8", () => {
    const seen = cases({
      turnover: [
        {
          season: 2024,
          from: dateOfSeasonDay(110, 2024, "north"),
          to: dateOfSeasonDay(119, 2024, "north"),
          where,
        },
        {
          season: 2025,
          from: dateOfSeasonDay(120, 2025, "north"),
          to: dateOfSeasonDay(131, 2025, "north"),
          where,
        },
      ],
    });
    expect(chanceOfOnset(seen, 10)).toBeCloseTo((1 + 2) / 10, 12);
    expect(chanceOfOnset(seen, 9)).toBeCloseTo(1 / 10, 12);
    const lasting10 = seen
      .filter(({ duration }) => duration === 10)
      .reduce((sum, { chance }) => sum + chance, 0);
    expect(lasting10).toBeCloseTo((1 + 1) / 10, 12);
  });

  test("a turnover outside the rule widens it; this season's own record and later ones do not count", () => {
    const seen = cases({
      turnover: [
        {
          season: 2025,
          from: dateOfSeasonDay(115, 2025, "north"),
          to: dateOfSeasonDay(119, 2025, "north"),
          where,
        },
        { season: 2026, from: day("2026-05-01"), to: day("2026-05-10"), where },
        { season: 2027, from: day("2027-05-01"), to: day("2027-05-10"), where },
      ],
    });
    expect(chanceOfOnset(seen, 5)).toBeCloseTo(1 / 9, 12);
    const lasting10 = seen.filter(({ duration }) => duration === 10);
    expect(lasting10.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1 / 9, 12);
  });

  test("a lake that does not turn over has one case", () => {
    expect(cases({ turnoverRule: { turnsOver: false } })).toEqual([{ onset: 15, duration: 0, chance: 1 }]);
  });
});
