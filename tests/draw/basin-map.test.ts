import geographiclib from "geographiclib-geodesic";
import { describe, expect, test } from "vitest";
import { basinProjection } from "../../build/draw/map/basin-projection.ts";

const { Geodesic } = geographiclib;

type LonLat = readonly [number, number];

/** Places up to about 150 km about a middle, on both hemispheres, near the pole and across the antimeridian. */
const BASINS: readonly LonLat[] = [
  [-106.3, 41.3],
  [25, 66],
  [-70, -45],
  [179.9, -38],
  [0, 0],
];
const around = ([lon, lat]: LonLat): LonLat[] =>
  [-1, -0.4, 0, 0.3, 1].flatMap((north) =>
    [-1, 0, 0.7].map((east): LonLat => [lon + (1.3 * east) / Math.cos((lat * Math.PI) / 180), lat + north]),
  );

describe("distances on the map of all lakes", () => {
  // Karney (2013), Algorithms for geodesics, J. Geodesy 87:43, as its author's library computes it.
  test.each(BASINS)("about %d, %d are those of the ellipsoid within 1 %%", (...middle) => {
    const places = around(middle);
    const project = basinProjection(places);
    let worst = 0;
    for (const a of places)
      for (const b of places) {
        const true_m = Geodesic.WGS84.Inverse(a[1], a[0], b[1], b[0], Geodesic.DISTANCE).s12 ?? 0;
        if (true_m < 1) continue;
        const [from, to] = [project(a), project(b)];
        const drawn_m = Math.hypot(to.x_m - from.x_m, to.y_m - from.y_m);
        worst = Math.max(worst, Math.abs(drawn_m / true_m - 1));
      }
    expect(worst).toBeGreaterThan(0);
    expect(worst).toBeLessThan(0.01);
  });

  test("north is up and east is to the right", () => {
    const project = basinProjection([[-106.3, 41.3]]);
    expect(project([-106.3, 41.4]).y_m).toBeGreaterThan(11_000);
    expect(project([-106.2, 41.3]).x_m).toBeGreaterThan(8000);
  });
});
