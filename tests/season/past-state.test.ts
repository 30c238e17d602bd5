import { expect, test } from "vitest";
import { pastState } from "../../build/season/past-state.ts";
import { day, lakeOf, withRow } from "./club.ts";

// Usual turnover: 8 to 15 days after ice-off, for 8 to 15 days; summer after day 35. Common practice, no source.
const OPEN = lakeOf("alder", { 2025: 110 }); // 20 April 2025
const stateOn = (lake: typeof OPEN, date: string, asOf = "2026-05-01") =>
  pastState(lake, day(date), day(asOf), "north");

test.each([
  ["2025-04-19", "iced"],
  ["2025-04-20", "iceOff"],
  ["2025-05-03", "turnover"],
  ["2025-05-22", "postTurnover"],
  ["2025-05-26", "summer"],
] as const)("on %s a lake that opened on 20 April was most likely %s", (date, state) => {
  expect(stateOn(OPEN, date)).toBe(state);
});

test("a turnover on record takes the place of the usual one", () => {
  const spot = { file: "lakes/alder.yaml", line: 1, column: 1 };
  const late = {
    ...OPEN,
    turnover: [{ season: 2025, from: day("2025-05-10"), to: day("2025-05-12"), where: spot }],
  };
  expect(["2025-05-09", "2025-05-10", "2025-05-12", "2025-05-13"].map((date) => stateOn(late, date))).toEqual(
    ["iceOff", "turnover", "turnover", "postTurnover"],
  );
});

test("no ice-off on record, a wide one, or one not yet known tells nothing", () => {
  expect(stateOn(OPEN, "2024-05-01")).toBeNull();
  const between = (after: string, by: string) =>
    withRow(lakeOf("alder"), { season: 2025, after: day(after), by: day(by) });
  expect(stateOn(between("2025-04-01", "2025-04-20"), "2025-04-25")).toBeNull();
  expect(stateOn(between("2025-04-17", "2025-04-20"), "2025-04-25")).toBe("iceOff");
  expect(stateOn(OPEN, "2025-04-25", "2025-04-10")).toBeNull();
});
