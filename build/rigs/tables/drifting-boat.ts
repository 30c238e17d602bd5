import type { RigBox } from "../../model/club.ts";
import { toBase, type UnitSystem } from "../../model/units.ts";
import { FLY_BALLS, TABLE_FLY } from "../fly-classes.ts";
import { indicatorLeaders } from "../leaders/choose-leader.ts";
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
import { type Water, waterAt } from "../physics/water-properties.ts";
import type { DriftingTable } from "../rig-schemas.ts";
import { TABLE_WATER_C } from "./plumb-table.ts";
import { SURE_SHARE_OF_MASS, stepBody, stepText, weighedSteps } from "./shot-choice.ts";

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

/** Seconds for the boat to drift one rod length. */
const BOAT_DRIFTS_S: readonly number[] = [120, 90, 60, 45, 30, 20];

/** Sets are rounded down to whole feet or half metres. */
const roundDown_m = (units: UnitSystem): number => (units === "imperial" ? toBase(1, "ft", "length") : 0.5);

/** The table for a boat that drifts: the longest set each step of shot holds down, on the longest board of the box. */
export function driftingTable(box: RigBox, units: UnitSystem): DriftingTable | null {
  const longest = indicatorLeaders(box).sort((a, b) => b.serves.to_m - a.serves.to_m)[0];
  if (longest === undefined) return null;
  const { leader, serves } = longest;
  const water = waterAt(TABLE_WATER_C);
  const step_m = roundDown_m(units);
  const setOf = (shot: Body, rod_s: number): DriftingTable["rows"][number]["sets"][number] => {
    const longest_m = longestDrawnSet_m(leader, shot, box.rod_m / rod_s, box.lift_m, water);
    const whole = longest_m === null || longest_m >= serves.to_m;
    return { set_m: Math.floor((whole ? serves.to_m : longest_m) / step_m + 1e-9) * step_m, whole };
  };
  return {
    board: leader.name,
    columns: [...BOAT_DRIFTS_S],
    rows: weighedSteps(box.steps, box).map((step) => {
      const shot = stepBody(step, water, SURE_SHARE_OF_MASS);
      return { text: stepText(step), sets: BOAT_DRIFTS_S.map((rod_s) => setOf(shot, rod_s)) };
    }),
    note: "Longest set that keeps a beaded pupa down while the boat drifts past still water: time the boat past a marker. Deeper: anchor, or a sinking line.",
  };
}
