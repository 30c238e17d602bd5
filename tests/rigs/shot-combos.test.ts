import { describe, expect, test } from "vitest";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import { comboLoad, comboText, shotCombos } from "../../build/rigs/shot-combos.ts";
import { box, where } from "./box-fixture.ts";
import { expectNear } from "./near.ts";

const [four, bb] = box.shot;
if (four === undefined || bb === undefined) throw new Error("the box has two sizes of shot");

describe("shotCombos", () => {
  test("three sizes, up to three pieces: 1 + 3 + 6 + 10 = 20 combinations, each once", () => {
    const texts = shotCombos(box.shot).map(comboText);
    expect(texts).toHaveLength(20);
    expect(new Set(texts).size).toBe(20);
    expect(texts[0]).toBe("none");
  });
  test("lightest first, of one mass the fewest pieces", () => {
    const half = { name: "Half", mass_g: 0.2, density_kgm3: 7310, carried: 2, where };
    expect(shotCombos([half, { ...bb, carried: 1 }]).map(comboText)).toEqual([
      "none",
      "Half",
      "BB",
      "2 × Half",
      "BB + Half",
      "BB + 2 × Half",
    ]);
  });
  test("only what is carried", () => {
    expect(shotCombos([{ ...four, carried: 0 }])).toHaveLength(1);
    expect(shotCombos([{ ...four, carried: 2 }]).map(({ count }) => count)).toEqual([0, 1, 2]);
  });
});

test("comboLoad by hand: 2 x 0.17 g of tin in water at 8 °C, 60 s to a 9 ft rod", () => {
  const stream = { speed_mps: 2.7432 / 60, water: waterAt(8) };
  const load = comboLoad({ pieces: [{ shot: four, count: 2 }], mass_g: 0.34, count: 2 }, stream);
  // 2 x 0.17e-3 kg x 9.80665 x (1 - 999.849/7310); ball of 3.541 mm, Re 116.9, Schiller-Naumann Cd 1.017
  expectNear(load.weight_N, 2.8782e-3, 1e-4);
  expectNear(load.drag_N, 2.093e-5, 2e-3);
});
