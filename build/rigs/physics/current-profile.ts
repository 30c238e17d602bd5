/** Speed of the water at a depth, m/s downwind; above the surface that of the surface. */
export type Current = (depth_m: number) => number;

/** Wind drives foam at 3 % of its own speed. American Meteorological Society, Glossary, "wind drift"; Wu (1975), J. Fluid Mech. 68:49. */
export const FOAM_SHARE_OF_WIND = 0.03;

/** Foam and bubbles show the speed this far down, m; above it the current is even. */
const FOAM_DEPTH_M = 0.01;

/** Parameters of the double log. Tsanis (1989), J. Hydraul. Eng. 115:1113, from memory. */
const TSANIS = { lambda: 0.35, surfaceLength: 2.2e-4, bedLength: 0.6e-4 } as const;

/** Factors of the double log with no net flow: `p = a ln(1 + y/yb) - b ln(1 - y/(1 + ys))`, y up from the bed. Derived. */
function doubleLogFactors(): { a: number; b: number; bedStress: number } {
  const { lambda, surfaceLength: ys, bedLength: yb } = TSANIS;
  const n = 1 + ys + yb;
  const i1 = (1 + yb) * Math.log((1 + yb) / yb) - 1;
  const i2 = 1 + ys * Math.log(ys / (1 + ys));
  const bedStress = (yb * i1 - (1 + ys) * i2) / (i1 * (1 + yb) - i2 * ys);
  return {
    a: (bedStress - (1 - bedStress) * yb) / (lambda * n),
    b: (bedStress + (1 - bedStress) * (1 + ys)) / (lambda * n),
    bedStress,
  };
}

const FACTORS = doubleLogFactors();

/** Stress at the bed over stress at the surface; negative, as the water runs back there. */
export const BED_STRESS = FACTORS.bedStress;

/**
 * Current of a steady wind over a closed, unlayered basin, in units of the friction velocity.
 * @param s depth over the whole depth, 0 to 1
 */
export function doubleLog(s: number): number {
  const y = 1 - s;
  return (
    FACTORS.a * Math.log(1 + y / TSANIS.bedLength) - FACTORS.b * Math.log(1 - y / (1 + TSANIS.surfaceLength))
  );
}

/** Stress over stress at the surface, from the slope of {@link doubleLog} and its parabolic eddy viscosity. */
export function doubleLogStress(s: number): number {
  const { lambda, surfaceLength, bedLength } = TSANIS;
  const y = 1 - s;
  const slope = FACTORS.a / (y + bedLength) + FACTORS.b / (1 + surfaceLength - y);
  return lambda * (y + bedLength) * (1 + surfaceLength - y) * slope;
}

/**
 * The same for constant eddy viscosity: too deep a wind layer and too strong a return, so the safe side.
 * @param s depth over the whole depth, 0 to 1
 * @source closed form; Csanady in Lerman (ed.), Lakes (1978), calls it unrealistic
 */
export const parabola = (s: number): number => 1 - 4 * s + 3 * s * s;

/** What is expected, and the doubtful bound on the safe side. */
export const PROFILES = { expected: doubleLog, doubtful: parabola } as const;

/**
 * The current over a bottom `depth_m` down while foam moves at `foam_mps`.
 * @param profile current against depth over the whole depth
 */
export function currentOver(depth_m: number, foam_mps: number, profile: (s: number) => number): Current {
  const atFoam = profile(FOAM_DEPTH_M / depth_m);
  return (z_m) =>
    z_m <= FOAM_DEPTH_M ? foam_mps : (foam_mps * profile(Math.min(1, z_m / depth_m))) / atFoam;
}
