import { describe, expect, test } from "vitest";
import { chanceOf, forecastOfChances, quantile } from "../../build/season/backtest/scoring.ts";
import { type Fit, fitPastSeasons } from "../../build/season/fit/fit-past-seasons.ts";
import { dayChances, lakeDistribution, spanOf } from "../../build/season/lake-distribution.ts";
import type { DaySpan, LakeEvidence } from "../../build/season/lake-evidence.ts";
import { priorGrid, USUAL_GRID } from "../../build/season/season-grid.ts";
import { SHARED_WEIGHT, updateSeason } from "../../build/season/season-posterior.ts";
import vectors from "../reference/season-vectors.json" with { type: "json" };

/** The reference knows no scatter of a season: every season is as uneven as another. */
const GRID = { ...USUAL_GRID, scatter: [0] };

interface ReferenceForecast {
  readonly p10: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p90: number;
  readonly mean: number;
  readonly cdf110: number;
}

interface ReferenceReport {
  readonly lake: number;
  readonly iced?: number;
  readonly open?: readonly number[];
}

interface ReferenceCase {
  readonly reports: readonly ReferenceReport[];
  readonly forecast: Readonly<Record<string, ReferenceForecast | undefined>>;
}

const casesOf = (set: (typeof vectors.sets)[number]): readonly ReferenceCase[] => set.cases;

function fitOf({ history, lat, elev, cfg, fit }: (typeof vectors.sets)[number]): Fit {
  const seasons = [...new Set(history.map(([season]) => season))];
  return fitPastSeasons(
    {
      regions: fit.m.map(() => 0),
      covariates:
        lat === null || elev === null
          ? []
          : [
              { values: lat, daysPerUnit: 4, sd: 1.5 },
              { values: elev.map((metres) => metres / 100), daysPerUnit: 3.3, sd: 1 },
            ],
      seasons: seasons.length,
      records: history.map(([season = 0, lake = 0, day = 0]) => ({
        lake,
        season: seasons.indexOf(season),
        from: day,
        to: day,
      })),
      levelWithoutRecords: { day: 110, sd: 25 },
    },
    { rounds: 30, settled_days: 0, step_days: "stretch" in cfg ? Number.POSITIVE_INFINITY : 5 },
  );
}

function evidenceOf(
  reports: readonly ReferenceReport[],
  lake: number,
  span: DaySpan,
): LakeEvidence | undefined {
  const own = reports.filter((report) => report.lake === lake);
  if (own.length === 0) return undefined;
  const fits = (day: number): boolean =>
    own.every(
      ({ iced, open }) =>
        (iced === undefined || day > iced) &&
        (open === undefined || (day >= (open[0] ?? day) && day <= (open[1] ?? day))),
    );
  return {
    span,
    chance: Float64Array.from({ length: span.to - span.from + 1 }, (_, i) => (fits(span.from + i) ? 1 : 0)),
  };
}

describe.each(vectors.sets)("reference implementation: $name", (set) => {
  const fit = fitOf(set);
  const near = (found: ArrayLike<number>, expected: readonly number[], tolerance: number): void => {
    expected.forEach((value, i) => {
      expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThanOrEqual(tolerance);
    });
  };

  test("the fit agrees to half its last printed digit", () => {
    near(fit.m, set.fit.m, 1e-4);
    near(fit.v, set.fit.v, 1e-4);
    near(fit.x, set.fit.x, 1e-5);
    near(fit.sigma, set.fit.sigma, 1e-4);
    near(fit.shared, [set.fit.c], 1e-4);
    near(
      [fit.omega.ss, fit.omega.sk, fit.omega.kk],
      [set.fit.Omega[0]?.[0] ?? 0, set.fit.Omega[0]?.[1] ?? 0, set.fit.Omega[1]?.[1] ?? 0],
      1e-4,
    );
    near([fit.tau], [set.fit.tau], 1e-4);
    expect(fit.seasonDf).toBe(set.fit.nus);
  });

  test.each(casesOf(set))("forecasts after reports $reports", ({ reports, forecast }) => {
    const grid = priorGrid(fit, 0, GRID);
    const lakes = [...fit.m].map((_, lake) => {
      const distribution = lakeDistribution(fit, lake);
      const span = spanOf(distribution, grid);
      return { distribution, span, evidence: evidenceOf(reports, lake, span) };
    });
    const posterior = updateSeason(fit, 0, lakes, { grid: GRID, sharedWeight: SHARED_WEIGHT });
    for (const [lake, { distribution, span, evidence }] of lakes.entries()) {
      const expected = forecast[String(lake)];
      if (expected === undefined) continue;
      const chances = dayChances(distribution, posterior.grid, posterior.without(lake), span).map(
        (chance, i) => chance * (evidence?.chance[i] ?? 1),
      );
      const found = forecastOfChances(chances, span.from);
      const whole = chances.reduce((sum, chance) => sum + chance, 0);
      const mean = chances.reduce((sum, chance, i) => sum + chance * (span.from + i), 0) / whole;
      // heavy tails beyond the days looked at leave a few hundredths of a day
      expect(Math.abs(mean - expected.mean)).toBeLessThan(0.02);
      expect(Math.abs(chanceOf(found, 110) - expected.cdf110)).toBeLessThan(2e-4);
      const quantiles = [10, 25, 50, 75, 90].map((percent) => quantile(found, percent / 100));
      const { p10, p25, p50, p75, p90 } = expected;
      expect(quantiles).toEqual([p10, p25, p50, p75, p90]);
    }
  });

  test("the cases hold forecasts", () => {
    expect(casesOf(set).flatMap(({ forecast }) => Object.keys(forecast)).length).toBeGreaterThan(1);
  });
});
