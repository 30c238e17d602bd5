/** WMO Beaufort scale, m/s at 10 m, ten-minute mean: WMO-No. 306, code table 1100, as reproduced by several weather services. */
export const BEAUFORT_LIMITS = [
  { force: 3, least_mps: 3.4, most_mps: 5.4 },
  { force: 4, least_mps: 5.5, most_mps: 7.9 },
  { force: 5, least_mps: 8.0, most_mps: 10.7 },
  { force: 6, least_mps: 10.8, most_mps: 13.8 },
] as const;

/** Greatest wind of a force in whole miles an hour, printed tables: a check that the metric limits are the right ones. */
export const BEAUFORT_MPH = [
  { force: 3, most_mph: 12 },
  { force: 4, most_mph: 18 },
  { force: 5, most_mph: 24 },
] as const;

/** Fetch-limited deep-water waves by SPM (1984), equations 3-33 to 3-35 with U_A = 0.71 U^1.23, in Python; ScientiMate agrees. */
export const SPM_WAVES = {
  citation: "SPM (1984) in Python and ScientiMate",
  tolerance: 0.01,
  rows: [
    { wind_mps: 5, fetch_m: 500, height_m: 0.059, period_s: 0.85, growth_min: 19.6 },
    { wind_mps: 5, fetch_m: 2000, height_m: 0.117, period_s: 1.36, growth_min: 49.3 },
    { wind_mps: 5, fetch_m: 5000, height_m: 0.186, period_s: 1.84, growth_min: 90.8 },
    { wind_mps: 8, fetch_m: 1000, height_m: 0.148, period_s: 1.3, growth_min: 25.6 },
    { wind_mps: 8, fetch_m: 5000, height_m: 0.331, period_s: 2.23, growth_min: 74.8 },
    { wind_mps: 8, fetch_m: 10000, height_m: 0.468, period_s: 2.81, growth_min: 118.8 },
    { wind_mps: 10, fetch_m: 1000, height_m: 0.195, period_s: 1.43, growth_min: 23.4 },
    { wind_mps: 10, fetch_m: 2000, height_m: 0.275, period_s: 1.8, growth_min: 37.1 },
    { wind_mps: 10, fetch_m: 10000, height_m: 0.616, period_s: 3.08, growth_min: 108.4 },
    { wind_mps: 15, fetch_m: 1000, height_m: 0.321, period_s: 1.69, growth_min: 19.8 },
    { wind_mps: 15, fetch_m: 5000, height_m: 0.717, period_s: 2.89, growth_min: 57.8 },
  ],
} as const;

/** Fetch-limited height by EM 1110-2-1100, Part II-2 (CEM), in Python; ScientiMate agrees. */
export const CEM_HEIGHTS = {
  citation: "CEM (2002) in Python and ScientiMate",
  tolerance: 0.01,
  rows: [
    { wind_mps: 5, fetch_m: 500, height_m: 0.053 },
    { wind_mps: 5, fetch_m: 1000, height_m: 0.074 },
    { wind_mps: 8, fetch_m: 500, height_m: 0.088 },
    { wind_mps: 8, fetch_m: 1000, height_m: 0.124 },
    { wind_mps: 8, fetch_m: 2000, height_m: 0.175 },
    { wind_mps: 8, fetch_m: 5000, height_m: 0.277 },
    { wind_mps: 10, fetch_m: 500, height_m: 0.112 },
    { wind_mps: 10, fetch_m: 1000, height_m: 0.159 },
    { wind_mps: 10, fetch_m: 5000, height_m: 0.355 },
    { wind_mps: 15, fetch_m: 1000, height_m: 0.252 },
    { wind_mps: 15, fetch_m: 5000, height_m: 0.564 },
  ],
} as const;

/**
 * A worked problem of a coastal engineering course (homeworksource.com, p/1080568): adjusted wind 15 m/s over 200 km,
 * g F / U^2 = 8720, peak period 9.0 s; the sea is fully grown from 529 km on.
 */
export const SPM_PROBLEM = {
  adjustedWind_mps: 15,
  fetch_m: 200_000,
  period_s: 9.0,
  tolerance_s: 0.02,
  grown_m: 529_000,
} as const;

/** Fully grown sea by SPM (1984): g H / U_A^2. */
export const SPM_GROWN_HEIGHT = 0.2433;

/**
 * EM 1110-2-1100, Part II-2 (2003): for narrow water use the straight-line fetch, not one made narrower by the width.
 * From the middle of the short side of a rectangle of 3000 by 500 m it is 3000 m; in a round basin of 1000 m radius it is
 * 1000 m from the middle.
 */
export const STRAIGHT_FETCH = { long_m: 3000, wide_m: 500, radius_m: 1000 } as const;
