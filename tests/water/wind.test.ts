import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  BEAUFORT,
  cemWaveHeight_m,
  craftAdvice,
  fetchLimitedWaves,
} from "../../build/water/beaufort-waves.ts";
import type { WINDS } from "../../build/water/compass.ts";
import { distanceToShore_m, scanLinesTowards } from "../../build/water/scan-lines.ts";
import { composeWater } from "../../build/water/water.ts";
import type { LakeWind } from "../../build/water/water-schema.ts";
import {
  BEAUFORT_LIMITS,
  BEAUFORT_MPH,
  CEM_HEIGHTS,
  SPM_GROWN_HEIGHT,
  SPM_PROBLEM,
  SPM_WAVES,
  STRAIGHT_FETCH,
} from "../reference/wind-waves.ts";
import { circle, LAKE, OPTIONS, rectangle, shapeOf } from "./shapes.ts";

const windOn = (shape: ReturnType<typeof shapeOf>): LakeWind => {
  const { wind } = composeWater(LAKE, shape, OPTIONS).water;
  if (wind === null) throw new Error("a lake with a shore has a wind");
  return wind;
};
const fetches = (wind: LakeWind): number[] => wind.directions.map(({ fetch_m }) => fetch_m);
const from = (wind: LakeWind, name: (typeof WINDS)[number]) => {
  const direction = wind.directions.find((one) => one.from === name);
  if (direction === undefined) throw new Error(name);
  return direction;
};

