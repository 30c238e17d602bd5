import type { DepthBand } from "../../model/club.ts";

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

/** A leader as covering sees it. */
export interface Coverable {
  /** The set depths it serves, ends included. */
  readonly serves: DepthBand;
  /** One is on a board already. */
  readonly alreadyTied: boolean;
  readonly knots: number;
  readonly material_m: number;
}

export interface Cover<T> {
  /** From shallow to deep. */
  readonly chosen: readonly T[];
  /** What no candidate reaches. */
  readonly uncovered: readonly DepthBand[];
}

/** Leaders to tie, leaders in all, knots, millimetres of material: less of an earlier one outweighs any of a later one. */
type Cost = readonly [number, number, number, number];

const costOf = ({ alreadyTied, knots, material_m }: Coverable): Cost => [
  alreadyTied ? 0 : 1,
  1,
  knots,
  Math.round(material_m * 1000),
];
const plus = (a: Cost, b: Cost): Cost => [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3]];
const isLess = (a: Cost, b: Cost): boolean => {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i >= 0 && (a[i] ?? 0) < (b[i] ?? 0);
};

/** The shallowest set deeper than `reach_m` that still needs covering; `undefined` when none does. */
function nextNeeded(needed: readonly DepthBand[], reach_m: number): number | undefined {
  const band = needed.find(({ to_m }) => to_m > reach_m + SAME_M);
  return band === undefined ? undefined : Math.max(band.from_m, reach_m);
}

interface Best<T> {
  readonly cost: Cost;
  readonly chosen: readonly T[];
}

const NOTHING_LEFT = { cost: [0, 0, 0, 0], chosen: [] } as const satisfies Best<never>;

/**
 * The fewest leaders to tie, then the fewest in all, then the fewest knots, then the least material, that serve
 * every set of every band; exact, by working back from the deepest set. Of equal covers the one whose leaders come
 * first in `candidates`.
 */
export function cover<T extends Coverable>(sets: readonly DepthBand[], candidates: readonly T[]): Cover<T> {
  const reached = candidates.map(({ serves }) => serves);
  const bands = union(sets);
  const uncovered = bands.flatMap((band) => subtract(band, reached));
  const needed = bands.flatMap((band) => subtract(band, uncovered));
  const bestFrom = new Map<number, Best<T> | undefined>();

  const cheapest = (from_m: number): Best<T> | undefined => {
    if (bestFrom.has(from_m)) return bestFrom.get(from_m);
    let best: Best<T> | undefined;
    for (const candidate of candidates) {
      const { serves } = candidate;
      if (serves.from_m > from_m + SAME_M || serves.to_m < from_m - SAME_M) continue;
      const next_m = nextNeeded(needed, serves.to_m);
      if (next_m !== undefined && next_m <= from_m + SAME_M) continue;
      const rest = next_m === undefined ? NOTHING_LEFT : cheapest(next_m);
      if (rest === undefined) continue;
      const cost = plus(costOf(candidate), rest.cost);
      if (best === undefined || isLess(cost, best.cost)) best = { cost, chosen: [candidate, ...rest.chosen] };
    }
    bestFrom.set(from_m, best);
    return best;
  };

  const first = needed[0];
  const best = first === undefined ? NOTHING_LEFT : cheapest(first.from_m);
  if (best === undefined) throw new Error("a set depth that some leader serves was left without one");
  return { chosen: best.chosen, uncovered };
}
