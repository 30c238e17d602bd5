/**
 * Benson & Krause (1984) with the coefficients of USGS OWQ Technical Memorandum 2011.03 and Standard Methods 4500-O, 1 atm,
 * evaluated in Python; Garcia & Gordon (1992) agree to 0.002.
 */
export const OXYGEN_AT_1_ATM = {
  citation: "Benson & Krause (1984) in Python",
  tolerance_mgL: 0.0006,
  rows: [
    { water_C: 0, oxygen_mgL: 14.621 },
    { water_C: 2, oxygen_mgL: 13.83 },
    { water_C: 3, oxygen_mgL: 13.461 },
    { water_C: 4, oxygen_mgL: 13.108 },
    { water_C: 6, oxygen_mgL: 12.448 },
    { water_C: 7, oxygen_mgL: 12.139 },
    { water_C: 9, oxygen_mgL: 11.56 },
    { water_C: 12, oxygen_mgL: 10.777 },
    { water_C: 14, oxygen_mgL: 10.306 },
    { water_C: 19, oxygen_mgL: 9.276 },
    { water_C: 20, oxygen_mgL: 9.092 },
    { water_C: 21, oxygen_mgL: 8.915 },
    { water_C: 22, oxygen_mgL: 8.744 },
    { water_C: 24, oxygen_mgL: 8.418 },
    { water_C: 25, oxygen_mgL: 8.263 },
    { water_C: 28, oxygen_mgL: 7.828 },
    { water_C: 29, oxygen_mgL: 7.691 },
  ],
} as const;

/** EN 25814 (ISO 5814) table at 101.325 kPa, as reproduced in an instrument manual; tolerance half its last digit. */
export const OXYGEN_EN_25814 = [
  { water_C: 4, oxygen_mgL: 13.1, tolerance_mgL: 0.06 },
  { water_C: 5, oxygen_mgL: 12.8, tolerance_mgL: 0.06 },
  { water_C: 11, oxygen_mgL: 11.0, tolerance_mgL: 0.06 },
  { water_C: 17, oxygen_mgL: 9.66, tolerance_mgL: 0.011 },
  { water_C: 18, oxygen_mgL: 9.47, tolerance_mgL: 0.011 },
  { water_C: 20, oxygen_mgL: 9.09, tolerance_mgL: 0.011 },
  { water_C: 22, oxygen_mgL: 8.74, tolerance_mgL: 0.011 },
  { water_C: 24, oxygen_mgL: 8.42, tolerance_mgL: 0.011 },
  { water_C: 25, oxygen_mgL: 8.26, tolerance_mgL: 0.011 },
  { water_C: 30, oxygen_mgL: 7.56, tolerance_mgL: 0.011 },
] as const;

/** At station pressures, mmHg (1 mmHg = 101325/760 Pa): USGS pressure form, in Python. */
export const OXYGEN_BY_PRESSURE = {
  citation: "USGS OWQ TM 2011.03 in Python",
  tolerance_mgL: 0.0006,
  rows: [
    { water_C: 10, pressure_mmHg: 760, oxygen_mgL: 11.288 },
    { water_C: 4, pressure_mmHg: 700, oxygen_mgL: 12.066 },
    { water_C: 4, pressure_mmHg: 650, oxygen_mgL: 11.197 },
    { water_C: 10, pressure_mmHg: 650, oxygen_mgL: 9.635 },
    { water_C: 4, pressure_mmHg: 600, oxygen_mgL: 10.328 },
    { water_C: 10, pressure_mmHg: 600, oxygen_mgL: 8.884 },
    { water_C: 18, pressure_mmHg: 600, oxygen_mgL: 7.434 },
    { water_C: 10, pressure_mmHg: 550, oxygen_mgL: 8.133 },
    { water_C: 18, pressure_mmHg: 550, oxygen_mgL: 6.798 },
  ],
} as const;

/** Standard Methods 4500-O (2010), note to its table, from memory: 20 degC at 0.700 atm. */
export const OXYGEN_STANDARD_METHODS = {
  water_C: 20,
  pressure_atm: 0.7,
  oxygen_mgL: 6.3,
  tolerance_mgL: 0.01,
} as const;

