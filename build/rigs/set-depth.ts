import type { DepthBand, RigBox } from "../model/club.ts";

/** With less than about a foot between them the fly hangs at the indicator. From memory. */
export const LEAST_SET_M = 0.3;

/** How far above the plumbed bottom the fly is meant to hang: the middle of the club's range, m. */
export const aboveBottom_m = ({ offBottom }: Pick<RigBox, "offBottom">): number =>
  (offBottom.from_m + offBottom.to_m) / 2;

/** How deep the fly hangs over a bottom `depth_m` down, m; never negative. */
export const flyDepth_m = (depth_m: number, box: Pick<RigBox, "offBottom">): number =>
  Math.max(0, depth_m - aboveBottom_m(box));

/**
 * Length from fly to stop at the shallow and the deep end of a band: the plumbed depth less 6 to 8 in (common
 * practice, no source). `undefined` where even the deep end leaves less than {@link LEAST_SET_M}; the shallow end
 * stops there.
 */
export function setDepthOf(band: DepthBand, box: RigBox): DepthBand | undefined {
  const to_m = flyDepth_m(band.to_m, box);
  if (to_m < LEAST_SET_M) return undefined;
  return { from_m: Math.max(LEAST_SET_M, flyDepth_m(band.from_m, box)), to_m };
}

/** The least water in which a fly can hang under an indicator, m. */
export const leastIndicatorWater_m = (box: RigBox): number => LEAST_SET_M + aboveBottom_m(box);

/** The longest set that can be landed with a fixed indicator: the rod less the arm's reach, m. */
export const longestFixedSet_m = ({ rod_m, reach_m }: Pick<RigBox, "rod_m" | "reach_m">): number =>
  Math.max(0, rod_m - reach_m);
