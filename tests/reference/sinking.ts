/**
 * Terminal speed of smooth spheres in water. Force balance with the standard drag curve of Clift, Grace and Weber by
 * the Python package fluids, IAPWS viscosity and Tanaka density.
 */
export const TERMINAL_SPEED_TABLE = {
  citation: "standard drag curve, fluids",
  tolerance: 0.05,
  rows: [
    { what: "lead", density_kgm3: 11350, diameter_mm: 2, water_C: 10, speed_mps: 0.769 },
    { what: "lead", density_kgm3: 11350, diameter_mm: 3, water_C: 10, speed_mps: 0.991 },
    { what: "lead", density_kgm3: 11350, diameter_mm: 4, water_C: 10, speed_mps: 1.173 },
    { what: "tin", density_kgm3: 7310, diameter_mm: 2, water_C: 10, speed_mps: 0.586 },
    { what: "tin", density_kgm3: 7310, diameter_mm: 3, water_C: 10, speed_mps: 0.758 },
    { what: "tin", density_kgm3: 7310, diameter_mm: 4, water_C: 10, speed_mps: 0.905 },
    { what: "tungsten", density_kgm3: 19300, diameter_mm: 4, water_C: 10, speed_mps: 1.572 },
    { what: "PVDF", density_kgm3: 1760, diameter_mm: 1, water_C: 4, speed_mps: 0.0799 },
    { what: "wet fly body", density_kgm3: 1050, diameter_mm: 5, water_C: 10, speed_mps: 0.0695 },
  ],
} as const;

/**
 * A coal particle settling in water. Cutlip and Shacham, ASEE numerical problem 5(a): published answer 0.0157816 m/s
 * with Cd = 24 (1 + 0.14 Re^0.7)/Re; Schiller and Naumann's form differs from that one by under 2 % here.
 */
export const COAL_PARTICLE = {
  citation: "Cutlip and Shacham, problem 5(a)",
  density_kgm3: 1800,
  diameter_m: 0.208e-3,
  water: { density_kgm3: 994.6, viscosity_m2s: 8.931e-4 / 994.6 },
  speed_mps: 0.0157816,
  tolerance: 0.02,
} as const;

/** Stokes: g D^2 (rho_p - rho) / (18 mu), closed form; 20 µm quartz in water at 20 °C. */
export const STOKES_PARTICLE = {
  citation: "Stokes' law",
  density_kgm3: 2650,
  diameter_m: 20e-6,
  water: { density_kgm3: 998.2, viscosity_m2s: 1.0016e-3 / 998.2 },
  speed_mps: 0.35939e-3,
  tolerance: 0.01,
} as const;

/** Share of its weight a body keeps in water at 10 °C: 1 - rho_w/rho, Archimedes; densities NIST/ICRU. */
export const SUNK_SHARE_TABLE = {
  citation: "Archimedes, NIST/ICRU densities",
  rows: [
    { what: "lead", density_kgm3: 11350, share: 0.9119 },
    { what: "tungsten", density_kgm3: 19300, share: 0.9482 },
  ],
} as const;

/** Lean of a ball on a thin line without drag: tan(theta) = drag/weight, Clift drag, 10 °C. */
export const TETHER_TABLE = {
  citation: "ball on a line without drag, fluids",
  tolerance: 0.05,
  rows: [
    { what: "lead", density_kgm3: 11350, diameter_mm: 3, speed_mps: 0.1, lean_deg: 1.026 },
    { what: "tungsten", density_kgm3: 19300, diameter_mm: 2.4, speed_mps: 0.2, lean_deg: 2.43 },
  ],
} as const;
