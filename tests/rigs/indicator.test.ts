import { describe, expect, test } from "vitest";
import { GRAVITY_MPS2 } from "../../build/rigs/physics/water-properties.ts";
import {
  dryShare,
  indicatorLift_N,
  leastIndicatorDiameter_m,
  smallestIndicator,
} from "../../build/rigs/tables/indicator-buoyancy.ts";
import { box, where } from "./box-fixture.ts";
import { expectNear } from "./near.ts";

const water = { density_kgm3: 1000, viscosity_m2s: 1.3e-6 };
const ball = { name: "Ball", diameter_m: 0.02, density_kgm3: 100, carried: 1, where };

describe("Archimedes, by hand: a ball of 20 mm holds pi/6 8e-6 = 4.18879e-6 m3, 4.18879 g of water", () => {
  test("made of 100 kg/m3 it carries 4.18879 - 0.418879 = 3.76991 g before it goes under", () =>
    expectNear(indicatorLift_N(ball, water) / GRAVITY_MPS2, 3.76991e-3, 1e-5));
  test("with 1.67552 g hung on it, half of it is dry: 4.18879/2 - 0.418879", () =>
    expectNear(dryShare(ball, 1.67552e-3 * GRAVITY_MPS2, water), 0.5, 1e-5));
  test("empty, nine tenths of it is dry", () => expectNear(dryShare(ball, 0, water), 0.9, 1e-9));
  test("overloaded, nothing of it is dry", () => expect(dryShare(ball, 1, water)).toBe(0));
});

test("the least diameter leaves exactly the share dry", () => {
  for (const load_N of [0.001, 0.005, 0.02]) {
    const diameter_m = leastIndicatorDiameter_m(load_N, 0.5, 100, water) ?? Number.NaN;
    expectNear(dryShare({ diameter_m, density_kgm3: 100 }, load_N, water), 0.5, 1e-9);
  }
});

test("stuff that alone wets more than the share allows has no least diameter", () =>
  expect(leastIndicatorDiameter_m(0.001, 0.5, 600, water)).toBeUndefined());

test("the smallest that is dry enough is taken, only from those carried", () => {
  const load_N = 0.6e-3 * GRAVITY_MPS2; // 0.6 g: a 12 mm ball keeps 0.9 - 0.6/0.905 = 0.24 dry, a 16 mm one 0.9 - 0.6/2.145 = 0.62
  expect(smallestIndicator(load_N, 0.5, box.indicators, water)?.name).toBe("Medium");
  expect(smallestIndicator(load_N, 0.2, box.indicators, water)?.name).toBe("Small");
  const noMedium = box.indicators.map((one) => (one.name === "Medium" ? { ...one, carried: 0 } : one));
  expect(smallestIndicator(load_N, 0.5, noMedium, water)?.name).toBe("Large");
  expect(smallestIndicator(1, 0.5, box.indicators, water)).toBeUndefined();
});
