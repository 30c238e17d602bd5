import type { DepthBand, LeaderStock, RigBox } from "../../model/club.ts";
import { depthRange, toBase, type UnitSystem } from "../../model/units.ts";
import { overlap_m, SAME_M } from "./interval-cover.ts";
import {
  doubtfulSteps,
  type LeaderMake,
  leaderLength_m,
  makeText,
  sectionsOf,
  servedRange,
} from "./leader.ts";

/** A leader that could be tied, or is already. */
export interface LeaderCandidate {
  readonly make: LeaderMake;
  readonly serves: DepthBand;
  readonly knots: number;
  readonly material_m: number;
  /** The club's own recipe, when it is one. */
  readonly stock?: LeaderStock;
}

/** Sections are cut to the half foot. */
const STEP_FT = 0.5;
/** A tippet shorter than this leaves the fly too near the ring; longer than this it tangles. From memory. */
const TIPPET_FT = { least: 1.5, usual: 3, most: 4 };
/** Middle and tippet together; a longer rig cannot be cast with an ordinary rod. From memory. */
const MOST_KNOTTED_FT = 20;

const FOOT_M = toBase(1, "ft", "length");
const metres = (feet: number): number => feet * FOOT_M;
const KNOTTED_FT = Array.from(
  { length: (MOST_KNOTTED_FT - TIPPET_FT.least) / STEP_FT + 1 },
  (_, i) => TIPPET_FT.least + i * STEP_FT,
);

/** One knot at every join, and one more because the last join is a ring or swivel. */
const knotsOf = (make: LeaderMake): number => sectionsOf(make).length;

function candidate(make: LeaderMake, margin_m: number, stock?: LeaderStock): LeaderCandidate[] {
  const serves = servedRange(make, margin_m);
  if (serves === undefined) return [];
  return [
    {
      make,
      serves,
      knots: knotsOf(make),
      material_m: leaderLength_m(make),
      ...(stock === undefined ? {} : { stock }),
    },
  ];
}

/** The makes of one knotted length from one taper: without a middle where the tippet may stay short, and with one. */
function makesOf({ taper, middle, tippet }: LeaderMake, knotted_ft: number): LeaderMake[] {
  const straight = {
    taper,
    middle: { ...middle, length_m: 0 },
    tippet: { ...tippet, length_m: metres(knotted_ft) },
  };
  const tippet_ft = Math.max(TIPPET_FT.least, Math.min(TIPPET_FT.usual, knotted_ft - STEP_FT));
  const stepped = {
    taper,
    middle: { ...middle, length_m: metres(knotted_ft - tippet_ft) },
    tippet: { ...tippet, length_m: metres(tippet_ft) },
  };
  return [
    ...(knotted_ft <= TIPPET_FT.most ? [straight] : []),
    ...(knotted_ft - tippet_ft >= STEP_FT ? [stepped] : []),
  ];
}

/**
 * Every leader worth weighing up: the club's own recipes, and what its tapers and sizes make in half-foot steps
 * without a doubtful join.
 */
export function leaderCandidates({ leaders, margin_m }: RigBox): LeaderCandidate[] {
  const own = leaders.flatMap((stock) => candidate(stock, margin_m, stock));
  const templates = new Map(
    leaders.map((make) => [
      [make.taper.length_m, make.taper.size, make.middle.size, make.tippet.size].join(" "),
      make,
    ]),
  );
  const made = [...templates.values()]
    .flatMap((template) => KNOTTED_FT.flatMap((knotted_ft) => makesOf(template, knotted_ft)))
    .filter((make) => doubtfulSteps(make).length === 0)
    .flatMap((make) => candidate(make, margin_m));
  return [...own, ...made];
}

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
