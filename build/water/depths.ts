import type { Phase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import type { Basin } from "./basin.ts";
import { roundDepths_m } from "./depth-steps.ts";
import { DepthShares, hypsographicCurve, volume_m3 } from "./hypsography.ts";
import { deeperThan, type PlanePolygon, without } from "./isobands.ts";
import type { MultiPolygon } from "./map-schema.ts";
import { toDecimals, writtenLine } from "./rounding.ts";
import type { LakeDepths, Zone } from "./shape-schema.ts";
import { clippedTo } from "./shore-clip.ts";

/** The depths at which fish are looked for in one phase. */
export interface PhaseBand {
  readonly phase: Phase;
  readonly band: { readonly from_m: number; readonly to_m: number };
}

type Depths = NonNullable<Basin["depths"]>;

/** Slices of the volume; rows of the curve that is shown. */
const SLICES = 60;
const ROWS_SHOWN = 12;

const SQUARE_METRES_A_HECTARE = 10_000;

/** Depths of all nodes on the water. */
export function sharesOf({ grid, field }: Depths): DepthShares {
  return new DepthShares(Float64Array.from(field.filter((_, node) => grid.water[node] === 1)));
}

/** Mean depth, volume, hypsographic curve and depth bands. */
export function composeDepths(
  { outline }: Basin,
  { deepest_m }: Depths,
  shares: DepthShares,
  units: UnitSystem,
): LakeDepths {
  const volume = volume_m3(hypsographicCurve(shares, outline.area_m2, deepest_m, SLICES));
  const edges = [0, ...roundDepths_m(deepest_m, units), deepest_m];
  return {
    deepest_m: toDecimals(deepest_m, 2),
    mean_m: toDecimals(volume / outline.area_m2, 2),
    volume_m3: Math.round(volume),
    hypsography: hypsographicCurve(shares, outline.area_m2, deepest_m, ROWS_SHOWN).map(
      ({ depth_m, area_m2 }) => ({
        depth_m: toDecimals(depth_m, 2),
        area_ha: toDecimals(area_m2 / SQUARE_METRES_A_HECTARE, 3),
      }),
    ),
    bands: edges.slice(1).map((to_m, i) => {
      const from_m = edges[i] ?? 0;
      const isLast = i === edges.length - 2;
      return {
        from_m: toDecimals(from_m, 4),
        to_m: toDecimals(to_m, 4),
        share: toDecimals(shares.between(from_m, isLast ? Number.POSITIVE_INFINITY : to_m), 4),
      };
    }),
  };
}

/** Polygons of the plane as the exported data holds them. */
export const writtenPolygons = (
  polygons: readonly PlanePolygon[],
  { plane }: Pick<Basin, "plane">,
): MultiPolygon => polygons.map((polygon) => polygon.map((ring) => writtenLine(ring.map(plane.toLonLat))));

/**
 * The part of the lake between the two depths of each phase.
 * @param drawn the lake's own polygons as they are drawn
 */
export function composeZones(
  basin: Basin,
  { grid, field, deepest_m }: Depths,
  shares: DepthShares,
  drawn: readonly PlanePolygon[],
  bands: readonly PhaseBand[],
): Zone[] {
  const wide = bands.filter(({ band }) => band.to_m > band.from_m && band.from_m < deepest_m);
  return wide.map(({ phase, band: { from_m, to_m } }) => {
    const reachesBottom = to_m >= deepest_m;
    const all = from_m <= 0 ? drawn : deeperThan(field, grid, from_m);
    const polygons = reachesBottom ? all : without(all, deeperThan(field, grid, to_m));
    return {
      phase,
      from_m,
      to_m,
      share: toDecimals(shares.between(from_m, reachesBottom ? Number.POSITIVE_INFINITY : to_m), 4),
      polygons: writtenPolygons(polygons === drawn ? drawn : clippedTo(drawn, polygons), basin),
    };
  });
}
