/** The standard atmosphere up to 11 km: ISO 2533:1975. */
const SEA_LEVEL_PA = 101_325;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const GRAVITY_MPS2 = 9.80665;
const GAS_JPKGK = 287.05287;
const NOMINAL_EARTH_RADIUS_M = 6_356_766;

const LEAST_M = -5000;
const MOST_M = 11_000;

/**
 * Air pressure the standard atmosphere has at a height above the sea, Pa. Weather moves it by two or three per cent.
 * @param elevation_m geometric height, -5000 to 11,000 m
 * @throws RangeError outside that
 * @source ISO 2533:1975
 */
export function standardPressure_Pa(elevation_m: number): number {
  if (!(elevation_m >= LEAST_M && elevation_m <= MOST_M))
    throw new RangeError(`${elevation_m} m is outside ${LEAST_M} to ${MOST_M} m`);
  const geopotential_m = (NOMINAL_EARTH_RADIUS_M * elevation_m) / (NOMINAL_EARTH_RADIUS_M + elevation_m);
  return (
    SEA_LEVEL_PA *
    (1 - (LAPSE_K_PER_M * geopotential_m) / SEA_LEVEL_K) ** (GRAVITY_MPS2 / (GAS_JPKGK * LAPSE_K_PER_M))
  );
}
