/**
 * Lines in a uniform stream with drag across the line only, `D0 cos^2(lean)` per metre. Closed forms checked with
 * SciPy's solve_ivp and a chain of thousands of links; the last two have no closed form and are where those two agree.
 * Loads in N, N/m; lengths in m; lean at the support in degrees from the vertical.
 */
export const HANGING_LINES = [
  {
    citation: "weightless line, end weight (closed form)",
    end: { weight_N: 1, drag_N: 0 },
    lines: [{ length_m: 2, drag_Npm: 1, weight_Npm: 0 }],
    x_m: 1.236068,
    z_m: 1.443635,
    lean_deg: 90 - 26.5651,
    pull_N: 1,
    tolerance: 1e-4,
  },
  {
    citation: "weightless line, end weight with drag (closed form)",
    end: { weight_N: 0.004, drag_N: 0.001 },
    lines: [{ length_m: 5, drag_Npm: 0.0004, weight_Npm: 0 }],
    x_m: 2.167968,
    z_m: 4.470425,
    lean_deg: 90 - 53.6815,
    pull_N: 0.00412311,
    tolerance: 1e-4,
  },
  {
    citation: "heavy line without drag, end weight with drag: catenary (closed form)",
    end: { weight_N: 0.001, drag_N: 0.0005 },
    lines: [{ length_m: 3, drag_Npm: 0, weight_Npm: 0.0002 }],
    x_m: 1.09057,
    z_m: 2.791357,
    tolerance: 1e-4,
  },
  {
    citation: "heavier line without drag, end weight with drag: catenary (closed form)",
    end: { weight_N: 0.0005, drag_N: 0.001 },
    lines: [{ length_m: 5, drag_Npm: 0, weight_Npm: 0.001 }],
    x_m: 1.924847,
    z_m: 4.472136,
    tolerance: 1e-4,
  },
  {
    citation: "two weightless lines, a weight at the join and at the end (closed forms chained)",
    end: { weight_N: 0.0003, drag_N: 0.00005 },
    lines: [
      { length_m: 1, drag_Npm: 0.0005, weight_Npm: 0, top: { weight_N: 0.0006, drag_N: 0.0001 } },
      { length_m: 2, drag_Npm: 0.0008, weight_Npm: 0 },
    ],
    x_m: 2.20007,
    z_m: 1.911418,
    lean_deg: 90 - 22.5071,
    pull_N: 0.00083198,
    tolerance: 1e-4,
  },
  {
    citation: "heavy line with drag, end weight (SciPy and a chain of 20,000 links)",
    end: { weight_N: 0.0009, drag_N: 0.0002 },
    lines: [{ length_m: 3, drag_Npm: 0.0007, weight_Npm: 0.0002 }],
    x_m: 1.94327,
    z_m: 2.20952,
    lean_deg: 90 - 36.015,
    pull_N: 0.00136386,
    tolerance: 5e-4,
  },
  {
    citation: "heavier line with drag, end weight (SciPy and a chain of 20,000 links)",
    end: { weight_N: 0.0005, drag_N: 0.0001 },
    lines: [{ length_m: 4, drag_Npm: 0.001, weight_Npm: 0.0005 }],
    x_m: 2.84839,
    z_m: 2.7529,
    lean_deg: 90 - 39.007,
    pull_N: 0.00188635,
    tolerance: 5e-4,
  },
] as const;

/**
 * A long heavy line without end weight trails straight at the angle to the flow where `w cos(phi) = D0 sin^2(phi)`:
 * `cos(phi) = (-lam + sqrt(lam^2 + 4))/2` with `lam = w/D0` (closed form, drag across the line only).
 */
export const TRAILING_LINE = { weightOverDrag: 0.5, toFlow_deg: 38.6683, tolerance_deg: 1e-3 } as const;

/**
 * The rig model's own example: L = 4 m, d = 0.2 mm, U = 0.05 m/s, W = 0.004 N, Cd = 3, rho = 1000 kg/m3, weightless;
 * with k = rho Cd d U^2 / (2 W): z = asinh(k L)/k, x = (sqrt(1 + (k L)^2) - 1)/k, tan(lean) = k L. Derived by hand.
 */
export const WORKED_LINE = {
  length_m: 4,
  diameter_m: 0.0002,
  speed_mps: 0.05,
  weight_N: 0.004,
  coefficient: 3,
  density_kgm3: 1000,
  z_m: 3.69678,
  x_m: 1.33333,
  lean_deg: 36.87,
} as const;
