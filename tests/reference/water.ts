/** Air-free pure water at 1 atm. Tanaka et al. (2001), Metrologia 38:301, evaluated with mpmath; IAPWS-95 and TEOS-10 agree to 0.001. */
export const DENSITY_TABLE = {
  citation: "Tanaka et al. (2001)",
  tolerance_kgm3: 0.001,
  rows: [
    { water_C: 1, density_kgm3: 999.9017 },
    { water_C: 3, density_kgm3: 999.9672 },
    { water_C: 5, density_kgm3: 999.9668 },
    { water_C: 6, density_kgm3: 999.9431 },
    { water_C: 9, density_kgm3: 999.7839 },
    { water_C: 10, density_kgm3: 999.7027 },
    { water_C: 13, density_kgm3: 999.3801 },
    { water_C: 15, density_kgm3: 999.1026 },
    { water_C: 18, density_kgm3: 998.5984 },
    { water_C: 20, density_kgm3: 998.2067 },
    { water_C: 24, density_kgm3: 997.2988 },
    { water_C: 30, density_kgm3: 995.6488 },
  ],
} as const;

/** Published spot value: pure water at 25 °C, CIPM. */
export const DENSITY_AT_25_C = { water_C: 25, density_kgm3: 997.047, tolerance_kgm3: 0.0002 } as const;

/** Dynamic viscosity at 0.101325 MPa. IAPWS R12-08, evaluated with the Python package iapws 1.5.3. */
export const VISCOSITY_TABLE = {
  citation: "IAPWS R12-08",
  tolerance: 0.003,
  rows: [
    { water_C: 0.01, viscosity_mPas: 1.7911 },
    { water_C: 2, viscosity_mPas: 1.6735 },
    { water_C: 5, viscosity_mPas: 1.5182 },
    { water_C: 6, viscosity_mPas: 1.4715 },
    { water_C: 8, viscosity_mPas: 1.3847 },
    { water_C: 10, viscosity_mPas: 1.3059 },
    { water_C: 14, viscosity_mPas: 1.1683 },
    { water_C: 16, viscosity_mPas: 1.1081 },
    { water_C: 20, viscosity_mPas: 1.0016 },
    { water_C: 22, viscosity_mPas: 0.9544 },
    { water_C: 25, viscosity_mPas: 0.89 },
  ],
} as const;

/** Kinematic viscosity at 10 °C, mm2/s, from the same two sources. */
export const KINEMATIC_AT_10_C_MM2S = 1.3063;
