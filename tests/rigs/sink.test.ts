import { describe, expect, test } from "vitest";
import { GRAVITY_MPS2, type Water, waterAt } from "../../build/rigs/physics/water-properties.ts";
import { sinkTableSchema } from "../../build/rigs/rig-schemas.ts";
import { settlingTime_s, shotSpeed_mps, sinkTable, terminalSpeed_mps } from "../../build/rigs/sink.ts";
import { COAL_PARTICLE, STOKES_PARTICLE, TERMINAL_SPEED_TABLE } from "../reference/sinking.ts";
import { box } from "./box-fixture.ts";
import { expectNear } from "./near.ts";

const ballWeight_N = (diameter_m: number, density_kgm3: number, water: Water): number =>
  (density_kgm3 - water.density_kgm3) * GRAVITY_MPS2 * (Math.PI / 6) * diameter_m ** 3;

describe(`terminalSpeed_mps: ${TERMINAL_SPEED_TABLE.citation}`, () => {
  test.each(TERMINAL_SPEED_TABLE.rows)("$what, $diameter_mm mm, $water_C °C", (row) => {
    const water = waterAt(row.water_C);
    const diameter_m = row.diameter_mm / 1000;
    const found = terminalSpeed_mps(ballWeight_N(diameter_m, row.density_kgm3, water), diameter_m, water);
    expectNear(found, row.speed_mps, TERMINAL_SPEED_TABLE.tolerance);
    const mass_g = 1000 * row.density_kgm3 * (Math.PI / 6) * diameter_m ** 3;
    expectNear(shotSpeed_mps(mass_g, row.density_kgm3, water), found, 1e-9);
  });
});

describe.each([COAL_PARTICLE, STOKES_PARTICLE])("terminalSpeed_mps: $citation", (particle) => {
  const { density_kgm3, diameter_m, water, speed_mps, tolerance } = particle;
  test("published speed", () =>
    expectNear(
      terminalSpeed_mps(ballWeight_N(diameter_m, density_kgm3, water), diameter_m, water),
      speed_mps,
      tolerance,
    ));
});

test("what floats does not sink", () => expect(shotSpeed_mps(1, 900, waterAt(10))).toBe(0));

test("settling time is length over speed, up to the next 5 s", () => {
  expect(settlingTime_s(4, 1)).toBe(5);
  expect(settlingTime_s(5, 1)).toBe(5);
  expect(settlingTime_s(5.1, 1)).toBe(10);
  expect(settlingTime_s(0, 1)).toBe(0);
});

describe("sinkTable", () => {
  const table = sinkTable(box, 7.6, [1, 3, 6]);
  test("keeps its schema and names the whole degree it is worked at", () => {
    expect(sinkTableSchema.parse(table)).toEqual(table);
    expect(table.water_C).toBe(8);
  });
  test("runs from slow to fast and heavier shot of one metal sinks faster", () =>
    expect(table.rows.map(({ what }) => what)).toEqual(["Fly alone", "No. 4", "BB", "AB"]));
  test("deeper never takes less time, and the rig never settles before its shot is down", () => {
    for (const { depths, speed_mps } of table.rows)
      for (const [i, { depth_m, seconds, settle_s }] of depths.entries()) {
        expect(settle_s).toBeGreaterThanOrEqual(depth_m / speed_mps);
        expect(settle_s % 5).toBe(0);
        expect(seconds).toBeGreaterThanOrEqual(depths[i - 1]?.seconds ?? 0);
      }
  });
  test("leaves out shot that floats or is not carried", () => {
    const cork = box.shot.map((shot) => ({ ...shot, density_kgm3: 200 }));
    const none = box.shot.map((shot) => ({ ...shot, carried: 0 }));
    for (const shot of [cork, none])
      expect(sinkTable({ ...box, shot }, 8, [1]).rows.map(({ what }) => what)).toEqual(["Fly alone"]);
  });
});
