import { power } from "../model/power.ts";

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
    power(1 - (LAPSE_K_PER_M * geopotential_m) / SEA_LEVEL_K, GRAVITY_MPS2 / (GAS_JPKGK * LAPSE_K_PER_M))
  );
}

/** Terms c_i of ln(DO in mg/L) = sum of c_i / T^i, T in kelvin. Benson & Krause (1984). */
const LN_OXYGEN_TERMS = [-139.34411, 1.575701e5, -6.642308e7, 1.2438e10, -8.621949e11];
/** Terms of ln(vapour pressure of fresh water in atm), likewise. USGS OWQ Technical Memorandum 2011.03. */
const LN_VAPOUR_TERMS = [11.8571, -3840.7, -216_961];
/** Terms of theta, the second virial coefficient of oxygen, in powers of degrees Celsius. Same source. */
const THETA_TERMS = [0.000975, -1.426e-5, 6.436e-8];

const KELVIN_AT_0_C = 273.15; // exact, by definition
const PASCAL_PER_ATM = 101_325; // exact, by definition

export const OXYGEN_LEAST_C = 0;
export const OXYGEN_MOST_C = 40;

const series = (terms: readonly number[], x: number): number =>
  terms.reduce((sum, term, i) => sum + term * power(x, i), 0);

/**
 * Oxygen that fresh water holds in balance with moist air, mg/L.
 * @param water_C 0 to 40 degC
 * @param pressure_Pa air pressure at the lake itself, not reduced to sea level
 * @throws RangeError outside 0 to 40 degC, where the fit was never made
 * @source Benson & Krause (1984), Limnol. Oceanogr. 29:620-632; pressure by USGS OWQ Technical Memorandum 2011.03
 */
export function oxygenSaturation_mgL(water_C: number, pressure_Pa: number): number {
  if (!(water_C >= OXYGEN_LEAST_C && water_C <= OXYGEN_MOST_C))
    throw new RangeError(`${water_C} degC is outside ${OXYGEN_LEAST_C} to ${OXYGEN_MOST_C} degC`);
  const perKelvin = 1 / (water_C + KELVIN_AT_0_C);
  const pressure = pressure_Pa / PASCAL_PER_ATM;
  const vapour = Math.exp(series(LN_VAPOUR_TERMS, perKelvin));
  const theta = series(THETA_TERMS, water_C);
  const factor = ((pressure - vapour) * (1 - theta * pressure)) / ((1 - vapour) * (1 - theta));
  return Math.exp(series(LN_OXYGEN_TERMS, perKelvin)) * factor;
}
