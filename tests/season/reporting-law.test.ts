import { describe, expect, test } from "vitest";
import {
  learnReporting,
  silenceChance,
  USUAL_DELAY,
  watchChanceOf,
} from "../../build/season/reporting-law.ts";
import { clubOf, lakeOf, reportOf } from "./club.ts";

/** Day 110 of 2025 is 20 April, of 2024 19 April. */
const LAKES = [lakeOf("alder", { 2024: 110, 2025: 110 }), lakeOf("birch", { 2025: 110 }), lakeOf("cedar")];
const learn = (...reports: ReturnType<typeof reportOf>[]) =>
  learnReporting(clubOf("2026-04-20", reports, LAKES), "north");

describe("delays are learnt", () => {
  test("from the first open water of a lake and spring with a recorded day; a report too early counts as none", () => {
    const { delay, delays_d, delaySeasons } = learn(
      reportOf("alder", "2025-04-23", { ice: "off" }),
      reportOf("alder", "2025-04-29", { ice: "off" }),
      reportOf("alder", "2024-04-18", { ice: "off" }),
    );
    expect([...delays_d].sort()).toEqual([0, 3]);
    expect(delaySeasons).toEqual([2024, 2025]);
    // two delays of 3 and 0 days: shape 1 + 2, theta 4 + 3
    expect(delay).toEqual({ shape: 3, theta_d: 7 });
  });

  test.each([
    [
      "where the lake was seen iced before",
      [reportOf("alder", "2025-04-15", { ice: "on" }), reportOf("alder", "2025-04-23", { ice: "off" })],
    ],
    ["without a recorded day", [reportOf("cedar", "2025-04-23", { ice: "off" })]],
    ["of the season in progress", [reportOf("alder", "2026-04-18", { ice: "off" })]],
  ])("not %s", (_, reports) => {
    expect(learn(...reports).delay).toEqual(USUAL_DELAY);
  });
});

describe("visits", () => {
  const reports = [2021, 2022, 2023, 2024, 2025].flatMap((year) => [
    reportOf("alder", `${year}-04-10`, { ice: "on" }),
    ...(year > 2023 ? [reportOf("birch", `${year}-04-12`, { ice: "part" })] : []),
  ]);
  const law = learn(...reports, reportOf("cedar", "2013-04-10", { ice: "on" }));

  test("are counted over the last ten springs with reports of ice", () => {
    expect(law.visitSeasons).toEqual([2021, 2022, 2023, 2024, 2025]);
    expect(Object.fromEntries(law.visits)).toEqual({ alder: 5, birch: 2, cedar: 0 });
  });

  test("an owner's word goes before them", () => {
    expect(watchChanceOf({ slug: "alder", watched: "no" }, law, true)).toBe(0);
    expect(watchChanceOf({ slug: "cedar", watched: "yes" }, law, false)).toBe(0.95);
    // (1.2 + 2) / (2 + 5)
    expect(watchChanceOf({ slug: "birch" }, law, false)).toBeCloseTo(3.2 / 7, 12);
  });
});

test("silence of a lake that opened 4 days before the last report: unwatched, or not yet reported", () => {
  // 0.4 + 0.6 (1 + 4 / 4)^-1
  expect(silenceChance(0.6, USUAL_DELAY, 4)).toBeCloseTo(0.7, 12);
  expect(silenceChance(0.6, USUAL_DELAY, -3)).toBe(1);
  expect(silenceChance(0.6, USUAL_DELAY, 90)).toBe(silenceChance(0.6, USUAL_DELAY, 40));
});
