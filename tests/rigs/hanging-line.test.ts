import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import {
  type Body,
  ballBody,
  cutLine,
  evenStream,
  freeEnd,
  hang,
  type LineSegment,
  lean_deg,
  lift_m,
  marchUp,
  NO_BODY,
} from "../../build/rigs/physics/hanging-line.ts";
import { GRAVITY_MPS2, type Water, waterAt } from "../../build/rigs/physics/water-properties.ts";
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
const ROUND_WATER = { density_kgm3: 1000, viscosity_m2s: 1e-6 };
const ROUND_STREAM = evenStream(1, ROUND_WATER);
const STILL = evenStream(0, ROUND_WATER);
/** A line whose drag coefficient is the same at every speed. */
const evenDrag = (constant: number) => ({ constant, twoThirds: 0 });

/** A body of a given drag, whatever the speed. */
interface PointLoad {
  readonly weight_N: number;
  readonly drag_N: number;
}
const loadBody = ({ weight_N, drag_N }: PointLoad): Body => ({ weight_N, dragAt_N: () => drag_N });

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
    ...(top === undefined ? {} : { top: loadBody(top) }),
  };
}

describe("hang, 200 steps a line", () => {
  test.each(HANGING_LINES)("$citation", (published) => {
    const segments = published.lines.map((line) =>
      lineWith(line.length_m, line.drag_Npm, line.weight_Npm, "top" in line ? line.top : undefined),
    );
    const stream = published.lines.some(({ drag_Npm }) => drag_Npm > 0) ? ROUND_STREAM : STILL;
    const found = hang(loadBody(published.end), segments, stream, 200, evenDrag(1));
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
    const stream = evenStream(speed_mps, { density_kgm3, viscosity_m2s: 1.3e-6 });
    const found = hang({ ...NO_BODY, weight_N }, [line], stream, 200, evenDrag(coefficient));
    expectNear(found.z_m, WORKED_LINE.z_m, 1e-4);
    expectNear(found.x_m, WORKED_LINE.x_m, 1e-4);
    expectNear(lean_deg(found), WORKED_LINE.lean_deg, 1e-4);
    expectNear(lift_m(found), length_m - WORKED_LINE.z_m, 1e-4);
  });

  test("a long heavy line without end weight trails at its critical angle (closed form)", () => {
    const drag_Npm = 0.001;
    const line = lineWith(60, drag_Npm, TRAILING_LINE.weightOverDrag * drag_Npm);
    const found = hang({ ...NO_BODY, weight_N: 1e-5 }, [line], ROUND_STREAM, 6000, evenDrag(1));
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
      const ball = ballBody({ mass_g, density_kgm3 }, water);
      expectNear(lean_deg(freeEnd(ball, evenStream(speed_mps, water))), lean, TETHER_TABLE.tolerance);
    },
  );
});

