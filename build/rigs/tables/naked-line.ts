import { FLY_BALLS, type FlyClass } from "../fly-classes.ts";
import type { LeaderMake } from "../leaders/leader.ts";
import { leaderLine } from "../leaders/leader-line.ts";
import { tippetDiameter_mm } from "../leaders/tippet.ts";
import { ballBody, evenStream, hang, surfaceAngle_deg } from "../physics/hanging-line.ts";
import { slackFall_s } from "../physics/swing-down.ts";
import type { Water } from "../physics/water-properties.ts";

/** A long leader under a floating line, no shot and no indicator, drawn slowly. */
export interface NakedLine {
  readonly depth_m: number;
  /** Between the leader and the water. */
  readonly angle_deg: number;
}

/** A 4 in pull every 5 s. Common practice, no source. */
export const NAKED_DRAW_MPS = 0.02;

/** How deep a fly fishes on `length_m` of a leader drawn at a speed. */
export function nakedLine(
  leader: LeaderMake,
  length_m: number,
  fly: FlyClass,
  draw_mps: number,
  water: Water,
): NakedLine {
  const top = hang(
    ballBody(FLY_BALLS[fly], water),
    leaderLine(leader, length_m),
    evenStream(draw_mps, water),
  );
  return { depth_m: top.z_m, angle_deg: surfaceAngle_deg(top) };
}

const ROUND_S = 5;

/** Seconds to let the fly sink before the first pull: twice its slack fall, up to the next 5 s. */
export const nakedCount_s = (leader: LeaderMake, length_m: number, fly: FlyClass, water: Water): number =>
  Math.ceil(
    (2 *
      slackFall_s(
        ballBody(FLY_BALLS[fly], water),
        tippetDiameter_mm(leader.tippet.size) / 1000,
        length_m,
        water,
      )) /
      ROUND_S,
  ) * ROUND_S;
