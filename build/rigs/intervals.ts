import type { DepthBand } from "../model/club.ts";

/** Lengths closer than this are one length, m. */
export const SAME_M = 1e-6;

/** Overlapping and touching bands made one, from shallow to deep. */
export function union(bands: readonly DepthBand[]): DepthBand[] {
  const merged: DepthBand[] = [];
  for (const band of [...bands].sort((a, b) => a.from_m - b.from_m)) {
    const last = merged.at(-1);
    if (last !== undefined && band.from_m <= last.to_m + SAME_M)
      merged[merged.length - 1] = { from_m: last.from_m, to_m: Math.max(last.to_m, band.to_m) };
    else merged.push(band);
  }
  return merged;
}

/** What is left of `band` outside every one of `covers`; pieces thinner than {@link SAME_M} are nothing. */
export function subtract(band: DepthBand, covers: readonly DepthBand[]): DepthBand[] {
  const left: DepthBand[] = [];
  let from_m = band.from_m;
  const overlapping = union(covers).filter(
    (cover) => cover.to_m >= band.from_m - SAME_M && cover.from_m <= band.to_m + SAME_M,
  );
  for (const cover of overlapping) {
    if (cover.from_m > from_m + SAME_M) left.push({ from_m, to_m: cover.from_m });
    from_m = Math.max(from_m, cover.to_m);
  }
  if (band.to_m > from_m + SAME_M || overlapping.length === 0) left.push({ from_m, to_m: band.to_m });
  return left;
}

/** Length of the part of `band` that `cover` covers, m; negative when they do not meet. */
export const overlap_m = (band: DepthBand, cover: DepthBand): number =>
  Math.min(band.to_m, cover.to_m) - Math.max(band.from_m, cover.from_m);
