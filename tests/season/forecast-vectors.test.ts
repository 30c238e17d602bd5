import { describe, expect, test } from "vitest";
import { dateOfSeasonDay } from "../../build/model/calendar.ts";
import type { Report } from "../../build/model/club.ts";
import type { Spring } from "../../build/season/after-ice/spring.ts";
import { chanceBy, dayBy } from "../../build/season/after-ice/states.ts";
import { regionSeason } from "../../build/season/region-season.ts";
import { delaySurvival, learntDelay, USUAL_DELAY, watchChance } from "../../build/season/reporting-law.ts";
import { scatterChances } from "../../build/season/season-grid.ts";
import { statementsByLake } from "../../build/season/statements.ts";
import vectors from "../reference/forecast-vectors.json" with { type: "json" };
import { clubOf, lakeOf, reportOf, SEASON } from "./club.ts";

interface VectorLake {
  readonly dated?: number;
  readonly seen?: readonly { readonly day: number; readonly ice?: string; readonly phase?: string }[];
  readonly silence?: { readonly watched: number; readonly until: number };
}

const { fit, tolerance } = vectors;
const FIT = {
  m: Float64Array.from(fit.m),
  x: Float64Array.from(fit.x),
  sigma: Float64Array.from(fit.sigma),
  v: Float64Array.from(fit.v),
  omega: fit.omega,
  shared: Float64Array.of(fit.shared),
  seasonDf: fit.seasonDf,
  tau: 4,
  beta: Float64Array.of(0),
  seasonEffects: new Float64Array(),
};

const dateOf = (day: number) => dateOfSeasonDay(day, SEASON, "north");

function springsOf(lakes: readonly VectorLake[], today: number, delay = USUAL_DELAY) {
  const own = lakes.map(({ dated }, i) =>
    lakeOf(`lake-${i}`, dated === undefined ? {} : { [SEASON]: dated }),
  );
  const reports = lakes.flatMap(({ seen = [] }, i) =>
    seen.map(({ day, ...what }) => reportOf(`lake-${i}`, dateOf(day), what as Partial<Report>)),
  );
  const club = clubOf(dateOf(today), reports, own);
  const statements = statementsByLake(club, "north", delay);
  return regionSeason(
    FIT,
    0,
    own.map((lake, place) => ({
      place,
      lake,
      past: new Map(),
      readings: [],
      statements: statements.get(lake.slug) ?? [],
      silence: lakes[place]?.silence,
    })),
    { delay, delays_d: [], delaySeasons: [], visitSeasons: [], visits: new Map() },
    undefined,
    { season: SEASON, asOf: club.asOf, hemisphere: "north" },
  );
}

/** The day, or its neighbour where the cdf passes the chance by less than the tolerance. */
function expectDay(spring: Spring, chance: number, day: number): void {
  const found = dayBy(spring, "iceOff", chance);
  if (found === day) return;
  expect(Math.abs(found - day)).toBe(1);
  expect(Math.abs(chanceBy(spring, "iceOff", Math.min(found, day)) - chance)).toBeLessThan(tolerance);
}

describe("three lakes, two computations made outside this project", () => {
  test.each(vectors.cases)("$name", ({ today, lakes, expected, scatter, ...rest }) => {
    const delay = "delay" in rest ? rest.delay : undefined;
    const season = springsOf(lakes as readonly VectorLake[], today, delay);
    expected.forEach(({ p10, p50, p90, byP10, byP50, byP90, openByToday }, lake) => {
      const spring = season.lakes[lake]?.spring;
      if (spring === undefined) throw new Error("no lake");
      for (const [chance, day] of [
        [0.1, p10],
        [0.5, p50],
        [0.9, p90],
      ] as const)
        expectDay(spring, chance, day);
      for (const [day, by] of [
        [p10, byP10],
        [p50, byP50],
        [p90, byP90],
        [today, openByToday],
      ] as const)
        expect(Math.abs(chanceBy(spring, "iceOff", day) - by)).toBeLessThanOrEqual(tolerance);
    });
    const { grid, weights } = season.posterior;
    scatterChances(grid, weights).forEach((chance, j) => {
      expect(Math.abs(chance - (scatter[j] ?? Number.NaN))).toBeLessThanOrEqual(tolerance);
    });
  });
});

describe("what past springs teach of the club's reporting", () => {
  test.each(vectors.delays)("delays of $delays_d days", ({ delays_d, shape, theta_d, ...survival }) => {
    const law = learntDelay(delays_d);
    expect(law.shape).toBeCloseTo(shape, 12);
    expect(law.theta_d).toBeCloseTo(theta_d, 12);
    if (!("survivalAfter7" in survival)) return;
    expect(delaySurvival(law, 7)).toBeCloseTo(survival.survivalAfter7 ?? Number.NaN, 6);
    expect(delaySurvival(USUAL_DELAY, 7)).toBeCloseTo(survival.survivalAfter7Before ?? Number.NaN, 6);
  });

  test.each(vectors.watched)("visited in $visited of $springs springs", (row) => {
    expect(watchChance(row.springs, row.visited, row.seenThisSpring)).toBeCloseTo(row.chance, 6);
  });
});
