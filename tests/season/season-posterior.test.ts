import { describe, expect, test } from "vitest";
import { chanceOf, forecastOfChances } from "../../build/season/backtest/scoring.ts";
import type { Fit } from "../../build/season/fit/fit-past-seasons.ts";
import { dayChances, lakeDistribution, scaleOf, spanOf } from "../../build/season/lake-distribution.ts";
import { normalised } from "../../build/season/numbers.ts";
import { priorGrid, USUAL_GRID } from "../../build/season/season-grid.ts";
import { updateSeason } from "../../build/season/season-posterior.ts";
import { seeded } from "../seeded-random.ts";
import { normal, placeByWeight, studentT } from "./draws.ts";

/** A fit written by hand: three lakes, a week and more apart. */
const FIT: Fit = {
  m: Float64Array.of(105, 112, 121),
  v: Float64Array.of(1, 2, 1.5),
  sigma: Float64Array.of(2.2, 2.6, 2.4),
  x: Float64Array.of(-1.5, 0, 1.7),
  shared: Float64Array.of(4),
  omega: { ss: 50, sk: 0.6, kk: 0.3 },
  tau: 4,
  beta: Float64Array.of(0),
  seasonDf: 9,
  seasonEffects: new Float64Array(),
};

/** Seen: the first lake iced on day 108, the second open by day 120, the third unknown. */
const SEEN = [(day: number) => day > 108, (day: number) => day <= 120, undefined] as const;
const WRONG = 0.02;

function enumerated(sharedWeight: number) {
  const grid = priorGrid(FIT, 0);
  const lakes = SEEN.map((seen, lake) => {
    const distribution = lakeDistribution(FIT, lake);
    const span = spanOf(distribution, grid);
    const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) =>
      seen?.(span.from + i) === false ? WRONG : 1 - WRONG,
    );
    return { distribution, span, evidence: seen === undefined ? undefined : { span, chance } };
  });
  const posterior = updateSeason(FIT, 0, lakes, { grid: USUAL_GRID, sharedWeight });
  return lakes.map(({ distribution, span, evidence }, lake) =>
    forecastOfChances(
      dayChances(distribution, posterior.grid, posterior.without(lake), span).map(
        (chance, i) => chance * (evidence?.chance[i] ?? 1),
      ),
      span.from,
    ),
  );
}

describe("the update against brute force", () => {
  const DRAWS = 150_000;

  test("with evidence at full weight it is Bayes' rule: springs drawn and weighed by what was seen", () => {
    const random = seeded(5);
    const { ss, sk, kk } = FIT.omega;
    // -2 to 2 standard deviations of the log, as often as a normal's density says
    const normalWeights = [-2, -1, 0, 1, 2].map((z) => Math.exp((-z * z) / 2));
    const drawScatter = placeByWeight(normalised(Float64Array.from(normalWeights)), random);
    const days = [104, 109, 112, 116, 120, 126];
    const below = FIT.m.length;
    const sums = Array.from({ length: below }, () => days.map(() => 0));
    let all = 0;
    let squares = 0;
    for (let n = 0; n < DRAWS; n++) {
      const s = Math.sqrt(ss + (FIT.shared[0] ?? 0)) * studentT(random, FIT.seasonDf);
      const k = (sk / ss) * s + Math.sqrt(kk - (sk * sk) / ss) * normal(random);
      const u = Math.exp(0.3 * (drawScatter() - 2));
      const iceOffs = [...FIT.m].map((m, lake) => {
        const own = lakeDistribution(FIT, lake);
        return Math.round(m + s + own.x * k + scaleOf(own, u) * studentT(random, 4));
      });
      const weight = SEEN.reduce(
        (product, seen, lake) =>
          product * (seen === undefined || seen(iceOffs[lake] ?? 0) ? 1 - WRONG : WRONG),
        1,
      );
      all += weight;
      squares += weight * weight;
      iceOffs.forEach((iceOff, lake) => {
        days.forEach((day, d) => {
          const row = sums[lake];
          if (row !== undefined && iceOff <= day) row[d] = (row[d] ?? 0) + weight;
        });
      });
    }
    const effective = (all * all) / squares;
    enumerated(1).forEach((forecast, lake) => {
      days.forEach((day, d) => {
        const chance = chanceOf(forecast, day);
        const share = (sums[lake]?.[d] ?? 0) / all;
        const noise = Math.sqrt((chance * (1 - chance)) / effective);
        expect(Math.abs(chance - share)).toBeLessThan(4.5 * noise + 1e-3);
      });
    });
  });

  test("tempered, the news of others counts for less and a lake's own in whole", () => {
    const [whole, tempered, none] = [enumerated(1), enumerated(0.6), enumerated(0)];
    const [third, thirdTempered, thirdAlone] = [whole, tempered, none].map((all) =>
      chanceOf(all[2] ?? { firstDay: 0, by: new Float64Array() }, 118),
    );
    expect(thirdTempered).toBeGreaterThan(Math.min(third ?? 0, thirdAlone ?? 0));
    expect(thirdTempered).toBeLessThan(Math.max(third ?? 0, thirdAlone ?? 0));
    for (const all of [whole, tempered, none]) {
      const first = all[0];
      // one report in fifty is wrong: the lake seen iced on day 108 is hardly open by then
      expect(first === undefined ? 1 : chanceOf(first, 108)).toBeLessThan(0.1);
    }
  });
});

test("a finer grid takes over where many lakes agree, and tells the same", () => {
  const lakes = 240;
  const fit: Fit = {
    ...FIT,
    m: new Float64Array(lakes).fill(112),
    v: new Float64Array(lakes).fill(1),
    sigma: new Float64Array(lakes).fill(2.4),
    x: Float64Array.from({ length: lakes }, (_, i) => ((i % 7) - 3) / 2),
  };
  const grid = priorGrid(fit, 0);
  const all = [...fit.m].map((_, lake) => {
    const distribution = lakeDistribution(fit, lake);
    const span = spanOf(distribution, grid);
    // each opened six days late, give or take the lake's own fixed error
    const opened = 118 + ((lake * 37) % 9) - 4;
    const chance = Float64Array.from({ length: span.to - span.from + 1 }, (_, i) =>
      span.from + i === opened ? 1 : 1e-6,
    );
    return { distribution, span, evidence: { span, chance } };
  });
  const usual = updateSeason(fit, 0, all);
  const finest = updateSeason(fit, 0, all, {
    grid: { ...USUAL_GRID, s: 401 },
    sharedWeight: 0.6,
  });
  const mean = ({ grid: { s }, weights }: typeof usual) =>
    weights.reduce((sum, weight, p) => sum + weight * (s[p % s.length] ?? 0), 0);
  expect(usual.grid.stepS).toBeLessThan(grid.stepS / 2);
  expect(mean(usual)).toBeCloseTo(mean(finest), 2);
});
