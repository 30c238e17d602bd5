import type { DepthBand, LeaderStock, RigBox } from "../../model/club.ts";
import { SAME_M, subtract } from "./interval-cover.ts";
import { type LeaderMake, leaderLength_m, servedRange, toMillimetre } from "./leader.ts";

export interface ChosenLeader {
  readonly leader: LeaderStock;
  /** The set depths it serves, m. */
  readonly serves: DepthBand;
}

const tiedFirst = (a: LeaderStock, b: LeaderStock): number =>
  Number(b.tied > 0) - Number(a.tied > 0) || leaderLength_m(a) - leaderLength_m(b);

/** Every leader of the box an indicator slides on, with the set depths it serves. */
export const indicatorLeaders = ({
  leaders,
  margin_m,
}: Pick<RigBox, "leaders" | "margin_m">): ChosenLeader[] =>
  leaders.flatMap((leader) => {
    const serves = servedRange(leader, margin_m);
    return serves === undefined ? [] : [{ leader, serves }];
  });

/** The shortest leader that serves a set; of equals one already tied, then the first of the box. */
export const shortestIndicatorLeader = (
  set_m: number,
  box: Pick<RigBox, "leaders" | "margin_m">,
): LeaderStock | undefined =>
  indicatorLeaders(box)
    .filter(({ serves }) => serves.from_m <= set_m + SAME_M && serves.to_m >= set_m - SAME_M)
    .map(({ leader }) => leader)
    .sort(
      (a, b) =>
        toMillimetre(leaderLength_m(a)) - toMillimetre(leaderLength_m(b)) ||
        Number(b.tied > 0) - Number(a.tied > 0),
    )[0];

/** The sets no leader of the box serves. */
export const unservedSets = (sets: DepthBand, box: RigBox): DepthBand[] =>
  subtract(
    sets,
    indicatorLeaders(box).map(({ serves }) => serves),
  );

/** The leader for a retrieve: the shortest at least `length_m` long, else the longest; of equals one already tied. */
export function chooseRetrieveLeader(
  length_m: number,
  leaders: readonly LeaderStock[],
): LeaderStock | undefined {
  const shortestFirst = [...leaders].sort(
    (a, b) => leaderLength_m(a) - leaderLength_m(b) || Number(b.tied > 0) - Number(a.tied > 0),
  );
  return shortestFirst.find((leader) => leaderLength_m(leader) >= length_m - SAME_M) ?? shortestFirst.at(-1);
}

/** The longest leader that still holds a buoyant fly close above a sinking line, m. Common practice, from memory. */
const LONGEST_SHORT_LEADER_M = 1.8;

/** True for a leader made to keep a buoyant fly down; no indicator ever goes on it. */
export const isShortLeader = (make: LeaderMake): boolean => leaderLength_m(make) <= LONGEST_SHORT_LEADER_M;

/** A leader short enough to keep a buoyant fly down, one already tied first. */
export const chooseShortLeader = (leaders: readonly LeaderStock[]): LeaderStock | undefined =>
  leaders.filter(isShortLeader).sort(tiedFirst)[0];
