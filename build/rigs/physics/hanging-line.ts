import { CYLINDER_DRAG, type LineDragLaw, lineDrag_Npm, sphereDrag_N } from "./drag.ts";
import { ballDiameter_m, GRAVITY_MPS2, sunkWeight_N, type Water } from "./water-properties.ts";

/** A fly, or shot pinched on together: its weight in water and its drag. */
export interface Body {
  readonly weight_N: number;
  /** Drag in water that moves past, N, with the sign of the speed. */
  readonly dragAt_N: (past_mps: number) => number;
}

export const NO_BODY: Body = { weight_N: 0, dragAt_N: () => 0 };

/** A ball of a mass and density; `width_m` where its drag is that of another ball. */
export function ballBody(
  {
    mass_g,
    density_kgm3,
    width_m = ballDiameter_m(mass_g, density_kgm3),
  }: {
    readonly mass_g: number;
    readonly density_kgm3: number;
    readonly width_m?: number;
  },
  water: Water,
): Body {
  return {
    weight_N: sunkWeight_N(mass_g, density_kgm3, water),
    dragAt_N: (past_mps) => sphereDrag_N(width_m, past_mps, water),
  };
}

/** Bodies pinched on at one place, each dragged by itself. */
export const together = (bodies: readonly Body[]): Body => ({
  weight_N: bodies.reduce((sum, { weight_N }) => sum + weight_N, 0),
  dragAt_N: (past_mps) => bodies.reduce((sum, { dragAt_N }) => sum + dragAt_N(past_mps), 0),
});

/** A piece of line, and what is pinched on at its upper end. */
export interface LineSegment {
  readonly length_m: number;
  readonly lowerDiameter_m: number;
  readonly upperDiameter_m: number;
  readonly density_kgm3: number;
  readonly top?: Body;
}

/** The line at one point, seen from the fly. */
export interface LinePoint {
  /** Along the line from the fly. */
  readonly length_m: number;
  /** Sideways, against the current. */
  readonly x_m: number;
  /** Straight up. */
  readonly z_m: number;
  readonly pullX_N: number;
  readonly pullZ_N: number;
}

/** Water that moves past the line. */
export interface Stream {
  /** Speed past the line at a height above the fly, m/s; negative against the wind. */
  readonly speedAt_mps: (aboveFly_m: number) => number;
  readonly water: Water;
}

/** Water of one speed at every depth. */
export const evenStream = (speed_mps: number, water: Water): Stream => ({
  speedAt_mps: () => speed_mps,
  water,
});

/** Steps across one segment: more move no lift of the plumb table by a tenth of a millimetre. */
const STEPS = 10;

const pinched = (point: LinePoint, body: Body, { speedAt_mps }: Stream): LinePoint => ({
  ...point,
  pullX_N: point.pullX_N + body.dragAt_N(speedAt_mps(point.z_m)),
  pullZ_N: point.pullZ_N + body.weight_N,
});

/** The free end of the line: only the fly pulls. */
export const freeEnd = (fly: Body, stream: Stream): LinePoint =>
  pinched({ length_m: 0, x_m: 0, z_m: 0, pullX_N: 0, pullZ_N: 0 }, fly, stream);

/**
 * The line's upper end, marched up one segment by the classical fourth-order Runge-Kutta rule:
 * `dx = sin ds, dz = cos ds, dTx = q cos ds, dTz = (w - q sin) ds`, with `q` the drag at the speed across the line.
 * The line carries tension only; drag along it is left out.
 */
