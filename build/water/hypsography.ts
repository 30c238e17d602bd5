/** One step of a hypsographic curve: how much of the lake is at least this deep. */
export interface HypsographicRow {
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
export class DepthShares {
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
export function hypsographicCurve(
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
