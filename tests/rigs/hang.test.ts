import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { sphereDrag_N } from "../../build/rigs/drag.ts";
import { ballDiameter_m, GRAVITY_MPS2, sunkWeight_N, waterAt } from "../../build/rigs/fluid.ts";
import {
  atFly,
  hang,
  type LineSegment,
  lean_deg,
  lift_m,
  marchUp,
  type PointLoad,
  type Stream,
} from "../../build/rigs/hang.ts";
import { HANGING_LINES, TRAILING_LINE, WORKED_LINE } from "../reference/hanging-lines.ts";
import { TETHER_TABLE } from "../reference/sinking.ts";
import { expectNear, expectWithin } from "./near.ts";

/** Hairer's ODEX by extrapolation, from npm; its own types do not compile under this project's options. */
interface Odex {
  readonly Solver: new (
    dimension: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    solve(
      slope: (s: number, y: readonly number[]) => number[],
      from: number,
      start: readonly number[],
      to: number,
    ): { readonly y: readonly number[] };
  };
}
const require = createRequire(import.meta.url);
const { Solver } = require("odex") as Odex;

/** A stream of 1 m/s in which a line of diameter d has 500 d N/m of drag when its coefficient is 1. */
const ROUND_STREAM: Stream = { speed_mps: 1, water: { density_kgm3: 1000, viscosity_m2s: 1e-6 } };
const STILL: Stream = { ...ROUND_STREAM, speed_mps: 0 };
const ROUND_N = 500;

/** A line with a given drag and weight in water per metre. */
function lineWith(length_m: number, drag_Npm: number, weight_Npm: number, top?: PointLoad): LineSegment {
  const diameter_m = drag_Npm === 0 ? 0.0002 : drag_Npm / ROUND_N;
  const area_m2 = (Math.PI / 4) * diameter_m ** 2;
  return {
    length_m,
    lowerDiameter_m: diameter_m,
    upperDiameter_m: diameter_m,
    density_kgm3: 1000 + weight_Npm / (GRAVITY_MPS2 * area_m2),
    ...(top === undefined ? {} : { top }),
  };
}

describe("hang, 200 steps a line", () => {
  test.each(HANGING_LINES)("$citation", (published) => {
    const segments = published.lines.map((line) =>
      lineWith(line.length_m, line.drag_Npm, line.weight_Npm, "top" in line ? line.top : undefined),
    );
    const stream = published.lines.some(({ drag_Npm }) => drag_Npm > 0) ? ROUND_STREAM : STILL;
    const found = hang(published.end, segments, stream, 200, () => 1);
    expectNear(found.x_m, published.x_m, published.tolerance);
    expectNear(found.z_m, published.z_m, published.tolerance);
    if ("lean_deg" in published) {
      expectNear(lean_deg(found), published.lean_deg, published.tolerance);
      expectNear(Math.hypot(found.pullX_N, found.pullZ_N), published.pull_N, published.tolerance);
    }
  });

  test("the rig model's worked line, and the lift that follows from it", () => {
    const { length_m, diameter_m, speed_mps, weight_N, coefficient, density_kgm3 } = WORKED_LINE;
    const line = { length_m, lowerDiameter_m: diameter_m, upperDiameter_m: diameter_m, density_kgm3 };
    const stream = { speed_mps, water: { density_kgm3, viscosity_m2s: 1.3e-6 } };
    const found = hang({ weight_N, drag_N: 0 }, [line], stream, 200, () => coefficient);
    expectNear(found.z_m, WORKED_LINE.z_m, 1e-4);
    expectNear(found.x_m, WORKED_LINE.x_m, 1e-4);
    expectNear(lean_deg(found), WORKED_LINE.lean_deg, 1e-4);
    expectNear(lift_m(found), length_m - WORKED_LINE.z_m, 1e-4);
  });

  test("a long heavy line without end weight trails at its critical angle (closed form)", () => {
    const drag_Npm = 0.001;
    const line = lineWith(60, drag_Npm, TRAILING_LINE.weightOverDrag * drag_Npm);
    const found = hang({ weight_N: 1e-5, drag_N: 0 }, [line], ROUND_STREAM, 6000, () => 1);
    expectWithin(90 - lean_deg(found), TRAILING_LINE.toFlow_deg, TRAILING_LINE.tolerance_deg);
  });
});