export function marchUp(
  from: LinePoint,
  segment: LineSegment,
  stream: Stream,
  steps = STEPS,
  law: LineDragLaw = CYLINDER_DRAG,
): LinePoint {
  const { length_m, lowerDiameter_m, upperDiameter_m, density_kgm3, top } = segment;
  const { speedAt_mps, water } = stream;
  const h = length_m / steps;
  const taper = (upperDiameter_m - lowerDiameter_m) / length_m;
  const weightPerArea = (density_kgm3 - water.density_kgm3) * GRAVITY_MPS2 * (Math.PI / 4);
  const slope = { x: 0, z: 0, pullX: 0, pullZ: 0 };
  const sum = { x: 0, z: 0, pullX: 0, pullZ: 0 };

  const addSlope = (s_m: number, z_m: number, pullX_N: number, pullZ_N: number, share: number): void => {
    const diameter_m = lowerDiameter_m + taper * s_m;
    const pull_N = Math.sqrt(pullX_N * pullX_N + pullZ_N * pullZ_N);
    const [sin, cos] = pull_N === 0 ? [0, 1] : [pullX_N / pull_N, pullZ_N / pull_N];
    const drag_Npm = lineDrag_Npm(diameter_m, speedAt_mps(z_m) * cos, water, law);
    slope.x = sin;
    slope.z = cos;
    slope.pullX = drag_Npm * cos;
    slope.pullZ = weightPerArea * diameter_m * diameter_m - drag_Npm * sin;
    sum.x += share * slope.x;
    sum.z += share * slope.z;
    sum.pullX += share * slope.pullX;
    sum.pullZ += share * slope.pullZ;
  };
  const addNext = (s_m: number, ahead: number, share: number): void =>
    addSlope(s_m, z_m + ahead * slope.z, pullX_N + ahead * slope.pullX, pullZ_N + ahead * slope.pullZ, share);

  let { x_m, z_m, pullX_N, pullZ_N } = from;
  for (let i = 0; i < steps; i++) {
    const s_m = i * h;
    sum.x = sum.z = sum.pullX = sum.pullZ = 0;
    addSlope(s_m, z_m, pullX_N, pullZ_N, 1);
    addNext(s_m + h / 2, h / 2, 2);
    addNext(s_m + h / 2, h / 2, 2);
    addNext(s_m + h, h, 1);
    x_m += (h / 6) * sum.x;
    z_m += (h / 6) * sum.z;
    pullX_N += (h / 6) * sum.pullX;
    pullZ_N += (h / 6) * sum.pullZ;
  }
  const end = { length_m: from.length_m + length_m, x_m, z_m, pullX_N, pullZ_N };
  return top === undefined ? end : pinched(end, top, stream);
}

/** The line at its upper end: the fly at the free end, then the segments from the fly up. */
export const hang = (
  fly: Body,
  segments: readonly LineSegment[],
  stream: Stream,
  steps = STEPS,
  law: LineDragLaw = CYLINDER_DRAG,
): LinePoint =>
  segments.reduce((point, segment) => marchUp(point, segment, stream, steps, law), freeEnd(fly, stream));

/** How much higher the fly hangs than straight below, m, never negative. */
export const lift_m = ({ length_m, z_m }: LinePoint): number => Math.max(0, length_m - z_m);

/** Lean of the line from the vertical, degrees. */
export const lean_deg = ({ pullX_N, pullZ_N }: LinePoint): number =>
  (Math.atan2(pullX_N, pullZ_N) * 180) / Math.PI;

/** Angle of the line to the water's surface, degrees. */
export const surfaceAngle_deg = (point: LinePoint): number => 90 - lean_deg(point);

/** Weight in water of a tapered stretch of line, N. */
export function segmentWeight_N(segment: LineSegment, water: Water): number {
  const { lowerDiameter_m: a, upperDiameter_m: b, length_m, density_kgm3 } = segment;
  const volume_m3 = (Math.PI / 12) * length_m * (a * a + a * b + b * b);
  return sunkWeight_N(1000 * density_kgm3 * volume_m3, density_kgm3, water);
}

/** The stretch of a segment between two lengths from its lower end, without what is pinched on. */
export function stretchOf(segment: LineSegment, from_m: number, to_m: number): LineSegment {
  const { length_m, lowerDiameter_m, upperDiameter_m, density_kgm3 } = segment;
  const diameterAt = (at_m: number): number =>
    lowerDiameter_m + ((upperDiameter_m - lowerDiameter_m) * at_m) / length_m;
  return {
    length_m: to_m - from_m,
    lowerDiameter_m: diameterAt(from_m),
    upperDiameter_m: diameterAt(to_m),
    density_kgm3,
  };
}

/** Pieces shorter than this are none, m. */
const LEAST_PIECE_M = 1e-9;

/** A place along a line, from the fly, where it is cut and something may be pinched on. */
export interface LineCut {
  readonly at_m: number;
  readonly body?: Body;
}

/** Cuts a line, and pinches on what the cuts bring; a cut beyond either end of the line does nothing. */
export function cutLine(segments: readonly LineSegment[], cuts: readonly LineCut[]): LineSegment[] {
  let start_m = 0;
  return segments.flatMap((segment) => {
    const end_m = start_m + segment.length_m;
    const inside = cuts
      .map(({ at_m }) => at_m)
      .filter((at_m) => at_m > start_m + LEAST_PIECE_M && at_m < end_m - LEAST_PIECE_M);
    const ends = [...new Set(inside)].sort((a, b) => a - b).concat(end_m);
    const origin_m = start_m;
    return ends.map((to_m) => {
      const body = cuts.find((cut) => cut.body && Math.abs(cut.at_m - to_m) <= LEAST_PIECE_M)?.body;
      const top = body ?? (to_m === end_m ? segment.top : undefined);
      const piece = stretchOf(segment, start_m - origin_m, to_m - origin_m);
      start_m = to_m;
      return top === undefined ? piece : { ...piece, top };
    });
  });
}
