import type { Phase } from "../model/phase.ts";
import { toBase, type UnitSystem } from "../model/units.ts";
import type { Basin } from "./basin.ts";
import { clipPolygons, isobathPolygons, type PlanePolygon, subtractPolygons } from "./isobands.ts";
import { roundedLine, toDecimals } from "./plane.ts";
import type { LakeDepths, MultiPolygon, Zone } from "./water-schema.ts";

const STEPS: Readonly<Record<UnitSystem, { readonly unit: string; readonly sizes: readonly number[] }>> = {
  imperial: { unit: "ft", sizes: [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] },
  metric: { unit: "m", sizes: [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500] },
};
const MOST_STEPS = 9;

/** Depths in round numbers of the club's own units, m: above 0, below the deepest place, nine at most. */
export function roundDepths_m(deepest_m: number, units: UnitSystem): number[] {
  const { unit, sizes } = STEPS[units];
  for (const size of sizes) {
    const step_m = toBase(size, unit, "length");
    const count = Math.ceil(deepest_m / step_m) - 1;
    if (count <= MOST_STEPS)
      return Array.from({ length: count }, (_, i) => toBase(size * (i + 1), unit, "length"));
  }
  return [];
}

/** One step of a hypsographic curve: how much of the lake is at least this deep. */
interface HypsographicRow {
  readonly depth_m: number;
  readonly area_m2: number;
}

/**
 * Volume under a hypsographic curve, slice by slice as a truncated cone; exact for a cone.
 * @param rows shallow first; below the last row nothing is counted
 * @source Hutchinson (1957), A Treatise on Limnology I; Wetzel & Likens (2000), Limnological Analyses
 */
export function volume_m3(rows: readonly HypsographicRow[]): number {
  return rows.slice(1).reduce((sum, { depth_m, area_m2 }, i) => {
    const above = rows[i];
    if (above === undefined) return sum;
    const height_m = depth_m - above.depth_m;
    return sum + (height_m / 3) * (above.area_m2 + area_m2 + Math.sqrt(above.area_m2 * area_m2));
  }, 0);
}

/**
 * Depths of equal pieces of water, to be asked how much of a lake is at least so deep.
 * @throws RangeError without any depth
 */
class DepthShares {
  readonly #sorted: Float64Array;

  constructor(depths_m: Float64Array) {
    if (depths_m.length === 0) throw new RangeError("a lake needs at least one depth");
    this.#sorted = depths_m.toSorted();
  }

  /** Share of the lake that is at least `depth_m` deep, 0 to 1. */
  atLeast(depth_m: number): number {
    let low = 0;
    let high = this.#sorted.length;
    // Half a millimetre, so that what lies level with a contour counts as inside it.
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#sorted[middle] ?? 0) < depth_m - 0.0005) low = middle + 1;
      else high = middle;
    }
    return 1 - low / this.#sorted.length;
  }

  /** Share of the lake between two depths, the deeper one left out. */
  between(from_m: number, to_m: number): number {
    return (from_m <= 0 ? 1 : this.atLeast(from_m)) - this.atLeast(to_m);
  }
}

/** The curve at `steps` equal steps from the surface to the deepest place. */
function hypsographicCurve(
  shares: DepthShares,
  area_m2: number,
  deepest_m: number,
  steps: number,
): HypsographicRow[] {
  return Array.from({ length: steps + 1 }, (_, step) => {
    const depth_m = (deepest_m * step) / steps;
    return { depth_m, area_m2: area_m2 * (step === 0 ? 1 : shares.atLeast(depth_m)) };
  });
}

/** The depths at which fish are looked for in one phase. */
export interface PhaseBand {
  readonly phase: Phase;
  readonly band: { readonly from_m: number; readonly to_m: number };
}

type Depths = NonNullable<Basin["depths"]>;

/** Slices of the volume; rows of the curve that is shown. */
const SLICES = 60;
const ROWS_SHOWN = 12;

const M2_PER_HECTARE = 10_000;

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
        area_ha: toDecimals(area_m2 / M2_PER_HECTARE, 3),
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
export const toMultiPolygon = (
  polygons: readonly PlanePolygon[],
  { plane }: Pick<Basin, "plane">,
): MultiPolygon => polygons.map((polygon) => polygon.map((ring) => roundedLine(ring.map(plane.toLonLat))));

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
    const all = from_m <= 0 ? drawn : isobathPolygons(field, grid, from_m);
    const polygons = reachesBottom ? all : subtractPolygons(all, isobathPolygons(field, grid, to_m));
    return {
      phase,
      from_m,
      to_m,
      share: toDecimals(shares.between(from_m, reachesBottom ? Number.POSITIVE_INFINITY : to_m), 4),
      polygons: toMultiPolygon(polygons === drawn ? drawn : clipPolygons(drawn, polygons), basin),
    };
  });
}
