import { describe, expect, test } from "vitest";
import {
  cylinderDragCoefficient,
  schillerNaumann,
  sphereDrag_N,
  sphereDragCoefficient,
} from "../../build/rigs/physics/drag.ts";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import {
  CYLINDER_TABLE,
  LINE_DRAG_TABLE,
  SCHILLER_NAUMANN_TABLE,
  STANDARD_SPHERE_TABLE,
} from "../reference/drag.ts";
import { expectNear } from "./near.ts";

interface CoefficientTable {
  readonly citation: string;
  readonly tolerance: number;
  readonly rows: readonly { readonly reynolds: number; readonly coefficient: number }[];
}
const LAWS: readonly [name: string, law: (reynolds: number) => number, table: CoefficientTable][] = [
  ["schillerNaumann", schillerNaumann, SCHILLER_NAUMANN_TABLE],
  ["sphereDragCoefficient", sphereDragCoefficient, STANDARD_SPHERE_TABLE],
  ["cylinderDragCoefficient", cylinderDragCoefficient, CYLINDER_TABLE],
];

for (const [name, law, { citation, tolerance, rows }] of LAWS)
  describe(`${name}: ${citation}`, () => {
    test.each(rows)("Re $reynolds", ({ reynolds, coefficient }) =>
      expectNear(law(reynolds), coefficient, tolerance),
    );
  });

test("a sphere's drag grows with speed without a jump, through every piece of the law", () => {
  const water = waterAt(10);
  let last_N = 0;
  for (let speed_mps = 0.001; speed_mps < 20; speed_mps *= 1.01) {
    const drag_N = sphereDrag_N(0.004, speed_mps, water);
    expect(drag_N).toBeGreaterThan(last_N);
    if (last_N > 0) expect(drag_N / last_N).toBeLessThan(1.03);
    last_N = drag_N;
  }
});

test("still water drags at nothing", () => expect(sphereDrag_N(0.004, 0, waterAt(4))).toBe(0));

describe(`line: ${LINE_DRAG_TABLE.citation}`, () => {
  test.each(LINE_DRAG_TABLE.rows)("$diameter_mm mm at $speed_mps m/s", (row) => {
    const { density_kgm3, viscosity_m2s } = waterAt(10);
    const diameter_m = row.diameter_mm / 1000;
    const coefficient = cylinderDragCoefficient((row.speed_mps * diameter_m) / viscosity_m2s);
    const drag_mNpm = 1000 * 0.5 * density_kgm3 * coefficient * diameter_m * row.speed_mps ** 2;
    expectNear(drag_mNpm, row.drag_mNpm, LINE_DRAG_TABLE.tolerance);
  });
});
