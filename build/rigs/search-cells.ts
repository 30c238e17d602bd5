import type { DepthBand, Method } from "../model/club.ts";
import type { SearchStep } from "./rig-schemas.ts";
import { type SearchPlace, type SearchTimes, searchPlan } from "./search-plan.ts";

/** A place on a lake that the club names, with the depths it plumbed there. */
export interface PlumbedPlace {
  readonly name: string;
  readonly depths_m: readonly number[];
}

/** A fly worth trying, the first choice first. */
export interface SearchFly {
  readonly pattern: string;
  readonly name: string;
  readonly method: Method;
}

/** A depth, fly and method to try at a place. */
export interface SearchTry extends SearchFly {
  readonly depth_m: number;
  readonly chance: number;
}

/** Fish take somewhere on nine days in ten. Common practice, no source. */
const TAKING_DAYS = 0.9;
/** Weight of a depth in the phase's band, within one step of it, and beyond. Common practice, no source. */
const DEPTH_WEIGHTS = { inside: 0.6, near: 0.3, far: 0.1 } as const;
/** Weight of the first, second and third fly, and of the first method and any other. Common practice, no source. */
const FLY_WEIGHTS = [1, 1 / 2, 1 / 4] as const;
const METHOD_WEIGHTS = { first: 1, other: 1 / 2 } as const;

function depthWeight(depth_m: number, { from_m, to_m }: DepthBand, step_m: number): number {
  const outside_m = Math.max(from_m - depth_m, depth_m - to_m, 0);
  if (outside_m <= 1e-9) return DEPTH_WEIGHTS.inside;
  return outside_m <= step_m + 1e-9 ? DEPTH_WEIGHTS.near : DEPTH_WEIGHTS.far;
}

/**
 * What to try at each place: the first fly at every depth, and the second and third at the depth most in the band. The
 * chances sum to {@link TAKING_DAYS}.
 * @param methods of the phase, the one to start with first
 * @param step_m how far outside the band a depth still counts as near it
 */
export function searchCells(
  places: readonly PlumbedPlace[],
  band: DepthBand,
  flies: readonly SearchFly[],
  methods: readonly Method[],
  step_m: number,
): SearchPlace<SearchTry>[] {
  const weighed = places.map(({ name, depths_m }) => {
    const depths = depths_m.map((depth_m) => ({ depth_m, weight: depthWeight(depth_m, band, step_m) }));
    const best = depths.reduce<(typeof depths)[number] | undefined>(
      (found, one) => (found === undefined || one.weight > found.weight ? one : found),
      undefined,
    );
    return {
      name,
      cells: flies.slice(0, FLY_WEIGHTS.length).flatMap((fly, rank) =>
        depths
          .filter((depth) => rank === 0 || depth === best)
          .map(({ depth_m, weight }) => ({
            ...fly,
            depth_m,
            weight:
              weight *
              (FLY_WEIGHTS[rank] ?? 0) *
              (fly.method === methods[0] ? METHOD_WEIGHTS.first : METHOD_WEIGHTS.other),
          })),
      ),
    };
  });
  const sum = weighed.flatMap(({ cells }) => cells).reduce((total, { weight }) => total + weight, 0);
  return weighed.map(({ name, cells }) => ({
    name,
    cells: cells.map(({ weight, ...cell }) => ({ ...cell, chance: (TAKING_DAYS * weight) / sum })),
  }));
}

/** Times are given to this, min. */
const ROUND_MIN = 5;
const rounded_min = (minutes: number): number => Math.round(minutes / ROUND_MIN) * ROUND_MIN;

/** The plan for a number of rods, without its chances. */
export const searchSteps = (places: readonly SearchPlace<SearchTry>[], times: SearchTimes): SearchStep[] =>
  searchPlan(places, times).map(({ place, rod, cell, from_min, to_min }) => ({
    place,
    rod,
    depth_m: cell.depth_m,
    pattern: cell.pattern,
    name: cell.name,
    way: cell.method,
    from_min: rounded_min(from_min),
    until_min: rounded_min(to_min),
  }));
