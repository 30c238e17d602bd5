import { describe, expect, test } from "vitest";
import type { Report } from "../../build/model/club.ts";
import { statementsByLake } from "../../build/season/statements.ts";
import { clubOf, reportOf } from "./club.ts";

/** 30 April 2026 is day 120 of its season. */
const DATE = "2026-04-30";
const T = 120;

const fits = (
  seen: Partial<Report>,
  iceOff: number,
  onset = iceOff + 10,
  clear = onset + 10,
): boolean | undefined =>
  statementsByLake(clubOf("2026-07-01", [reportOf("alder", DATE, seen)]), "north")
    .get("alder")?.[0]
    ?.fits({ iceOff, onset, clear });

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
  test("ice-off: open, and turnover has not begun", () => {
    expect(allowed({ phase: "ice-off" })).toEqual([T - 9, T]);
  });
  test("turnover: begun and not yet over", () => {
    expect(allowed({ phase: "turnover" })).toEqual([T - 19, T - 10]);
  });
  test("post-turnover: clear again", () => {
    expect(allowed({ phase: "post-turnover" })).toEqual([100, T - 20]);
  });
  test("ice and phase in one report are one statement: both must fit", () => {
    expect(fits({ ice: "off", phase: "turnover" }, T - 15)).toBe(true);
    expect(fits({ ice: "part", phase: "turnover" }, T - 15)).toBe(false);
  });
  test("a report of neither says nothing", () => {
    expect(fits({ water_C: 6 }, T)).toBeUndefined();
  });
});
