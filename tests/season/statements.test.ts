import { describe, expect, test } from "vitest";
import type { Report } from "../../build/model/club.ts";
import { type Statement, statementsByLake } from "../../build/season/statements.ts";
import { clubOf, day, lakeOf, reportOf, withRow } from "./club.ts";

/** 30 April 2026 is day 120 of its season. */
const DATE = "2026-04-30";
const T = 120;

const fits = (seen: Partial<Report>, iceOff: number): boolean | undefined =>
  statementsByLake(clubOf("2026-07-01", [reportOf("alder", DATE, seen)]), "north")
    .get("alder")?.[0]
    ?.fits(iceOff);

const statementsOf = (...reports: Report[]) =>
  statementsByLake(clubOf("2026-07-01", reports), "north").get("alder") ?? [];
const seenOf = (...reports: Report[]) => statementsOf(...reports).map(({ seen }) => seen);
const chance = (statement: Statement | undefined, iceOff: number): number =>
  statement?.likelihood(iceOff) ?? Number.NaN;

/** The first and the last ice-off day that a statement allows, among days 100 to 140. */
const allowed = (seen: Partial<Report>): [number | undefined, number | undefined] => {
  const days = Array.from({ length: 41 }, (_, i) => 100 + i).filter((day) => fits(seen, day) === true);
  return [days[0], days.at(-1)];
};

describe("what a report on day 120 says (season model, section 2)", () => {
  test("ice on: it opens later", () => {
    expect(allowed({ ice: "on" })).toEqual([T + 1, 140]);
  });
  test("ice part: it opens that day or within 7 days", () => {
    expect(allowed({ ice: "part" })).toEqual([T, T + 7]);
  });
  test("ice off: it has opened by then", () => {
    expect(allowed({ ice: "off" })).toEqual([100, T]);
  });
  test.each(["ice-off", "turnover", "post-turnover", "later-weeks"] as const)("%s: it is open", (phase) => {
    expect(allowed({ phase })).toEqual([100, T]);
  });
  test("ice and phase in one report are two statements", () => {
    expect(seenOf(reportOf("alder", DATE, { ice: "off", phase: "turnover" }))).toEqual([
      "ice off",
      "turnover",
    ]);
  });
  test("a report of neither says nothing", () => {
    expect(fits({ water_C: 6 }, T)).toBeUndefined();
  });
});

/** Likelihoods of the forecast's design: one report in fifty wrong, falling off by exp(-n / 2) to 1e-5; delays by 1 + g / 4 to the power -2. */
describe("chance of a report by ice-off day", () => {
  const on = reportOf("alder", DATE, { ice: "on" });
  const off = reportOf("alder", DATE, { ice: "off" });

  test("ice on is hardly wrong by many days", () => {
    const [statement] = statementsOf(on);
    expect(chance(statement, T + 1)).toBe(0.98);
    expect(chance(statement, T)).toBe(0.02);
    expect(chance(statement, T - 4)).toBeCloseTo(0.02 * Math.exp(-2), 12);
    expect(chance(statement, T - 30)).toBe(1e-5);
  });

  test("the first open water of a lake without an earlier look waits by the delay law, up to 40 days", () => {
    const [statement] = statementsOf(off);
    expect(chance(statement, T)).toBe(0.98);
    expect(chance(statement, T - 4)).toBeCloseTo(0.98 / 4, 12);
    expect(chance(statement, T - 40)).toBeCloseTo(0.98 / 121, 12);
    expect(chance(statement, T - 60)).toBe(chance(statement, T - 40));
    expect(chance(statement, T + 2)).toBeCloseTo(0.02 * Math.exp(-1), 12);
  });

  test.each([
    ["ice on before it", reportOf("alder", "2026-04-20", { ice: "on" })],
    ["another report of open water before it", reportOf("alder", "2026-04-20", { ice: "off" })],
  ])("after %s it says no more than that the lake is open", (_, earlier) => {
    const statement = statementsOf(earlier, off).at(-1);
    expect(chance(statement, T - 9)).toBe(0.98);
    expect(chance(statement, T)).toBe(0.98);
  });

  test("partly open water before it is no look at ice", () => {
    const statement = statementsOf(reportOf("alder", "2026-04-20", { ice: "part" }), off).at(-1);
    expect(chance(statement, T - 4)).toBeCloseTo(0.98 / 4, 12);
  });

  test("each end of an interval record is wrong once in ten thousand at most", () => {
    const lake = withRow(lakeOf("alder"), { season: 2026, after: day("2026-04-20"), by: day(DATE) });
    const [after, by] = statementsByLake(clubOf("2026-07-01", [], [lake]), "north").get("alder") ?? [];
    expect([chance(after, 111), chance(by, 111)]).toEqual([0.98, 0.98]);
    expect([chance(after, 110), chance(by, T + 1)]).toEqual([1e-4, 1e-4]);
    expect(chance(after, 80)).toBe(1e-5);
  });
});
