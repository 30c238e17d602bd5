/** Waves at the downwind end of a stretch of open water, once the wind has blown long enough. */
export interface Waves {
  /** Mean height of the highest third, trough to crest. */
  readonly height_m: number;
  /** From crest to crest at the peak of the spectrum. */
  readonly period_s: number;
  /** How long the wind has to blow over this fetch until it is the fetch, not time, that limits the waves. */
  readonly growth_min: number;
}

/** Standard gravity, exact by definition (ISO 80000-3). */
const GRAVITY_MPS2 = 9.80665;

/** Adjusted wind speed (wind-stress factor) of a 10 m wind: U_A = 0.71 U^1.23, both m/s. SPM (1984), equation 3-28a. */
const adjustedWind_mps = (wind_mps: number): number => 0.71 * wind_mps ** 1.23;

/** A fully grown sea: g H / U_A^2 and g T / U_A. SPM (1984), equations 3-36 and 3-37. */
const GROWN = { height: 0.2433, period: 8.134 };

/**
 * Fetch-limited waves in deep water. Shallow water makes them lower: these are the most to expect.
 * @param wind_mps mean wind at 10 m, above 0
 * @param fetch_m straight stretch of open water upwind, 0 or more
 * @source US Army Corps of Engineers, Shore Protection Manual (1984), equations 3-33 to 3-35
 */
export function fetchLimitedWaves(wind_mps: number, fetch_m: number): Waves {
  const adjusted = adjustedWind_mps(wind_mps);
  const fetch = (GRAVITY_MPS2 * fetch_m) / adjusted ** 2;
  return {
    height_m: (Math.min(1.6e-3 * fetch ** (1 / 2), GROWN.height) * adjusted ** 2) / GRAVITY_MPS2,
    period_s: (Math.min(2.857e-1 * fetch ** (1 / 3), GROWN.period) * adjusted) / GRAVITY_MPS2,
    growth_min: (6.88e1 * fetch ** (2 / 3) * adjusted) / GRAVITY_MPS2 / 60,
  };
}

/**
 * The same height by the Corps' later manual, which comes out lower.
 * @source Coastal Engineering Manual EM 1110-2-1100, Part II-2 (2002), equations II-2-35 and II-2-36
 */
export function laterManualHeight_m(wind_mps: number, fetch_m: number): number {
  const drag = 0.001 * (1.1 + 0.035 * wind_mps);
  const friction_mps2 = drag * wind_mps ** 2;
  const fetch = (GRAVITY_MPS2 * fetch_m) / friction_mps2;
  return (Math.min(4.13e-2 * fetch ** (1 / 2), 2.115e2) * friction_mps2) / GRAVITY_MPS2;
}
