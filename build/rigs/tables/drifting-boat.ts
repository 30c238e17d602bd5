import { FLY_BALLS, TABLE_FLY } from "../fly-classes.ts";
import type { LeaderMake } from "../leaders/leader.ts";
import { leaderLength_m } from "../leaders/leader.ts";
import { leaderLine, shotAboveFly_m } from "../leaders/leader-line.ts";
import {
  type Body,
  ballBody,
  cutLine,
  evenStream,
  freeEnd,
  lift_m,
  marchUp,
  stretchOf,
} from "../physics/hanging-line.ts";
import { findRoot } from "../physics/numeric.ts";
import type { Water } from "../physics/water-properties.ts";

const PIECE_M = 0.3;
const PLACE_M = 1e-5;

/**
 * The longest set on a leader at which shot keeps the fly within a lift while the rig is drawn through still water, m;
 * null when the whole leader does.
 */
export function longestDrawnSet_m(
  leader: LeaderMake,
  shot: Body,
  drawn_mps: number,
  lift: number,
  water: Water,
  fly: Body = ballBody(FLY_BALLS[TABLE_FLY], water),
): number | null {
  const stream = evenStream(drawn_mps, water);
  const whole_m = leaderLength_m(leader);
  const marks = Array.from({ length: Math.floor(whole_m / PIECE_M) }, (_, i) => ({
    at_m: (i + 1) * PIECE_M,
  }));
  const pieces = cutLine(leaderLine(leader, whole_m), [
    { at_m: shotAboveFly_m(leader), body: shot },
    ...marks,
  ]);
  let point = freeEnd(fly, stream);
  for (const piece of pieces) {
    const next = marchUp(point, piece, stream);
    if (lift_m(next) > lift) {
      const from = point;
      const missAt = (at_m: number): number =>
        at_m === 0 ? lift_m(from) - lift : lift_m(marchUp(from, stretchOf(piece, 0, at_m), stream)) - lift;
      return from.length_m + findRoot(missAt, 0, piece.length_m, PLACE_M);
    }
    point = next;
  }
  return null;
}