describe("hang against ODEX: fly, fluorocarbon tippet, shot, nylon, tapered nylon", () => {
  const fly: PointLoad = { weight_N: 0.0012, drag_N: 0.00004 };
  const shot: PointLoad = { weight_N: 0.0034, drag_N: 0.00005 };
  const segments: LineSegment[] = [
    {
      length_m: 0.9,
      lowerDiameter_m: 0.0001524,
      upperDiameter_m: 0.0001524,
      density_kgm3: 1760,
      top: loadBody(shot),
    },
    { length_m: 1.8, lowerDiameter_m: 0.0001778, upperDiameter_m: 0.0001778, density_kgm3: 1140 },
    { length_m: 2.1, lowerDiameter_m: 0.0002032, upperDiameter_m: 0.0004, density_kgm3: 1140 },
  ];

  /** The same line written otherwise: along it dT = w cos(theta) ds, across it T dtheta = (q - w sin(theta)) ds. */
  function byOdex(
    speed_mps: number,
    water: Water,
  ): {
    x_m: number;
    z_m: number;
    pull_N: number;
    lean_deg: number;
  } {
    let state = [Math.hypot(fly.weight_N, fly.drag_N), Math.atan2(fly.drag_N, fly.weight_N), 0, 0];
    for (const { length_m, lowerDiameter_m, upperDiameter_m, density_kgm3, top } of segments) {
      const body = top ?? NO_BODY;
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
      const sideways = pull * Math.sin(lean) + body.dragAt_N(speed_mps);
      const down = pull * Math.cos(lean) + body.weight_N;
      state = [Math.hypot(sideways, down), Math.atan2(sideways, down), x, z];
    }
    const [pull_N = 0, lean = 0, x_m = 0, z_m = 0] = state;
    return { x_m, z_m, pull_N, lean_deg: (lean * 180) / Math.PI };
  }

  test.each([0.01, 0.05, 0.1, 0.2])("at %d m/s", (speed_mps) => {
    const water = waterAt(8);
    const found = hang(loadBody(fly), segments, evenStream(speed_mps, water));
    const other = byOdex(speed_mps, water);
    expectNear(found.x_m, other.x_m, 1e-3);
    expectNear(found.z_m, other.z_m, 1e-3);
    expectNear(Math.hypot(found.pullX_N, found.pullZ_N), other.pull_N, 1e-3);
    expectNear(lean_deg(found), other.lean_deg, 1e-3);
    expectWithin(lift_m(found), 4.8 - other.z_m, 0.0005);
  });
});

test("in still water every rig hangs straight", () => {
  const found = hang({ ...NO_BODY, weight_N: 0.001 }, [lineWith(3, 0, 0.0001)], STILL);
  expect(found.x_m).toBe(0);
  expectWithin(lift_m(found), 0, 1e-12);
});

test("a fly that weighs nothing in still water breaks nothing", () =>
  expect(lift_m(marchUp(freeEnd(NO_BODY, STILL), lineWith(3, 0, 0), STILL))).toBeCloseTo(0, 12));

test("water that runs the other way pulls the other way, as far", () => {
  const water = waterAt(10);
  const shot = ballBody({ mass_g: 0.4, density_kgm3: 7310 }, water);
  const line = [{ length_m: 2, lowerDiameter_m: 2e-4, upperDiameter_m: 2e-4, density_kgm3: 1140 }];
  const to = hang(shot, line, evenStream(0.05, water));
  const back = hang(shot, line, evenStream(-0.05, water));
  expectWithin(back.x_m, -to.x_m, 1e-12);
  expectWithin(back.z_m, to.z_m, 1e-12);
  expect(to.x_m).toBeGreaterThan(0.05);
});

describe("cutLine", () => {
  const tapered: LineSegment = {
    length_m: 4,
    lowerDiameter_m: 1e-4,
    upperDiameter_m: 5e-4,
    density_kgm3: 1140,
  };
  const level: LineSegment = {
    length_m: 2,
    lowerDiameter_m: 1e-4,
    upperDiameter_m: 1e-4,
    density_kgm3: 1140,
  };
  const shot = loadBody({ weight_N: 1, drag_N: 0 });
  const pieces = cutLine(
    [level, tapered],
    [{ at_m: 5 }, { at_m: 0.5, body: shot }, { at_m: 9 }, { at_m: 2 }],
  );
  test("at 0.5 of 2 m, at the join and at 3 of 4 m: four pieces, the taper 4e-4 at its cut", () => {
    expect(pieces.map(({ length_m }) => length_m)).toEqual([0.5, 1.5, 3, 1]);
    expectWithin(pieces[2]?.upperDiameter_m ?? Number.NaN, 4e-4, 1e-12);
    expectWithin(pieces[3]?.lowerDiameter_m ?? Number.NaN, 4e-4, 1e-12);
  });
  test("what is pinched on stands at its cut and nowhere else", () =>
    expect(pieces.map(({ top }) => top === shot)).toEqual([true, false, false, false]));
  test("a cut at a join pinches on there", () =>
    expect(cutLine([level, tapered], [{ at_m: 2, body: shot }]).map(({ top }) => top)).toEqual([
      shot,
      undefined,
    ]));
});
