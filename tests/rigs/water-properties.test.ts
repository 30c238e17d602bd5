import { describe, expect, test } from "vitest";
import { segmentWeight_N } from "../../build/rigs/physics/hanging-line.ts";
import {
  ballDiameter_m,
  GRAVITY_MPS2,
  sunkWeight_N,
  waterAt,
  waterDensity_kgm3,
  waterViscosity_Pas,
} from "../../build/rigs/physics/water-properties.ts";
import { BALL_TABLE, SUNK_LINE_TABLE } from "../reference/leaders.ts";
import { SUNK_SHARE_TABLE } from "../reference/sinking.ts";
import {
  DENSITY_AT_25_C,
  DENSITY_TABLE,
  KINEMATIC_AT_10_C_MM2S,
  VISCOSITY_TABLE,
} from "../reference/water.ts";
import { expectNear, expectWithin } from "./near.ts";

describe(`waterDensity_kgm3: ${DENSITY_TABLE.citation}`, () => {
  test.each(DENSITY_TABLE.rows)("$water_C °C", ({ water_C, density_kgm3 }) =>
    expectWithin(waterDensity_kgm3(water_C), density_kgm3, DENSITY_TABLE.tolerance_kgm3),
  );
  test("25 °C, published spot value", () =>
    expectWithin(
      waterDensity_kgm3(DENSITY_AT_25_C.water_C),
      DENSITY_AT_25_C.density_kgm3,
      DENSITY_AT_25_C.tolerance_kgm3,
    ));
});

describe(`waterViscosity_Pas: ${VISCOSITY_TABLE.citation}`, () => {
  test.each(VISCOSITY_TABLE.rows)("$water_C °C", ({ water_C, viscosity_mPas }) =>
    expectNear(1000 * waterViscosity_Pas(water_C), viscosity_mPas, VISCOSITY_TABLE.tolerance),
  );
});

test("kinematic viscosity at 10 °C", () =>
  expectNear(1e6 * waterAt(10).viscosity_m2s, KINEMATIC_AT_10_C_MM2S, VISCOSITY_TABLE.tolerance));

test.each([-0.1, 40.1, Number.NaN])("water of %d °C is outside the formulas", (water_C) => {
  expect(() => waterDensity_kgm3(water_C)).toThrow(RangeError);
  expect(() => waterViscosity_Pas(water_C)).toThrow(RangeError);
});

describe(`sunkWeight_N: ${SUNK_SHARE_TABLE.citation}`, () => {
  test.each(SUNK_SHARE_TABLE.rows)("$what keeps $share", ({ density_kgm3, share }) =>
    expectWithin(sunkWeight_N(1000, density_kgm3, waterAt(10)) / GRAVITY_MPS2, share, 1e-4),
  );
});

describe(`segmentWeight_N: ${SUNK_LINE_TABLE.citation}`, () => {
  test.each(SUNK_LINE_TABLE.rows)("$what, 0.008 in", ({ density_kgm3, diameter_m, weight_uNpm }) => {
    const metre = { length_m: 1, lowerDiameter_m: diameter_m, upperDiameter_m: diameter_m, density_kgm3 };
    const found_uN = 1e6 * segmentWeight_N(metre, waterAt(SUNK_LINE_TABLE.water_C));
    expectNear(found_uN, weight_uNpm, SUNK_LINE_TABLE.tolerance);
  });
});

describe(`ballDiameter_m: ${BALL_TABLE.citation}`, () => {
  test.each(BALL_TABLE.rows)("$what, $mass_g g", ({ mass_g, density_kgm3, diameter_m }) =>
    expectNear(ballDiameter_m(mass_g, density_kgm3), diameter_m, BALL_TABLE.tolerance),
  );
});
