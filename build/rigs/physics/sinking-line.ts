import { power } from "../../model/power.ts";

/** Complete elliptic integral of the first kind at m = 1/2, by the arithmetic-geometric mean. Abramowitz and Stegun 17.6. */
export const K_HALF = Math.PI / 2 / agm(1, Math.SQRT1_2);

function agm(a: number, b: number): number {
  return Math.abs(a - b) < 1e-15 ? a : agm((a + b) / 2, Math.sqrt(a * b));
}

/** Jacobi's amplitude at m = 1/2 by Landen's descent. Abramowitz and Stegun 16.4. */
function amplitudeHalf(u: number): number {
  const scale: { a: number; c: number }[] = [{ a: 1, c: Math.SQRT1_2 }];
  let b = Math.SQRT1_2;
  for (let last = scale[0]; last !== undefined && last.c > 1e-15; last = scale.at(-1)) {
    scale.push({ a: (last.a + b) / 2, c: (last.a - b) / 2 });
    b = Math.sqrt(last.a * b);
  }
  const start = power(2, scale.length - 1) * (scale.at(-1)?.a ?? 1) * u;
  return scale.slice(1).reduceRight((phi, { a, c }) => (phi + Math.asin((c / a) * Math.sin(phi))) / 2, start);
}

/** A sinking tip: it hangs from a floating line. */
export interface SinkTip {
  readonly length_m: number;
  readonly sinkRate_mps: number;
}

/** Seconds until a tip left alone hangs straight down: `K(1/2) l / w`. */
export const tipHangs_s = ({ length_m, sinkRate_mps }: SinkTip): number => (K_HALF * length_m) / sinkRate_mps;

/**
 * Depth of a tip's end after a time, m; never deeper than the tip is long. It sinks at its rate or as fast as the
 * swing about its upper end allows, `depth = l sin(b)`, `sin(b/2) = sn(w t/l)/sqrt(2)`. Derived.
 */
export function tipDepth_m({ length_m, sinkRate_mps }: SinkTip, seconds: number): number {
  const u = (sinkRate_mps * seconds) / length_m;
  if (u >= K_HALF) return length_m;
  const sn = Math.sin(amplitudeHalf(u));
  return Math.min(sinkRate_mps * seconds, length_m * Math.SQRT2 * sn * Math.sqrt(1 - (sn * sn) / 2));
}

/** Seconds until a tip's end is at a depth; null where it never gets there. */
export function tipCount_s(tip: SinkTip, depth_m: number): number | null {
  if (depth_m > tip.length_m) return null;
  let [early, late] = [depth_m / tip.sinkRate_mps, tipHangs_s(tip)];
  for (let i = 0; i < 50 && late - early > 1e-6; i++) {
    const middle = (early + late) / 2;
    if (tipDepth_m(tip, middle) < depth_m) early = middle;
    else late = middle;
  }
  return late;
}

/** Angle below level of a sinking line drawn at a speed above 0, rad: `cos(b)/sin(b)^2 = (v/w)^2`. Textbook balance of weight and drag. */
export function drawnAngle_rad(sinkRate_mps: number, speed_mps: number): number {
  const q = (speed_mps / sinkRate_mps) ** 2;
  return Math.acos((Math.sqrt(1 + 4 * q * q) - 1) / (2 * q));
}

/** Depth of the end of a tip drawn at a speed above 0, m. */
export const drawnTipDepth_m = (tip: SinkTip, speed_mps: number): number =>
  tip.length_m * Math.sin(drawnAngle_rad(tip.sinkRate_mps, speed_mps));

/** A sinking line between rod and fly. */
interface LineOut {
  /** Depth of the fly. */
  readonly depth_m: number;
  readonly out_m: number;
}

/** How fast the far end of a line sinks while it is drawn, m/s; negative where it climbs. */
function sinkSpeed_mps({ depth_m, out_m }: LineOut, sinkRate_mps: number, speed_mps: number): number {
  const cos = Math.sqrt(Math.max(0, 1 - (depth_m / out_m) ** 2));
  return Math.min(sinkRate_mps, Math.SQRT2 * sinkRate_mps * power(cos, 1.5)) - (speed_mps * depth_m) / out_m;
}

/** How far the fly sinks over one short strip of a length, m; negative where it climbs. */
export const stripSink_m = (
  line: LineOut,
  sinkRate_mps: number,
  speed_mps: number,
  strip_m: number,
): number => (strip_m * sinkSpeed_mps(line, sinkRate_mps, speed_mps)) / speed_mps;

const DRAW_STEPS = 500;

/**
 * Depth of the fly when a sinking line has been drawn in to `until_m`, m.
 * @param line where the draw begins
 */
export function drawnLineDepth_m(
  line: LineOut,
  sinkRate_mps: number,
  speed_mps: number,
  until_m: number,
): number {
  const step_s = (line.out_m - until_m) / DRAW_STEPS / speed_mps;
  let { depth_m, out_m } = line;
  for (let i = 0; i < DRAW_STEPS; i++) {
    const half = depth_m + (step_s / 2) * sinkSpeed_mps({ depth_m, out_m }, sinkRate_mps, speed_mps);
    const middle = { depth_m: half, out_m: out_m - (step_s / 2) * speed_mps };
    depth_m += step_s * sinkSpeed_mps(middle, sinkRate_mps, speed_mps);
    out_m -= step_s * speed_mps;
  }
  return depth_m;
}

/** Steeper than this, degrees, no speed of draw keeps a line's depth. */
const HOLDS_UNDER_DEG = 37.5;

/** The speed of draw at which a line keeps its depth, `w R/z`; null where it is too steep, or at the surface. */
export function holdingSpeed_mps({ depth_m, out_m }: LineOut, sinkRate_mps: number): number | null {
  if (depth_m <= 0) return null;
  const angle_deg = (Math.asin(Math.min(1, depth_m / out_m)) * 180) / Math.PI;
  return angle_deg < HOLDS_UNDER_DEG ? (sinkRate_mps * out_m) / depth_m : null;
}

/**
 * Line to let out so that the far end of a sinking line trolled at a speed runs at a depth, m: it hangs straight at the
 * angle of {@link drawnAngle_rad}, `R = z / sin(b)`.
 */
export const trolledLineOut_m = (depth_m: number, sinkRate_mps: number, speed_mps: number): number =>
  depth_m / Math.sin(drawnAngle_rad(sinkRate_mps, speed_mps));
