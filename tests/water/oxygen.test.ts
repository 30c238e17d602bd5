import { describe, expect, test } from "vitest";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import type { Report } from "../../build/model/club.ts";
import { oxygenSaturation_mgL, standardPressure_Pa } from "../../build/water/oxygen.ts";
import { composeWater, handlingWords, warmWaterRule } from "../../build/water/water.ts";
import {
  OXYGEN_AT_1_ATM,
  OXYGEN_BY_HEIGHT,
  OXYGEN_BY_PRESSURE,
  OXYGEN_EN_25814,
  OXYGEN_PERCENT,
  OXYGEN_STANDARD_METHODS,
  PRESSURE_FEET,
  PRESSURE_GEOMETRIC,
  PRESSURE_ISO_2533,
} from "../reference/oxygen-saturation.ts";
import { LAKE, OPTIONS } from "./shapes.ts";

const ATM_PA = 101_325;
const MMHG_PA = ATM_PA / 760;
const PSI_PA = 6894.757;
const FOOT_M = 0.3048;

/** Geometric height of a geopotential one: z = r H / (r - H). */
const geometric_m = (geopotential_m: number): number =>
  (6_356_766 * geopotential_m) / (6_356_766 - geopotential_m);

describe("pressure of the standard atmosphere", () => {
  test.each(PRESSURE_ISO_2533)("ISO 2533 at $geopotential_m m", (row) => {
    // A millimetre short of the top of the layer, where the division leaves 11,000 m by a rounding.
    const elevation_m = Math.min(geometric_m(row.geopotential_m), 11_000);
    if (row.geopotential_m < 11_000)
      expect(Math.abs(standardPressure_Pa(elevation_m) - row.pressure_Pa)).toBeLessThan(row.tolerance_Pa);
  });

  test.each(PRESSURE_GEOMETRIC)("U.S. Standard Atmosphere 1976 at $elevation_m m", (row) => {
    expect(Math.abs(standardPressure_Pa(row.elevation_m) - row.pressure_Pa)).toBeLessThan(row.tolerance_Pa);
  });

  test.each(PRESSURE_FEET)("printed table at $elevation_ft ft", (row) => {
    expect(
      Math.abs(standardPressure_Pa(row.elevation_ft * FOOT_M) / PSI_PA - row.pressure_psia),
    ).toBeLessThan(row.tolerance_psia);
  });

  test("heights without a standard atmosphere are refused", () => {
    expect(() => standardPressure_Pa(11_001)).toThrow(RangeError);
    expect(() => standardPressure_Pa(Number.NaN)).toThrow(RangeError);
  });
});

describe("oxygen saturation", () => {
  test.each(OXYGEN_AT_1_ATM.rows)(`${OXYGEN_AT_1_ATM.citation}, $water_C degC`, (row) => {
    expect(Math.abs(oxygenSaturation_mgL(row.water_C, ATM_PA) - row.oxygen_mgL)).toBeLessThan(
      OXYGEN_AT_1_ATM.tolerance_mgL,
    );
  });

  test.each(OXYGEN_EN_25814)("EN 25814, $water_C degC", (row) => {
    expect(Math.abs(oxygenSaturation_mgL(row.water_C, ATM_PA) - row.oxygen_mgL)).toBeLessThan(
      row.tolerance_mgL,
    );
  });

  test.each(OXYGEN_BY_PRESSURE.rows)(
    `${OXYGEN_BY_PRESSURE.citation}, $water_C degC, $pressure_mmHg mmHg`,
    (row) => {
      expect(
        Math.abs(oxygenSaturation_mgL(row.water_C, row.pressure_mmHg * MMHG_PA) - row.oxygen_mgL),
      ).toBeLessThan(OXYGEN_BY_PRESSURE.tolerance_mgL);
    },
  );

  test.each(OXYGEN_BY_HEIGHT.rows)(
    `${OXYGEN_BY_HEIGHT.citation}, $water_C degC at $geopotential_m m`,
    (row) => {
      const pressure_Pa = standardPressure_Pa(geometric_m(row.geopotential_m));
      expect(Math.abs(oxygenSaturation_mgL(row.water_C, pressure_Pa) - row.oxygen_mgL)).toBeLessThan(
        OXYGEN_BY_HEIGHT.tolerance_mgL,
      );
    },
  );

  test("Standard Methods: 20 degC at 0.7 atm", () => {
    const { water_C, pressure_atm, oxygen_mgL, tolerance_mgL } = OXYGEN_STANDARD_METHODS;
    expect(Math.abs(oxygenSaturation_mgL(water_C, pressure_atm * ATM_PA) - oxygen_mgL)).toBeLessThan(
      tolerance_mgL,
    );
  });

  test("a reading in per cent of saturation", () => {
    const { reading_mgL, water_C, pressure_mmHg, percent, tolerance } = OXYGEN_PERCENT;
    const share = (100 * reading_mgL) / oxygenSaturation_mgL(water_C, pressure_mmHg * MMHG_PA);
    expect(Math.abs(share - percent)).toBeLessThan(tolerance);
  });

  test("temperatures the fit was never made for are refused", () => {
    expect(() => oxygenSaturation_mgL(-0.1, ATM_PA)).toThrow(RangeError);
    expect(() => oxygenSaturation_mgL(40.1, ATM_PA)).toThrow(RangeError);
  });
});

