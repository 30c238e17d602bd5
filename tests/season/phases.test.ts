import { describe, expect, test } from "vitest";
import { DAY_STATES } from "../../build/model/phase.ts";
import { springOf } from "../../build/season/lake-evidence.ts";
import { chanceBy, dayBy, springOfLake, statesOn } from "../../build/season/phases.ts";
import { type Statement, statementsByLake } from "../../build/season/statements.ts";
import type { TurnoverCase } from "../../build/season/turnover-times.ts";
import {
  CDF_OF_NORMAL_PLUS_TWO_UNIFORMS,
  CDF_OF_NORMAL_PLUS_UNIFORM,
  QUANTILES_OF_NORMAL_PLUS_TWO_UNIFORMS,
} from "../reference/season-statistics.ts";
import { seeded } from "../seeded-random.ts";
import { clubOf, lakeOf, reportOf } from "./club.ts";
import { normalCdf } from "./normal-cdf.ts";

const evenly = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

const casesOf = (onsets: readonly number[], durations: readonly number[]): TurnoverCase[] =>
  onsets.flatMap((onset) =>
    durations.map((duration) => ({ onset, duration, chance: 1 / onsets.length / durations.length })),
  );

/** Whole days of N(mean, sd^2) over a span of 12 standard deviations. */
function normalDays(mean: number, sd: number) {
  const span = { from: Math.floor(mean - 6 * sd), to: Math.ceil(mean + 6 * sd) };
  const chances = Float64Array.from(
    { length: span.to - span.from + 1 },
    (_, i) => normalCdf((span.from + i + 0.5 - mean) / sd) - normalCdf((span.from + i - 0.5 - mean) / sd),
  );
  return { span, chances };
}

/** Chances are kept to 1e-4; whole days stand for hours, which leaves about as much again. */
const DAY_GRID_TOLERANCE = 3e-4;

describe("enumeration against sums of a normal and uniforms, closed form", () => {
  // 14 whole waits of 8 to 21 days are U(7.5, 21.5): with N(97.5, 36) that is N(110, 36) + U(-5, 9); the end of day x lies at x + 0.5
  const onsets = evenly(8, 14);

  test.each(CDF_OF_NORMAL_PLUS_UNIFORM)("turnover has begun by $x", ({ x, cdf }) => {
    const { span, chances } = normalDays(97.5 + 0.5, 6);
    const spring = springOfLake(chances, span, casesOf(onsets, [8]), []);
    expect(Math.abs(chanceBy(spring, "onset", x) - cdf)).toBeLessThan(DAY_GRID_TOLERANCE);
  });

  // durations of 1 to 4 days are U(0.5, 4.5)
  const twoUniforms = () => {
    const { span, chances } = normalDays(97.5 - 0.5 + 0.5, 6);
    return springOfLake(chances, span, casesOf(onsets, evenly(1, 4)), []);
  };

  test.each(CDF_OF_NORMAL_PLUS_TWO_UNIFORMS)("it is clear again by $x", ({ x, cdf }) => {
    expect(Math.abs(chanceBy(twoUniforms(), "clear", x) - cdf)).toBeLessThan(2 * DAY_GRID_TOLERANCE);
  });

  test.each(QUANTILES_OF_NORMAL_PLUS_TWO_UNIFORMS)("the day of chance $p", ({ p, x }) => {
    // the first whole day whose end lies at or after the quantile; half a hair of room for one that falls on a day's end
    expect(dayBy(twoUniforms(), "clear", p - 1e-3)).toBe(Math.ceil(x - 0.02));
  });
});

describe("enumeration against brute force", () => {
  const DRAWS = 200_000;
  const cases = casesOf(evenly(8, 8), evenly(8, 8));
  const { span, chances } = normalDays(115, 5);
  const statements = (seen: Parameters<typeof reportOf>[2], date: string): readonly Statement[] =>
    statementsByLake(clubOf("2026-07-01", [reportOf("alder", date, seen)], [lakeOf("alder")]), "north").get(
      "alder",
    ) ?? [];

  /** Draws springs, keeps each with the chance of what was reported, and counts the states on some days. */
  function simulated(reports: readonly Statement[], days: readonly number[]) {
    const random = seeded(11);
    let sum = 0;
    const below = Array.from(chances, (chance) => {
      sum += chance;
      return sum;
    });
    const counts = days.map(() => new Map<string, number>());
    let kept = 0;
    for (let n = 0; n < DRAWS; n++) {
      const u = random() * (below.at(-1) ?? 1);
      const iceOff = span.from + below.findIndex((sum) => sum >= u);
      const onset = iceOff + 8 + Math.floor(8 * random());
      const clear = onset + 8 + Math.floor(8 * random());
      if (!reports.every((report) => random() < (report.fits({ iceOff, onset, clear }) ? 0.98 : 0.02)))
        continue;
      kept++;
      days.forEach((day, i) => {
        const state =
          day < iceOff
            ? "iced"
            : day < onset
              ? "iceOff"
              : day < clear
                ? "turnover"
                : day <= iceOff + 35
                  ? "postTurnover"
                  : "summer";
        counts[i]?.set(state, (counts[i]?.get(state) ?? 0) + 1);
      });
    }
    return { kept, counts };
  }

  test.each([
    ["nothing", undefined, "2026-04-20"],
    ["ice on", { ice: "on" }, "2026-04-24"],
    ["ice part", { ice: "part" }, "2026-04-20"],
    ["ice off", { ice: "off" }, "2026-04-24"],
    ["ice-off", { phase: "ice-off" }, "2026-05-02"],
    ["turnover", { phase: "turnover" }, "2026-05-08"],
    ["post-turnover", { phase: "post-turnover" }, "2026-05-20"],
  ] as const)("after a report of %s", (_, seen, date) => {
    const reports = seen === undefined ? [] : statements(seen, date);
    const days = [108, 116, 122, 128, 135, 141, 148, 152];
    const spring = springOfLake(chances, span, cases, reports);
    const { kept, counts } = simulated(reports, days);
    days.forEach((day, i) => {
      const states = statesOn(spring, day);
      for (const state of DAY_STATES) {
        const share = (counts[i]?.get(state) ?? 0) / kept;
        const noise = Math.sqrt((states[state] * (1 - states[state])) / kept);
        expect(Math.abs(states[state] - share)).toBeLessThan(4.5 * noise + 2e-4);
      }
    });
  });
});

test("a lake that does not turn over has its best weeks from day 15 to day 35", () => {
  const spring = springOfLake(
    Float64Array.of(1),
    { from: 100, to: 100 },
    [{ onset: 15, duration: 0, chance: 1 }],
    [],
  );
  expect(statesOn(spring, 99).iced).toBe(1);
  expect(statesOn(spring, 100).iceOff).toBe(1);
  expect(statesOn(spring, 114).iceOff).toBe(1);
  expect(statesOn(spring, 115).postTurnover).toBe(1);
  expect(statesOn(spring, 135).postTurnover).toBe(1);
  expect(statesOn(spring, 136).summer).toBe(1);
});

test("a turnover that lasts beyond day 35 leads straight into summer", () => {
  const spring = springOfLake(
    Float64Array.of(1),
    { from: 100, to: 100 },
    [{ onset: 20, duration: 30, chance: 1 }],
    [],
  );
  expect(statesOn(spring, 149).turnover).toBe(1);
  expect(statesOn(spring, 150).summer).toBe(1);
});

test("springOf counts from ice-off", () => {
  expect(springOf(100, { onset: 9, duration: 11, chance: 1 })).toEqual({
    iceOff: 100,
    onset: 109,
    clear: 120,
  });
});
