import type { LonLat } from "../../build/model/lake-shape.ts";

/**
 * Crater Lake, Oregon, drawn by hand from memory for this test: thirty corners of the shore and seven of Wizard Island.
 * A check of the order of things against a real place, no survey.
 */
export const CRATER_LAKE: { readonly shore: readonly LonLat[]; readonly island: readonly LonLat[] } = {
  shore: [
    [-122.162, 42.938],
    [-122.155, 42.925],
    [-122.147, 42.916],
    [-122.138, 42.911],
    [-122.127, 42.909],
    [-122.115, 42.91],
    [-122.104, 42.909],
    [-122.092, 42.911],
    [-122.081, 42.914],
    [-122.071, 42.917],
    [-122.062, 42.922],
    [-122.054, 42.928],
    [-122.05, 42.936],
    [-122.048, 42.944],
    [-122.051, 42.952],
    [-122.056, 42.96],
    [-122.062, 42.967],
    [-122.07, 42.973],
    [-122.08, 42.977],
    [-122.091, 42.978],
    [-122.102, 42.977],
    [-122.113, 42.974],
    [-122.123, 42.97],
    [-122.132, 42.968],
    [-122.141, 42.964],
    [-122.149, 42.959],
    [-122.156, 42.955],
    [-122.161, 42.95],
    [-122.163, 42.945],
    [-122.162, 42.938],
  ],
  island: [
    [-122.151, 42.938],
    [-122.149, 42.942],
    [-122.144, 42.943],
    [-122.14, 42.94],
    [-122.142, 42.936],
    [-122.148, 42.935],
    [-122.151, 42.938],
  ],
};

/** US Geological Survey and National Park Service: 53.4 km2, 4.5 to 6 miles across (from memory). */
export const CRATER_LAKE_FIGURES = { area_ha: 5340, across_m: [7240, 9690] } as const;
