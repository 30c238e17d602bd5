import type { DepthBand } from "../model/club.ts";
import { depthRange, type UnitSystem } from "../model/units.ts";
import type { LeaderCandidate } from "./candidates.ts";
import { overlap_m, SAME_M } from "./intervals.ts";
import { makeText } from "./leader.ts";

/** The leader that could be tied and comes nearest to serving `sets`: all of it, else most, else the closest. */
function nearestCandidate(
  sets: DepthBand,
  candidates: readonly LeaderCandidate[],
): LeaderCandidate | undefined {
  return candidates
    .map((candidate) => ({ candidate, overlap: overlap_m(sets, candidate.serves) }))
    .sort((a, b) => {
      const difference_m = b.overlap - a.overlap;
      if (Math.abs(difference_m) > SAME_M) return difference_m;
      return a.candidate.knots - b.candidate.knots || a.candidate.material_m - b.candidate.material_m;
    })[0]?.candidate;
}

/** Names sets that cannot be served, and the nearest leader that would. */
export function unservedText(
  sets: DepthBand,
  candidates: readonly LeaderCandidate[],
  units: UnitSystem,
): string {
  const what = `No leader here serves sets of ${depthRange(sets.from_m, sets.to_m, units)}`;
  const nearest = nearestCandidate(sets, candidates);
  if (nearest === undefined) return `${what}, and none can be tied from the sections in the box.`;
  const { serves, make } = nearest;
  const whole = serves.from_m <= sets.from_m + SAME_M && serves.to_m >= sets.to_m - SAME_M;
  return whole
    ? `${what}: tie ${makeText(make, units)}.`
    : `${what}: the nearest is ${makeText(make, units)}, for ${depthRange(serves.from_m, serves.to_m, units)}.`;
}
