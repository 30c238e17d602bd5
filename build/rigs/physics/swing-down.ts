import { power } from "../../model/power.ts";
import { CYLINDER_DRAG, type LineDragLaw } from "./drag.ts";
import type { Body, LineSegment } from "./hanging-line.ts";
import type { HungRig } from "./indicator-drift.ts";
import { findRoot, gaussLegendre } from "./numeric.ts";
import { GRAVITY_MPS2, type Water } from "./water-properties.ts";

/** A ball or several on a line, by the distance from the indicator. */
interface Arm {
  readonly radius_m: number;
  readonly body: Body;
}

/** A straight rig that turns about its indicator. */
interface Pendulum {
  /** Weight times distance from the indicator, N m. */
  readonly weightMoment_Nm: number;
  /** Moment of the drag at a rate of turning, N m. */
  readonly dragMoment_Nm: (rate_rads: number) => number;
}

function armsOf({ fly, segments }: HungRig, length_m: number): Arm[] {
  let fromFly_m = 0;
  return [
    { radius_m: length_m, body: fly },
    ...segments.flatMap((segment) => {
      fromFly_m += segment.length_m;
      return segment.top === undefined ? [] : [{ radius_m: length_m - fromFly_m, body: segment.top }];
    }),
  ];
}

/** Integral of `d(r)^exponent r^arm dr` along a line, r down from its upper end. */
function lineIntegral(
  segments: readonly LineSegment[],
  length_m: number,
  exponent: number,
  arm: number,
): number {
  let start_m = 0;
  return segments.reduce((sum, { length_m: l, lowerDiameter_m: a, upperDiameter_m: b }) => {
    const from_m = start_m;
    start_m += l;
    return (
      sum +
      gaussLegendre((s) => power(a + ((b - a) * s) / l, exponent) * power(length_m - from_m - s, arm), 0, l)
    );
  }, 0);
}

function pendulumOf(rig: HungRig, water: Water, law: LineDragLaw): Pendulum {
  const { segments } = rig;
  const length_m = segments.reduce((sum, segment) => sum + segment.length_m, 0);
  const arms = armsOf(rig, length_m);
  let start_m = 0;
  const lineMoment_Nm = segments.reduce((sum, segment) => {
    const moment_m4 = lineIntegral([segment], length_m - start_m, 2, 1);
    start_m += segment.length_m;
    return sum + (segment.density_kgm3 - water.density_kgm3) * GRAVITY_MPS2 * (Math.PI / 4) * moment_m4;
  }, 0);
  const weightMoment_Nm = arms.reduce(
    (sum, { radius_m, body }) => sum + body.weight_N * radius_m,
    lineMoment_Nm,
  );
  // At a rate of turning, Re = rate r d / nu along the line: each term of the drag law is one integral for all rates.
  const { density_kgm3, viscosity_m2s } = water;
  const constantTerm = 0.5 * density_kgm3 * law.constant * lineIntegral(segments, length_m, 1, 3);
  const twoThirdsTerm =
    0.5 *
    density_kgm3 *
    law.twoThirds *
    Math.cbrt(viscosity_m2s) ** 2 *
    lineIntegral(segments, length_m, 1 / 3, 7 / 3);
  return {
    weightMoment_Nm,
    dragMoment_Nm: (rate_rads) =>
      constantTerm * rate_rads ** 2 +
      twoThirdsTerm * power(Math.cbrt(rate_rads), 4) +
      arms.reduce((sum, { radius_m, body }) => sum + body.dragAt_N(rate_rads * radius_m) * radius_m, 0),
  };
}

/** Slower and faster than anything on a line, m/s or rad/s. */
const SLOWEST = 1e-12;
const FASTEST = 1e3;

/** The speed or rate at which a drag that grows with it balances a load; both above 0. */
function balancingRate(drag: (rate: number) => number, load: number): number {
  // Drag is nearly a power of the rate, so in logarithms a straight line.
  const miss = (logRate: number): number => Math.log(drag(Math.exp(logRate)) / load);
  return Math.exp(findRoot(miss, Math.log(SLOWEST), Math.log(FASTEST), 1e-10));
}

/**
 * Seconds for a straight rig, held at the indicator, to swing down through still water from flat on the surface.
 * Inertia is left out: it costs 0.1 s.
 * @param to_rad angle from the vertical at which it counts as down, above 0; 0 for straight down
 */
export function swingDown_s(
  rig: HungRig,
  to_rad: number,
  water: Water,
  law: LineDragLaw = CYLINDER_DRAG,
): number {
  const { weightMoment_Nm, dragMoment_Nm } = pendulumOf(rig, water, law);
  const rateAt_rads = (angle_rad: number): number =>
    balancingRate(dragMoment_Nm, weightMoment_Nm * Math.sin(angle_rad));
  const span_rad = Math.PI / 2 - to_rad;
  // The rate falls to nothing at the vertical; y^4 gathers the points there.
  return gaussLegendre(
    (y) => (4 * span_rad * power(y, 3)) / rateAt_rads(to_rad + span_rad * power(y, 4)),
    0,
    1,
  );
}

/** Angle from the vertical at which a straight line of a length hangs within a lift, rad. */
const angleOfLift_rad = (length_m: number, lift_m: number): number =>
  Math.acos(Math.max(0, 1 - lift_m / length_m));

/**
 * The tight-line wait: seconds from flat on the water until a rig hangs within `tolerance_m` of straight down.
 * The line leads straight to the indicator, which stands still.
 */
export function tightWait_s(rig: HungRig, tolerance_m: number, water: Water): number {
  const length_m = rig.segments.reduce((sum, segment) => sum + segment.length_m, 0);
  return swingDown_s(rig, angleOfLift_rad(length_m, tolerance_m), water);
}

const FALL_STEPS = 200;

/**
 * Seconds for fly and shot to fall `length_m` straight down on slack line, drawing it after them.
 * Drag of the slender line by Glauert's and Lighthill's law; its weight is left out.
 * @source Glauert and Lighthill (1955), Proc. R. Soc. A 230:188, from memory
 */
export function slackFall_s(body: Body, lineDiameter_m: number, length_m: number, water: Water): number {
  const { density_kgm3, viscosity_m2s } = water;
  const radius_m = lineDiameter_m / 2;
  const step_m = length_m / FALL_STEPS;
  let seconds = 0;
  for (let i = 0; i < FALL_STEPS; i++) {
    const s_m = (i + 0.5) * step_m;
    const drag_N = (v: number): number =>
      body.dragAt_N(v) +
      (4 * Math.PI * density_kgm3 * viscosity_m2s * v * s_m) /
        Math.max(1, Math.log((4 * viscosity_m2s * s_m) / (v * radius_m ** 2)));
    seconds += step_m / balancingRate(drag_N, body.weight_N);
  }
  return seconds;
}
