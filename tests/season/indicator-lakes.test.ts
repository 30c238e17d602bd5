import { describe, expect, test } from "vitest";
import { indicatorSeason } from "../../build/season/indicator-lakes.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { seeded } from "../seeded-random.ts";
import { clubOf, FOUR_LAKES, lakeOf, reportOf } from "./club.ts";
import { normal } from "./draws.ts";

const exact = (days: readonly (readonly [number, number])[]) =>
  new Map(days.map(([year, day]) => [year, { from: day, to: day }]));

/** Season effects and what a group of three lakes with a known loading made of them. */
function drawn(seasons: number, loading: number, error_d: number) {
  const random = seeded(4);
  const effects = new Map(
    Array.from({ length: seasons }, (_, y) => [2026 - seasons + y, 7 * normal(random)]),
  );
  const shared = new Map([...effects].map(([year, s]) => [year, loading * s + error_d * normal(random)]));
  const series = [90, 95, 101].map((usual) =>
    exact([...[...shared].map(([year, z]) => [year, usual + z] as const), [2026, usual + 5]]),
  );
  return { effects, series };
}

describe("lakes outside the list", () => {
  test("with many shared seasons the loading is the regression's, by hand: sum of products over sum of squares", () => {
    const { effects, series } = drawn(400, 0.7, 2);
    const found = indicatorSeason(series, effects, 2026);
    expect(Math.abs((found?.loading ?? 0) - 0.7)).toBeLessThan(0.06);
    expect(Math.abs((found?.error_d ?? 0) - 1.3 * 2)).toBeLessThan(0.4);
    expect(Math.abs((found?.anomaly_d ?? 0) - 5)).toBeLessThan(0.6);
    expect(found).toMatchObject({ lakes: 3, seasons: 400 });
  });

  test("with few shared seasons the prior N(0.9, 0.3^2) holds it", () => {
    const { effects, series } = drawn(8, 0.1, 4);
    const found = indicatorSeason(series, effects, 2026)?.loading ?? 0;
    expect(found).toBeGreaterThan(0.1);
    expect(found).toBeLessThan(0.9);
  });

  test("say nothing with fewer than 8 shared seasons, or before one of them opens this spring", () => {
    expect(indicatorSeason(drawn(7, 0.8, 2).series, drawn(7, 0.8, 2).effects, 2026)).toBeUndefined();
    const { effects, series } = drawn(12, 0.8, 2);
    const waiting = series.map((days) => new Map([...days].filter(([year]) => year !== 2026)));
    expect(indicatorSeason(waiting, effects, 2026)).toBeUndefined();
  });
});

describe("in a forecast", () => {
  const springs = [-9, 6, -4, 8, 2, -7, 5, -1, 3, -3];
  const daysOf = (usual: number) =>
    Object.fromEntries(springs.map((s, y) => [2016 + y, usual + s + ((usual + 3 * y) % 3) - 1]));
  const lakes = [110, 114, 119].map((usual, i) => lakeOf(`lake-${i}`, daysOf(usual)));
  const outside = (now: number) => [lakeOf("far", { ...daysOf(90), 2026: now })];
  const middle = (now: number | undefined, reports: ReturnType<typeof reportOf>[] = []) =>
    forecastSeason({
      ...clubOf("2026-04-15", reports, lakes),
      ...(now === undefined ? {} : { indicators: outside(now) }),
    });
  const p50 = (forecast: ReturnType<typeof middle>) => forecast.lakes.get("lake-2")?.iceOff.p50 ?? "";

  test("an early opening outside makes the club's lakes early, a late one late", () => {
    expect(p50(middle(80)) < p50(middle(undefined))).toBe(true);
    expect(p50(middle(98)) > p50(middle(undefined))).toBe(true);
    expect(middle(80).regions[0]?.indicators).toMatchObject({ lakes: 1, seasons: 10 });
  });

  test("they are not among the club's lakes", () => {
    expect([...middle(80).lakes.keys()]).toEqual(["lake-0", "lake-1", "lake-2"]);
  });

  test("from the club's own first opening on they are dropped", () => {
    const opened = [reportOf("lake-0", "2026-04-14", { ice: "off" })];
    const [one, other] = [middle(80, opened), middle(98, opened)];
    expect(JSON.stringify([...one.lakes])).toBe(JSON.stringify([...other.lakes]));
    expect(one.regions[0]?.indicators).toBeNull();
  });

  test("without any the forecast stands", () => {
    expect(forecastSeason(clubOf("2026-04-15", [], FOUR_LAKES)).regions[0]?.indicators).toBeNull();
  });
});
