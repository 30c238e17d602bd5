/** Trade convention, the "rule of 11": thousandths of an inch = 11 - X, times 25.4; worked out apart from this program. */
export const TIPPET_TABLE = {
  citation: "rule of 11",
  tolerance_mm: 1e-4,
  rows: [
    { size: 0, diameter_mm: 0.2794 },
    { size: 1, diameter_mm: 0.254 },
    { size: 2, diameter_mm: 0.2286 },
    { size: 3, diameter_mm: 0.2032 },
    { size: 4, diameter_mm: 0.1778 },
    { size: 5, diameter_mm: 0.1524 },
    { size: 6, diameter_mm: 0.127 },
    { size: 7, diameter_mm: 0.1016 },
    { size: 8, diameter_mm: 0.0762 },
    { size: 4.5, diameter_mm: 0.0065 * 25.4 },
  ],
} as const;

/** The same as printed to the hundredth on a public angling table. */
export const PRINTED_TIPPET_TABLE = {
  citation: "published table of X, inch and mm",
  tolerance_mm: 0.005,
  rows: [
    { size: 0, diameter_mm: 0.28 },
    { size: 3, diameter_mm: 0.2 },
    { size: 4, diameter_mm: 0.18 },
    { size: 5, diameter_mm: 0.15 },
    { size: 6, diameter_mm: 0.13 },
    { size: 7, diameter_mm: 0.1 },
  ],
} as const;

/** Weight in water per metre of line 0.008 in across, water 999.7 kg/m3: Archimedes, NIST/ICRU densities. */
export const SUNK_LINE_TABLE = {
  citation: "Archimedes, NIST/ICRU densities",
  tolerance: 0.01,
  water_C: 10,
  rows: [
    { what: "nylon", density_kgm3: 1140, diameter_m: 0.008 * 0.0254, weight_uNpm: 44.619 },
    { what: "PVDF", density_kgm3: 1760, diameter_m: 0.008 * 0.0254, weight_uNpm: 241.793 },
  ],
} as const;

/** Solid balls: pi/6 d^3 rho. */
export const BALL_TABLE = {
  citation: "solid ball, pi/6 d^3 rho",
  tolerance: 0.002,
  rows: [
    { what: "lead", density_kgm3: 11350, diameter_m: 0.11 * 0.0254, mass_g: 0.1296 },
    { what: "lead", density_kgm3: 11350, diameter_m: 0.09 * 0.0254, mass_g: 0.071 },
    { what: "lead", density_kgm3: 11350, diameter_m: 0.08 * 0.0254, mass_g: 0.0499 },
    { what: "tungsten", density_kgm3: 19300, diameter_m: 0.0028, mass_g: 0.2218 },
    { what: "tungsten", density_kgm3: 19300, diameter_m: 0.0038, mass_g: 0.5545 },
    { what: "tin", density_kgm3: 7310, diameter_m: 0.003, mass_g: 0.1033 },
  ],
} as const;
