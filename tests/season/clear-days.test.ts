import { describe, expect, test } from "vitest";
import { dateOfSeasonDay } from "../../build/model/calendar.ts";
import type { Lake } from "../../build/model/club.ts";
import { scoreClearDays } from "../../build/season/backtest/clear-days.ts";
import { lakeOf, SEASON } from "./club.ts";

/** Every lake here opens on this day of each season; invented. */
const ICE_OFF = 130;
const SEASONS = Array.from({ length: 13 }, (_, i) => SEASON - 13 + i);

/** A lake whose turnover ended so many days after ice-off, season by season. */
function lakeThatCleared(clearAfter: readonly number[], change: Partial<Lake> = {}): Lake {
  const seasons = SEASONS.slice(0, clearAfter.length);
  return lakeOf("tarn", Object.fromEntries(seasons.map((season) => [season, ICE_OFF])), {
    area_ha: 20,
    meanDepth_m: 5,
    turnover: seasons.map((season, i) => ({
      season,
      from: dateOfSeasonDay(ICE_OFF + 10, season, "north"),
      to: dateOfSeasonDay(ICE_OFF + (clearAfter[i] ?? 0) - 1, season, "north"),
      where: { file: "lakes/tarn.yaml", line: 1, column: 1 },
    })),
    ...change,
  });
}
const scoreOf = (clearAfter: readonly number[], change: Partial<Lake> = {}) =>
  scoreClearDays({ lakes: [lakeThatCleared(clearAfter, change)], season: SEASON });
const same = (day: number, seasons: number): number[] => Array.from({ length: seasons }, () => day);

describe("the end of turnover, called on the day of ice-off", () => {
  test("a lake that clears late every spring is called better from spring to spring", () => {
    const [early, late] = [scoreOf(same(45, 11)), scoreOf(same(45, 13))];
    expect(early?.n).toBe(10);
    expect(late).toMatchObject({ n: 12, seasons: 12 });
    expect(late?.mae ?? 99).toBeLessThan(early?.mae ?? 0);
    expect(late?.cover80 ?? 0).toBeGreaterThanOrEqual(early?.cover80 ?? 1);
  });

  test("a spring is called from earlier ones alone: what came later changes the later calls only", () => {
    const [usual, odd] = [same(30, 13), [...same(30, 12), 70]];
    const [a, b] = [scoreOf(usual), scoreOf(odd)];
    // only the thirteenth spring's own error differs, and it was called from the same twelve: by 40 days
    expect(12 * ((b?.mae ?? 0) - (a?.mae ?? 0))).toBeLessThanOrEqual(40);
    expect(12 * ((b?.mae ?? 0) - (a?.mae ?? 0))).toBeGreaterThan(20);
    expect(scoreOf([70, ...same(30, 12)])?.mae).toBeGreaterThan(a?.mae ?? 99);
  });

  test("nothing is said with fewer than ten records, without an ice-off before, or of a lake that does not turn over", () => {
    expect(scoreOf(same(30, 10))).toBeNull();
    expect(scoreOf(same(30, 13), { iceOff: [] })).toBeNull();
    expect(scoreOf(same(30, 13), { turnoverRule: { turnsOver: false } })).toBeNull();
    expect(scoreClearDays({ lakes: [lakeThatCleared(same(30, 13))], season: SEASON - 4 })).toBeNull();
  });
});
