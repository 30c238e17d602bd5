/** Schiller and Naumann's law, worked out apart from this program. Clift, Grace and Weber (1978). */
export const SCHILLER_NAUMANN_TABLE = {
  citation: "Schiller-Naumann, Clift, Grace and Weber (1978)",
  tolerance: 1e-4,
  rows: [
    { reynolds: 1, coefficient: 27.6 },
    { reynolds: 10, coefficient: 4.1511 },
    { reynolds: 100, coefficient: 1.0917 },
    { reynolds: 300, coefficient: 0.6839 },
    { reynolds: 500, coefficient: 0.5627 },
    { reynolds: 1000, coefficient: 0.4383 },
  ],
} as const;

/** The standard curve of spheres, Clift, Grace and Weber (1978), by the Python package fluids (drag.Clift). */
export const STANDARD_SPHERE_TABLE = {
  citation: "standard sphere drag, Clift, Grace and Weber (1978)",
  tolerance: 0.03,
  rows: [
    { reynolds: 1000, coefficient: 0.4711 },
    { reynolds: 2000, coefficient: 0.4211 },
    { reynolds: 5000, coefficient: 0.3873 },
    { reynolds: 10000, coefficient: 0.4052 },
    { reynolds: 20000, coefficient: 0.4417 },
    { reynolds: 44000, coefficient: 0.466 },
  ],
} as const;

/** White, Viscous Fluid Flow: curve fit for a cylinder across the flow; from memory, worked out apart from this program. */
export const CYLINDER_TABLE = {
  citation: "cylinder, White, Viscous Fluid Flow",
  tolerance: 1e-4,
  rows: [
    { reynolds: 0.5, coefficient: 16.874 },
    { reynolds: 1, coefficient: 11 },
    { reynolds: 20, coefficient: 2.3572 },
    { reynolds: 100, coefficient: 1.4642 },
    { reynolds: 500, coefficient: 1.1587 },
    { reynolds: 1000, coefficient: 1.1 },
    { reynolds: 10000, coefficient: 1.0215 },
  ],
} as const;

/** Drag per metre of line straight across the flow at 10 °C: 1/2 rho Cd d U^2 with White's Cd, IAPWS viscosity. */
export const LINE_DRAG_TABLE = {
  citation: "drag of a line across the flow, 10 °C",
  tolerance: 0.01,
  rows: [
    { diameter_mm: 0.152, speed_mps: 0.05, drag_mNpm: 0.7771 },
    { diameter_mm: 0.254, speed_mps: 0.1, drag_mNpm: 3.0254 },
  ],
} as const;
