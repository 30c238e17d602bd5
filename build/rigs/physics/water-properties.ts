import { power } from "../../model/power.ts";

/** Fresh water at one temperature. */
export interface Water {
  readonly density_kgm3: number;
  /** Kinematic viscosity. */
  readonly viscosity_m2s: number;
}

/** Standard gravity, by definition. */
export const GRAVITY_MPS2 = 9.80665;

/** Coefficients of the CIPM formula for air-free pure water. Tanaka et al. (2001), Metrologia 38:301. */
const TANAKA = { a1_C: -3.983035, a2_C: 301.797, a3_C2: 522528.9, a4_C: 69.34881, a5_kgm3: 999.97495 };

function requireLiquid(water_C: number): void {
  if (!(water_C >= 0 && water_C <= 40)) throw new RangeError(`water of ${water_C} °C: 0 to 40 °C is covered`);
}

/**
 * Density of pure water at 1 atm, kg/m3.
 * @param water_C 0 to 40 °C
 * @throws RangeError outside that
 * @source Tanaka et al. (2001), Metrologia 38:301
 */
export function waterDensity_kgm3(water_C: number): number {
  requireLiquid(water_C);
  const { a1_C, a2_C, a3_C2, a4_C, a5_kgm3 } = TANAKA;
  return a5_kgm3 * (1 - ((water_C + a1_C) ** 2 * (water_C + a2_C)) / (a3_C2 * (water_C + a4_C)));
}

/** Terms a T^b of the viscosity at 0.1 MPa in µPa s, T in units of 300 K. IAPWS SR6-08 (2011), table 4. */
const VISCOSITY_TERMS = [
  { a: 280.68, b: -1.9 },
  { a: 511.45, b: -7.7 },
  { a: 61.131, b: -19.6 },
  { a: 0.45903, b: -40 },
] as const;
const KELVIN_AT_0_C = 273.15; // exact, by definition

/**
 * Dynamic viscosity of water at 0.1 MPa, Pa s.
 * @param water_C 0 to 40 °C
 * @throws RangeError outside that
 * @source IAPWS SR6-08 (2011), Supplementary Release on Properties of Liquid Water at 0.1 MPa
 */
export function waterViscosity_Pas(water_C: number): number {
  requireLiquid(water_C);
  const reduced = (water_C + KELVIN_AT_0_C) / 300;
  return 1e-6 * VISCOSITY_TERMS.reduce((sum, { a, b }) => sum + a * power(reduced, b), 0);
}

/** Fresh water of `water_C`, 0 to 40 °C. */
export function waterAt(water_C: number): Water {
  const density_kgm3 = waterDensity_kgm3(water_C);
  return { density_kgm3, viscosity_m2s: waterViscosity_Pas(water_C) / density_kgm3 };
}

/** Weight in water of a body that weighs `mass_g` in air, N; negative when it floats. */
export const sunkWeight_N = (mass_g: number, density_kgm3: number, water: Water): number =>
  (mass_g / 1000) * GRAVITY_MPS2 * (1 - water.density_kgm3 / density_kgm3);

/** Diameter of the ball that has this mass and density, m. */
export const ballDiameter_m = (mass_g: number, density_kgm3: number): number =>
  Math.cbrt((6 * (mass_g / 1000)) / (Math.PI * density_kgm3));
