import { describe, expect, test } from "vitest";
import { launchCard, type OpenStates } from "../../../build/season/after-ice/launch-card.ts";
import {
  LAUNCH_ROWS,
  LAUNCH_TEMPERATURES_C,
  launchCell,
  launchTable,
} from "../../../build/season/after-ice/launch-table.ts";
import { clocksOf, lawOf } from "./reference-cases.ts";

/**
 * A lake at 2,700 m of 20 ha, usual ice-off 25 May, law t4 with scale 4, seen open on that day, read on 22 June: chances in percent as
 * computed by the two reference programs. T turnover, B best weeks, L later weeks.
 */
const TABLE = [
  ["T 94", "T 92", "T 89", "T 84", "T 47 L 33", "T 44 L 39"],
  ["T 74", "T 74", "T 74", "T 72", "L 41 T 36", "L 46 T 34"],
  ["T 81", "T 74", "T 62", "B 50 T 49", "L 47 B 28", "L 54"],
  ["B 86", "B 87", "B 88", "B 86", "L 57", "L 63"],
  ["T 66", "B 78", "B 87", "B 86", "L 57", "L 63"],
  ["T 72", "B 63", "B 71", "B 70", "L 46 B 27", "L 52"],
];
const LETTERS = { T: "turnover", B: "best", L: "later" } as const;

const card = launchCard(
  clocksOf({ lat: 41.2, elevation_m: 2700, area_ha: 20, max_depth_m: 12, usual: 145 }),
  lawOf(["t4", 145, 4], [{ t: 145, ice: "off" }]),
  [],
  173,
);

describe("the launch table", () => {
  TABLE.forEach((row, r) => {
    row.forEach((cell, c) => {
      const surface_C = LAUNCH_TEMPERATURES_C[c] ?? 0;
      test(`row ${r + 1}, ${surface_C} C: ${cell}`, () => {
        const chances = card({ surface_C, ...LAUNCH_ROWS[r]?.read });
        // half the last digit, and the last bit of a half
        for (const [, letter = "T", percent] of cell.matchAll(/([TBL]) (\d+)/g))
          expect(Math.abs(100 * chances[LETTERS[letter as "T"]] - Number(percent))).toBeLessThanOrEqual(
            0.501,
          );
      });
    });
  });

  test("prints the states that the reference table prints, none under stop", () => {
    const printed = launchTable(card).map((row) =>
      row.map(({ states }) => states.map(({ state }) => state[0]?.toUpperCase()).join(" ")),
    );
    expect(printed).toEqual(
      TABLE.map((row) => row.map((cell, c) => (c === 5 ? "" : (cell.match(/[TBL]/g) ?? []).join(" ")))),
    );
  });

  const even: OpenStates = { iceOff: 0, turnover: 0.3, best: 0.46, later: 0.24 };
  test.each([
    [0.54, 2],
    [0.56, 1],
  ])("of two states the second is told where it is within ten points: %d", (best, told) => {
    expect(launchCell(12, { iceOff: 0, turnover: 1 - best, best, later: 0 }).states.length).toBe(told);
  });

  test.each([
    [17.9, undefined, 2],
    [18, "take care", 2],
    [20, "stop", 0],
  ] as const)("at %d C: %s", (surface_C, heat, states) => {
    const cell = launchCell(surface_C, even);
    expect(cell.heat).toBe(heat);
    expect(cell.states.length).toBe(states);
  });
});
