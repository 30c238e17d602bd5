import { expect, test } from "vitest";
import { pastState } from "../../build/season/past-state.ts";
import { day, lakeOf, withRow } from "./club.ts";

// The likeliest states of a lake at 43 N, 300 m, 50 ha and 12 m deep that opened on 10 April, its usual day, by a second
// program of the model that takes in every chance by itself: turnover 81 % on day 14 and 74 % on day 21, best weeks 51 and
// 55 % on days 28 and 35, later weeks 61 and 85 % on days 42 and 49. Turnover begins 8 to 15 days after ice-off (common practice).
const OPEN = lakeOf(
  "alder",
  { 2025: 100 },
  { position: { lat: 43, lon: -106 }, elevation_m: 300, area_ha: 50, maxDepth_m: 12 },
); // 10 April 2025
const stateOn = (lake: typeof OPEN, date: string, asOf = "2026-05-01") =>
  pastState(lake, day(date), day(asOf), "north");

test.each([
  ["2025-04-09", "iced"],
  ["2025-04-10", "iceOff"],
  ["2025-04-17", "iceOff"],
  ["2025-04-24", "turnover"],
  ["2025-05-01", "turnover"],
  ["2025-05-08", "postTurnover"],
  ["2025-05-15", "postTurnover"],
  ["2025-05-22", "laterWeeks"],
  ["2025-05-29", "laterWeeks"],
] as const)("on %s a lake that opened on 10 April was most likely %s", (date, state) => {
  expect(stateOn(OPEN, date)).toBe(state);
});

// Day 12 is turnover by the usual onset with 5 chances in 8; days 19 and 20 are turnover too.
test("a turnover on record takes the place of the usual one", () => {
  const spot = { file: "lakes/alder.yaml", line: 1, column: 1 };
  const turned = {
    ...OPEN,
    turnover: [{ season: 2025, from: day("2025-04-23"), to: day("2025-04-29"), where: spot }],
  };
  const around = ["2025-04-22", "2025-04-23", "2025-04-29", "2025-04-30"];
  expect(around.map((date) => stateOn(OPEN, date))).toEqual(["turnover", "turnover", "turnover", "turnover"]);
  expect(around.map((date) => stateOn(turned, date))).toEqual([
    "iceOff",
    "turnover",
    "turnover",
    "postTurnover",
  ]);
});

test("no ice-off on record, a wide one, or one not yet known tells nothing", () => {
  expect(stateOn(OPEN, "2024-05-01")).toBeNull();
  const between = (after: string, by: string) =>
    withRow({ ...OPEN, iceOff: [] }, { season: 2025, after: day(after), by: day(by) });
  expect(stateOn(between("2025-03-22", "2025-04-10"), "2025-04-15")).toBeNull();
  expect(stateOn(between("2025-04-07", "2025-04-10"), "2025-04-15")).toBe("iceOff");
  expect(stateOn(OPEN, "2025-04-15", "2025-04-05")).toBeNull();
});