/** At heights of the standard atmosphere; the heights are geopotential. Python. */
export const OXYGEN_BY_HEIGHT = {
  citation: "Benson & Krause (1984) and ISO 2533 in Python",
  tolerance_mgL: 0.01,
  rows: [
    { water_C: 15, geopotential_m: 0, oxygen_mgL: 10.08 },
    { water_C: 4, geopotential_m: 500, oxygen_mgL: 12.34 },
    { water_C: 10, geopotential_m: 500, oxygen_mgL: 10.63 },
    { water_C: 15, geopotential_m: 500, oxygen_mgL: 9.49 },
    { water_C: 20, geopotential_m: 500, oxygen_mgL: 8.55 },
    { water_C: 4, geopotential_m: 1000, oxygen_mgL: 11.62 },
    { water_C: 10, geopotential_m: 1000, oxygen_mgL: 10.0 },
    { water_C: 15, geopotential_m: 1000, oxygen_mgL: 8.93 },
    { water_C: 15, geopotential_m: 1500, oxygen_mgL: 8.39 },
    { water_C: 20, geopotential_m: 1500, oxygen_mgL: 7.55 },
    { water_C: 4, geopotential_m: 2000, oxygen_mgL: 10.26 },
    { water_C: 10, geopotential_m: 2000, oxygen_mgL: 8.83 },
    { water_C: 15, geopotential_m: 2000, oxygen_mgL: 7.88 },
    { water_C: 20, geopotential_m: 2000, oxygen_mgL: 7.09 },
    { water_C: 20, geopotential_m: 2500, oxygen_mgL: 6.65 },
    { water_C: 4, geopotential_m: 3000, oxygen_mgL: 9.04 },
    { water_C: 15, geopotential_m: 3000, oxygen_mgL: 6.93 },
    { water_C: 20, geopotential_m: 3000, oxygen_mgL: 6.23 },
  ],
} as const;

/** A reading of 8.0 mg/L at 15 degC and 690 mmHg at the lake is 87.5 % of saturation: USGS OWQ TM 2011.03. */
export const OXYGEN_PERCENT = {
  reading_mgL: 8,
  water_C: 15,
  pressure_mmHg: 690,
  percent: 87.5,
  tolerance: 0.1,
} as const;

/** ISO 2533 (ICAO) table in steps of 100 m, as reproduced in an open repository; heights are geopotential. */
export const PRESSURE_ISO_2533 = [
  { geopotential_m: 100, pressure_Pa: 100129.0, tolerance_Pa: 1 },
  { geopotential_m: 200, pressure_Pa: 98945.3, tolerance_Pa: 0.5 },
  { geopotential_m: 700, pressure_Pa: 93193.6, tolerance_Pa: 0.5 },
  { geopotential_m: 800, pressure_Pa: 92076.4, tolerance_Pa: 0.5 },
  { geopotential_m: 1000, pressure_Pa: 89874.6, tolerance_Pa: 0.5 },
  { geopotential_m: 1100, pressure_Pa: 88789.8, tolerance_Pa: 0.5 },
  { geopotential_m: 1500, pressure_Pa: 84556.0, tolerance_Pa: 0.5 },
  { geopotential_m: 1800, pressure_Pa: 81489.2, tolerance_Pa: 0.5 },
  { geopotential_m: 2200, pressure_Pa: 77540.9, tolerance_Pa: 0.5 },
  { geopotential_m: 2700, pressure_Pa: 72824.8, tolerance_Pa: 0.5 },
  { geopotential_m: 11000, pressure_Pa: 22632.1, tolerance_Pa: 0.1 },
] as const;

/** At geometric heights: U.S. Standard Atmosphere 1976; the Python package fluids agrees. */
export const PRESSURE_GEOMETRIC = [
  { elevation_m: 500, pressure_Pa: 95461.3, tolerance_Pa: 0.5 },
  { elevation_m: 2000, pressure_Pa: 79501.4, tolerance_Pa: 0.5 },
  { elevation_m: 3000, pressure_Pa: 70121.1, tolerance_Pa: 0.5 },
] as const;

/** Published in feet and psia, engineersedge.com standard atmosphere table. One psi is 6894.757 Pa. */
export const PRESSURE_FEET = [
  { elevation_ft: 1000, pressure_psia: 14.175, tolerance_psia: 0.015 },
  { elevation_ft: 8000, pressure_psia: 10.914, tolerance_psia: 0.015 },
  { elevation_ft: 10000, pressure_psia: 10.108, tolerance_psia: 0.015 },
] as const;
