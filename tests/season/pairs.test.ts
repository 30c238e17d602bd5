import { describe, expect, test } from "vitest";
import { dateOfSeasonDay } from "../../build/model/calendar.ts";
import { scaleOf } from "../../build/season/lake-distribution.ts";
import { hemisphereOfLakes } from "../../build/season/records.ts";
import { clubSeason } from "../../build/season/region-season.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { seeded } from "../seeded-random.ts";
import { clubOf, FOUR_LAKES, SEASON } from "./club.ts";
import { goodGivenIceOff, normal, placeByWeight, studentT } from "./draws.ts";

const CLUB = clubOf("2026-03-01");
const DRAWS = 60_000;

test("two lakes that share a spring, against brute force: springs drawn from the prior", () => {
  const [region] = clubSeason(CLUB, hemisphereOfLakes(CLUB.lakes)).regions;
  if (region === undefined) throw new Error("no region");
  const { grid, weights } = region.posterior;
  const points = grid.s.length;
  const random = seeded(3);
  /** A season point by its weight: the shared spring, drawn once for both lakes. */
  const draw = placeByWeight(weights, random);
  const lakes = region.lakes.filter(({ lake }) => ["alder", "dogwood"].includes(lake.slug));
  const goodOf = lakes.map(goodGivenIceOff);
  const days = [100, 112, 120, 128, 136, 145];
  const counts = days.map(() => ({ either: 0, apart: [0, 0] }));
  for (let n = 0; n < DRAWS; n++) {
    const p = draw();
    const springs = lakes.map(({ distribution: own }) => {
      return Math.round(
        own.m +
          (grid.s[p % points] ?? 0) +
          own.x * (grid.k[p % points] ?? 0) +
          scaleOf(own, grid.scatter[Math.floor(p / points)] ?? 1) * studentT(random, 4),
      );
    });
    days.forEach((day, d) => {
      const good = springs.map((iceOff, i) => goodOf[i]?.(iceOff, day) ?? 0);
      const count = counts[d];
      if (count === undefined) return;
      count.either += 1 - good.reduce((none, chance) => none * (1 - chance), 1);
      good.forEach((chance, i) => {
        count.apart[i] = (count.apart[i] ?? 0) + chance;
      });
    });
  }
  const forecast = forecastSeason(CLUB);
  days.forEach((day, d) => {
    const date = dateOfSeasonDay(day, SEASON, "north");
    const near = (found: number, count: number): void => {
      const noise = Math.sqrt((found * (1 - found)) / DRAWS);
      expect(Math.abs(found - count / DRAWS)).toBeLessThan(4.5 * noise + 1e-3);
    };
    near(forecast.together("alder", "dogwood", date), counts[d]?.either ?? 0);
    near(forecast.good("alder", date), counts[d]?.apart[0] ?? 0);
    near(forecast.good("dogwood", date), counts[d]?.apart[1] ?? 0);
  });
});

describe("regions", () => {
  const split = FOUR_LAKES.map((lake, i) => ({ ...lake, region: i < 2 ? "west" : "east" }));
  test("lakes of different regions are good or not by themselves", () => {
    const forecast = forecastSeason(clubOf("2026-03-01", [], split));
    for (const day of [110, 125, 140]) {
      const date = dateOfSeasonDay(day, SEASON, "north");
      const [a, b] = [forecast.good("alder", date), forecast.good("cedar", date)];
      expect(forecast.together("alder", "cedar", date)).toBeCloseTo(1 - (1 - a) * (1 - b), 2);
    }
  });
});

test("a lake that is not the club's is an error", () => {
  const forecast = forecastSeason(CLUB);
  const date = dateOfSeasonDay(110, SEASON, "north");
  expect(() => forecast.good("elder", date)).toThrow(RangeError);
  expect(() => forecast.together("alder", "elder", date)).toThrow(RangeError);
});

test("the simulation's normal has mean 0 and variance 1", () => {
  const random = seeded(1);
  const values = Array.from({ length: 20_000 }, () => normal(random));
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(Math.abs(mean)).toBeLessThan(0.03);
  expect(Math.abs(values.reduce((sum, value) => sum + value * value, 0) / values.length - 1)).toBeLessThan(
    0.05,
  );
});