describe("fetch", () => {
  const { long_m, wide_m, radius_m } = STRAIGHT_FETCH;

  test("a long narrow lake: the straight line, not one narrowed by the width (CEM 2003)", () => {
    const wind = windOn(
      shapeOf(rectangle(long_m, wide_m), { marks: [{ mark: "launch", x: long_m / 2, y: 0 }] }),
    );
    expect(from(wind, "W").fetch_m).toBe(long_m);
    expect(from(wind, "E").fetch_m).toBe(long_m);
    expect(from(wind, "N").fetch_m).toBe(wide_m);
    expect(wind.longest).toEqual({ fetch_m: long_m, along: ["E", "W"] });
    // The launch lies at the east end, judged from a hundredth of the lake's size off the shore.
    const off_m = 0.01 * Math.sqrt(long_m * wide_m);
    expect(Math.abs((from(wind, "W").launchFetch_m[0] ?? 0) - (long_m - off_m))).toBeLessThan(1.5);
    expect(Math.abs((from(wind, "E").launchFetch_m[0] ?? 0) - off_m)).toBeLessThan(1.5);
  });

  test("a round lake: its diameter from everywhere, its radius from the middle", () => {
    const wind = windOn(shapeOf(circle(radius_m), { marks: [{ mark: "launch", x: 0, y: 0 }] }));
    for (const { fetch_m, launchFetch_m } of wind.directions) {
      expect(Math.abs(fetch_m - 2 * radius_m)).toBeLessThanOrEqual(1);
      expect(Math.abs((launchFetch_m[0] ?? 0) - radius_m)).toBeLessThanOrEqual(1);
    }
  });

  test("an island cuts the fetch, a bay does not lengthen it", () => {
    const island = circle(200).map(({ x, y }) => ({ x, y: y * 3 }));
    const wind = windOn(
      shapeOf(rectangle(3000, 1000), { islands: [island], marks: [{ mark: "launch", x: 500, y: 0 }] }),
    );
    expect(from(wind, "W").launchFetch_m[0]).toBe(300);
    expect(from(wind, "E").launchFetch_m[0]).toBe(1000);
    const hooked = [
      { x: 0, y: 0 },
      { x: 2000, y: 0 },
      { x: 2000, y: 1500 },
      { x: 1500, y: 1500 },
      { x: 1500, y: 500 },
      { x: 0, y: 500 },
    ];
    expect(from(windOn(shapeOf(hooked)), "W").fetch_m).toBe(2000);
    expect(from(windOn(shapeOf(hooked)), "N").fetch_m).toBe(1500);
  });

  test("on land there is no fetch, though there is water on both sides", () => {
    const ponds = [0, 500].map((x) =>
      rectangle(200, 200).map((corner) => ({ x: corner.x + x, y: corner.y })),
    );
    const cuts = scanLinesTowards(
      ponds.map((pond) => [...pond, ...pond.slice(0, 1)]),
      90,
    );
    expect(distanceToShore_m(cuts, { x: 0, y: 0 })).toBe(100);
    expect(distanceToShore_m(cuts, { x: 250, y: 0 })).toBe(0);
    expect(distanceToShore_m(cuts, { x: 900, y: 0 })).toBe(0);
  });

  test("turning the lake by a quarter turns its fetches by a quarter", () => {
    const corner = fc.record({
      angle: fc.double({ min: 0, max: 1, noNaN: true }),
      radius: fc.double({ min: 200, max: 1000, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(corner, { minLength: 5, maxLength: 12 }), (corners) => {
        const shore = corners.map(({ angle, radius }, i) => {
          const turn = (2 * Math.PI * (i + 0.8 * angle)) / corners.length;
          return { x: radius * Math.cos(turn), y: radius * Math.sin(turn) };
        });
        const before = fetches(windOn(shapeOf(shore)));
        const after = fetches(windOn(shapeOf(shore.map(({ x, y }) => ({ x: y, y: -x })))));
        // A metre of rounding, and a four-hundredth for the lines falling elsewhere in sharp corners.
        for (const [i, fetch] of after.entries())
          expect(Math.abs(fetch - (before[(i + 12) % 16] ?? 0))).toBeLessThanOrEqual(1 + fetch / 50);
      }),
      { numRuns: 25 },
    );
  });

  test("a lake twice as long has twice the fetch, and the wind from the other side the same", () => {
    const one = fetches(windOn(shapeOf(rectangle(1000, 400, 30))));
    const two = fetches(windOn(shapeOf(rectangle(2000, 800, 30))));
    for (const [i, fetch] of two.entries()) {
      expect(Math.abs(fetch - 2 * (one[i] ?? 0))).toBeLessThanOrEqual(2);
      expect(Math.abs(fetch - (two[(i + 8) % 16] ?? 0))).toBeLessThanOrEqual(1);
    }
  });
});

describe("shelter", () => {
  test("the west shore of a round lake is sheltered from a west wind, the east shore washed", () => {
    const west = from(windOn(shapeOf(circle(800))), "W");
    expect(west.sheltered.sides).toEqual(["SW", "W", "NW"]);
    expect(west.washed.sides).toEqual(["NE", "E", "SE"]);
  });

  test("the lee of an island is sheltered though it lies in mid-lake", () => {
    const wind = windOn(shapeOf(circle(1000), { islands: [circle(150)] }));
    const west = from(wind, "W");
    const isIn = (parts: typeof west.washed, ring: number, at: number): boolean =>
      parts.stretches.some((part) => part.ring === ring && part.from <= at && at < part.to);
    const island = wind.shore[1] ?? [];
    const eastEnd =
      island.reduce((best, [lon], i) => (lon > (island[best]?.[0] ?? -180) ? i : best), 0) %
      (island.length - 1);
    const westEnd =
      island.reduce((best, [lon], i) => (lon < (island[best]?.[0] ?? 180) ? i : best), 0) %
      (island.length - 1);
    expect(isIn(west.sheltered, 1, eastEnd)).toBe(true);
    expect(isIn(west.sheltered, 1, westEnd)).toBe(false);
  });

  test("no stretch of shore is both", () => {
    for (const { sheltered, washed } of windOn(shapeOf(rectangle(2000, 300, 20))).directions)
      for (const one of sheltered.stretches)
        for (const other of washed.stretches)
          expect(one.ring === other.ring && one.from < other.to && other.from < one.to).toBe(false);
  });
});

describe("waves", () => {
  test.each(SPM_WAVES.rows)(`${SPM_WAVES.citation}: $wind_mps m/s over $fetch_m m`, (row) => {
    const { height_m, period_s, growth_min } = fetchLimitedWaves(row.wind_mps, row.fetch_m);
    expect(Math.abs(height_m / row.height_m - 1)).toBeLessThan(SPM_WAVES.tolerance);
    expect(Math.abs(period_s / row.period_s - 1)).toBeLessThan(SPM_WAVES.tolerance);
    expect(Math.abs(growth_min / row.growth_min - 1)).toBeLessThan(SPM_WAVES.tolerance);
  });

  test.each(CEM_HEIGHTS.rows)(`${CEM_HEIGHTS.citation}: $wind_mps m/s over $fetch_m m`, (row) => {
    expect(Math.abs(cemWaveHeight_m(row.wind_mps, row.fetch_m) / row.height_m - 1)).toBeLessThan(
      CEM_HEIGHTS.tolerance,
    );
  });

  test("a course's worked problem: period, and no higher than the grown sea", () => {
    const { adjustedWind_mps, fetch_m, period_s, tolerance_s, grown_m } = SPM_PROBLEM;
    // U_A = 0.71 U^1.23 solved for U.
    const wind_mps = (adjustedWind_mps / 0.71) ** (1 / 1.23);
    expect(Math.abs(fetchLimitedWaves(wind_mps, fetch_m).period_s - period_s)).toBeLessThan(tolerance_s);
    const grown = (SPM_GROWN_HEIGHT * adjustedWind_mps ** 2) / 9.81;
    expect(Math.abs(fetchLimitedWaves(wind_mps, 3 * grown_m).height_m / grown - 1)).toBeLessThan(0.001);
    expect(fetchLimitedWaves(wind_mps, 0.9 * grown_m).height_m).toBeLessThan(0.96 * grown);
  });

  test("the forces carry WMO's limits", () => {
    expect(BEAUFORT.map(({ force, least_mps, most_mps }) => ({ force, least_mps, most_mps }))).toEqual(
      BEAUFORT_LIMITS,
    );
    for (const { force, most_mph } of BEAUFORT_MPH) {
      const { most_mps = 0 } = BEAUFORT.find((one) => one.force === force) ?? {};
      expect(Math.round((most_mps * 3600) / 1609.344)).toBe(most_mph);
    }
  });

  test("a lake shows the waves of its longest fetch at the top of each force", () => {
    const wind = windOn(shapeOf(rectangle(1000, 300)));
    expect(wind.forces.map(({ force }) => force)).toEqual([3, 4, 5, 6]);
    for (const { most_mps, height_m } of wind.forces) {
      expect(height_m.to).toBeCloseTo(fetchLimitedWaves(most_mps, wind.longest.fetch_m).height_m, 2);
      expect(height_m.from).toBeLessThanOrEqual(height_m.to);
    }
    expect(from(wind, "W").heights_m).toEqual(wind.forces.map(({ height_m }) => height_m.to));
  });
});

describe("words for small craft", () => {
  test("from force 5 on everybody is ashore, and float tubes from force 4", () => {
    for (const height_m of [0, 0.2, 1]) {
      expect(craftAdvice(5, height_m)).toBe("Everybody: be ashore.");
      expect(craftAdvice(6, height_m)).toBe("Everybody: be ashore.");
      expect(craftAdvice(4, height_m)).toMatch(/^(Float tubes and pontoons|Everybody)[^.]*: be ashore\./);
    }
  });

  test("high waves only ever make the advice stricter", () => {
    expect(craftAdvice(3, 0.1)).toBe(
      "Float tubes and pontoons: keep to the sheltered shore. Canoes and kayaks, small open boats: keep close to shore.",
    );
    expect(craftAdvice(3, 0.4)).toBe(
      "Float tubes and pontoons: be ashore. Canoes and kayaks, small open boats: keep to the sheltered shore.",
    );
    expect(craftAdvice(4, 0.4)).toBe("Everybody: be ashore.");
  });

  test("nothing is ever called safe", () => {
    for (const force of [3, 4, 5, 6])
      for (const height_m of [0, 0.1, 0.3, 0.6])
        expect(craftAdvice(force, height_m)).not.toMatch(/safe|fine|good/i);
  });
});