describe(`lean of a shot: ${TETHER_TABLE.citation}`, () => {
  test.each(TETHER_TABLE.rows)(
    "$what, $diameter_mm mm",
    ({ density_kgm3, diameter_mm, speed_mps, lean_deg: lean }) => {
      const water = waterAt(10);
      const diameter_m = diameter_mm / 1000;
      const mass_g = 1000 * density_kgm3 * (Math.PI / 6) * diameter_m ** 3;
      const ball = {
        weight_N: sunkWeight_N(mass_g, density_kgm3, water),
        drag_N: sphereDrag_N(ballDiameter_m(mass_g, density_kgm3), speed_mps, water),
      };
      expectNear(lean_deg(atFly(ball)), lean, TETHER_TABLE.tolerance);
    },
  );
});

describe("hang against ODEX: fly, fluorocarbon tippet, shot, nylon, tapered nylon", () => {
  const fly: PointLoad = { weight_N: 0.0012, drag_N: 0.00004 };
  const shot: PointLoad = { weight_N: 0.0034, drag_N: 0.00005 };
  const segments: LineSegment[] = [
    { length_m: 0.9, lowerDiameter_m: 0.0001524, upperDiameter_m: 0.0001524, density_kgm3: 1760, top: shot },
    { length_m: 1.8, lowerDiameter_m: 0.0001778, upperDiameter_m: 0.0001778, density_kgm3: 1140 },
    { length_m: 2.1, lowerDiameter_m: 0.0002032, upperDiameter_m: 0.0004, density_kgm3: 1140 },
  ];

  /** The same line written otherwise: along it dT = w cos(theta) ds, across it T dtheta = (q - w sin(theta)) ds. */
  function byOdex({ speed_mps, water }: Stream): {
    x_m: number;
    z_m: number;
    pull_N: number;
    lean_deg: number;
  } {
    let state = [Math.hypot(fly.weight_N, fly.drag_N), Math.atan2(fly.drag_N, fly.weight_N), 0, 0];
    for (const { length_m, lowerDiameter_m, upperDiameter_m, density_kgm3, top } of segments) {
      const solver = new Solver(4);
      solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
      const slope = (s: number, [pull = 0, lean = 0]: readonly number[]): number[] => {
        const diameter = lowerDiameter_m + ((upperDiameter_m - lowerDiameter_m) * s) / length_m;
        const across = speed_mps * Math.cos(lean);
        const drag =
          speed_mps === 0
            ? 0
            : 0.5 *
              water.density_kgm3 *
              (1 + 10 * ((across * diameter) / water.viscosity_m2s) ** (-2 / 3)) *
              diameter *
              across ** 2;
        const weight = (density_kgm3 - water.density_kgm3) * 9.80665 * Math.PI * (diameter / 2) ** 2;
        return [
          weight * Math.cos(lean),
          (drag - weight * Math.sin(lean)) / pull,
          Math.sin(lean),
          Math.cos(lean),
        ];
      };
      const [pull = 0, lean = 0, x = 0, z = 0] = solver.solve(slope, 0, state, length_m).y;
      const sideways = pull * Math.sin(lean) + (top?.drag_N ?? 0);
      const down = pull * Math.cos(lean) + (top?.weight_N ?? 0);
      state = [Math.hypot(sideways, down), Math.atan2(sideways, down), x, z];
    }
    const [pull_N = 0, lean = 0, x_m = 0, z_m = 0] = state;
    return { x_m, z_m, pull_N, lean_deg: (lean * 180) / Math.PI };
  }

  test.each([0.01, 0.05, 0.1, 0.2])("at %d m/s", (speed_mps) => {
    const stream = { speed_mps, water: waterAt(8) };
    const found = hang(fly, segments, stream);
    const other = byOdex(stream);
    expectNear(found.x_m, other.x_m, 1e-3);
    expectNear(found.z_m, other.z_m, 1e-3);
    expectNear(Math.hypot(found.pullX_N, found.pullZ_N), other.pull_N, 1e-3);
    expectNear(lean_deg(found), other.lean_deg, 1e-3);
    expectWithin(lift_m(found), 4.8 - other.z_m, 0.0005);
  });
});

test("in still water every rig hangs straight", () => {
  const found = hang({ weight_N: 0.001, drag_N: 0 }, [lineWith(3, 0, 0.0001)], STILL);
  expect(found.x_m).toBe(0);
  expectWithin(lift_m(found), 0, 1e-12);
});

test("a fly that weighs nothing in still water breaks nothing", () =>
  expect(lift_m(marchUp(atFly({ weight_N: 0, drag_N: 0 }), lineWith(3, 0, 0), STILL))).toBeCloseTo(0, 12));