const report = (date: string, rest: Partial<Report>): Report => {
  const day = parseCalendarDate(date);
  if (day === undefined) throw new Error(date);
  return {
    lake: "ember",
    date: day,
    catches: [],
    samples: [],
    where: { file: "reports/2026.yaml", line: 1, column: 1 },
    ...rest,
  };
};

describe("a lake's oxygen and warmth", () => {
  test("the table covers 0 to 20 degC at the lake's own height", () => {
    const { oxygen } = composeWater({ ...LAKE, elevation_m: geometric_m(2000) }, undefined, OPTIONS).water;
    expect(oxygen?.saturation.map(({ water_C }) => water_C)).toEqual(Array.from({ length: 21 }, (_, i) => i));
    for (const row of OXYGEN_BY_HEIGHT.rows.filter((one) => one.geopotential_m === 2000 && one.water_C <= 20))
      expect(oxygen?.saturation[row.water_C]?.oxygen_mgL).toBeCloseTo(row.oxygen_mgL, 1);
  });

  test("readings without a temperature, and lakes without a height, get no per cent", () => {
    const reports = [
      report("2026-05-01", { oxygen_mgL: 9 }),
      report("2026-05-02", { water_C: -0.5, oxygen_mgL: 9 }),
      report("2026-05-03", { water_C: 10, oxygen_mgL: 4.415 }),
    ];
    const at2000 = composeWater({ ...LAKE, elevation_m: geometric_m(2000) }, undefined, {
      ...OPTIONS,
      reports,
    });
    // Half of the published 8.83 mg/L.
    expect(at2000.water.oxygen?.readings).toEqual([
      { date: "2026-05-03", water_C: 10, oxygen_mgL: 4.415, percent: 50 },
    ]);
    const { elevation_m: _, ...unknown } = LAKE;
    expect(composeWater(unknown, undefined, { ...OPTIONS, reports }).water.oxygen).toBeNull();
  });

  test("from 18 degC (64 degF) care, from 20 degC (68 degF) stop, by the latest temperature only", () => {
    expect(handlingWords(17.9)).toBeNull();
    expect(handlingWords(18)).toMatch(/Too warm/);
    expect(handlingWords(19.9)).toMatch(/Too warm/);
    expect(handlingWords(20)).toMatch(/^Stop\./);
    expect(warmWaterRule("imperial")).toMatch(/64 °F.*68 °F/);
    expect(warmWaterRule("metric")).toMatch(/18 °C.*20 °C/);
    const warm = report("2026-07-01", { water_C: 22 });
    const cool = report("2026-07-03", { water_C: 15 });
    const silent = report("2026-07-05", {});
    const latest = (reports: readonly Report[]) =>
      composeWater(LAKE, undefined, { ...OPTIONS, reports }).water.warmWater.latest;
    expect(latest([warm, silent])).toMatchObject({ date: "2026-07-01", water_C: 22 });
    expect(latest([cool, warm])).toBeNull();
  });
});
