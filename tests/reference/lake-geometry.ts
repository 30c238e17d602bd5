import type { LonLat } from "../../build/model/lake-shape.ts";

/**
 * Polygons on the WGS 84 ellipsoid: the regression tests of Karney's GeographicLib (npm geographiclib-geodesic 2.2.0,
 * test/geodesictest.js), areas positive counter-clockwise. Corners as [longitude, latitude], not closed.
 */
export const KARNEY_POLYGONS: readonly {
  readonly name: string;
  readonly corners: readonly LonLat[];
  readonly area_m2?: number;
  readonly areaTolerance_m2?: number;
  readonly length_m?: number;
  readonly lengthTolerance_m?: number;
}[] = [
  {
    name: "Planimeter0a",
    corners: [
      [0, 89],
      [90, 89],
      [180, 89],
      [270, 89],
    ],
    area_m2: 24952305678.0,
    areaTolerance_m2: 1.0,
    length_m: 631819.8745,
    lengthTolerance_m: 0.001,
  },
  {
    name: "Planimeter0b",
    corners: [
      [0, -89],
      [90, -89],
      [180, -89],
      [270, -89],
    ],
    area_m2: -24952305678.0,
    areaTolerance_m2: 1.0,
  },
  {
    name: "Planimeter0d",
    corners: [
      [0, 90],
      [0, 0],
      [90, 0],
    ],
    area_m2: 63758202715511.0,
    areaTolerance_m2: 1.0,
    length_m: 30022685.0,
    lengthTolerance_m: 1.0,
  },
  {
    name: "Planimeter5",
    corners: [
      [0.1, 89],
      [90.1, 89],
      [-179.9, 89],
    ],
    area_m2: 12476152838.5,
    areaTolerance_m2: 1.0,
    length_m: 539297.0,
    lengthTolerance_m: 1.0,
  },
  {
    name: "Planimeter6",
    corners: [
      [-1e-14, 9],
      [180, 9],
      [0, 9],
    ],
    area_m2: 0.0,
    areaTolerance_m2: 1.0,
  },
  {
    name: "Planimeter12",
    corners: [
      [0, 66.562222222],
      [180, 66.562222222],
      [360, 66.562222222],
    ],
    area_m2: 0.0,
    areaTolerance_m2: 1.0,
  },
  {
    name: "Planimeter13",
    corners: [
      [-360, 89],
      [-240, 89],
      [-120, 89],
      [0, 89],
      [120, 89],
      [240, 89],
    ],
    area_m2: 32415230256.0,
    areaTolerance_m2: 1.0,
    length_m: 1160741.0,
    lengthTolerance_m: 1.0,
  },
  {
    name: "Planimeter15",
    corners: [
      [1, 2],
      [2, 1],
      [3, 3],
    ],
    area_m2: 18454562325.45119,
    areaTolerance_m2: 0.5,
  },
];

/** A small made-up lake and its island, measured with the Python packages geographiclib and pyproj (PROJ), which agree. */
export const MEASURED_LAKE = {
  citation: "Python geographiclib and PROJ",
  shore: [
    [-120.3, 50.7],
    [-120.295, 50.6985],
    [-120.29, 50.7005],
    [-120.2895, 50.704],
    [-120.294, 50.7062],
    [-120.2992, 50.7048],
  ],
  enclosed_m2: 460488.38,
  island: [
    [-120.295, 50.702],
    [-120.2942, 50.7024],
    [-120.2938, 50.7016],
    [-120.2946, 50.7013],
  ],
  island_m2: 5815.6,
  islandShore_m: 313.778,
  water_m2: 454672.78,
  /** Hutchinson (1957): outer shore by the circumference of a circle of the same area. */
  development: 1.0543,
  tolerance_m2: 0.7,
} as const;

/** Volume by truncated cones, V = sum h/3 (A1 + A2 + sqrt(A1 A2)): Hutchinson (1957), Wetzel & Likens (2000); worked in Python. */
export const HYPSOGRAPHIC_VOLUMES = [
  {
    name: "example bathymetry of rLakeAnalyzer (GLEON)",
    depths_m: [0, 2.3, 2.5, 4.2, 5.8, 7],
    areas_m2: [1000, 900, 864, 820, 200, 10],
    volume_m3: 4653.487,
    tolerance_m3: 0.01,
  },
  {
    name: "cone, A(z) = 100 (1 - z/9)^2, closed form A0 zmax / 3",
    depths_m: [0, 3, 6, 9],
    areas_m2: [100, 44.4444444444, 11.1111111111, 0],
    volume_m3: 300,
    tolerance_m3: 1e-6,
  },
  {
    name: "lake of 52 ha to 15 m",
    depths_m: [0, 3, 6, 9, 12, 15],
    areas_m2: [520_000, 413_000, 301_000, 178_000, 62_000, 0],
    volume_m3: 3_580_524,
    tolerance_m3: 10,
  },
] as const;

/** Osgood (1988), Hydrobiologia 157:69: mean depth in m by the root of the area in km2. Arithmetic from the definition. */
export const OSGOOD_INDEX = [
  { meanDepth_m: 3, area_km2: 4, index: 1.5 },
  { meanDepth_m: 6, area_km2: 1, index: 6 },
  { meanDepth_m: 2.2, area_km2: 0.09, index: 7.3333 },
  { meanDepth_m: 12, area_km2: 9, index: 4 },
] as const;
