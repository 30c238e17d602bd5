import type { RigBox } from "../../model/club.ts";
import { FLY_BALLS, FLY_CLASSES, type FlyClass } from "../fly-classes.ts";
import { isShortLeader } from "../leaders/choose-leader.ts";
import { type LeaderMake, leaderLength_m, toMillimetre } from "../leaders/leader.ts";
import { leaderLine } from "../leaders/leader-line.ts";
import { tippetDiameter_mm } from "../leaders/tippet.ts";
import { ballBody, evenStream, hang, surfaceAngle_deg } from "../physics/hanging-line.ts";
import { slackFall_s } from "../physics/swing-down.ts";
import { type Water, waterAt } from "../physics/water-properties.ts";
import type { NakedTable } from "../rig-schemas.ts";
import { TABLE_WATER_C } from "./plumb-table.ts";

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
/** A count beyond this is not given. */
const LAST_COUNT_S = 90;

/** Seconds to let the fly sink before the first pull: twice its slack fall, up to the next 5 s; null over 90 s. */
export function nakedCount_s(
  leader: LeaderMake,
  length_m: number,
  fly: FlyClass,
  water: Water,
): number | null {
  const tippet_m = tippetDiameter_mm(leader.tippet.size) / 1000;
  const fall_s = slackFall_s(ballBody(FLY_BALLS[fly], water), tippet_m, length_m, water);
  const count_s = Math.ceil((2 * fall_s) / ROUND_S) * ROUND_S;
  return count_s > LAST_COUNT_S ? null : count_s;
}

/** The boards of the box as naked lines, the shortest first, at a slow draw. */
export function nakedTable({ leaders }: Pick<RigBox, "leaders">): NakedTable {
  const water = waterAt(TABLE_WATER_C);
  return {
    draw_mps: NAKED_DRAW_MPS,
    rows: leaders
      .filter((leader) => !isShortLeader(leader))
      .toSorted((a, b) => leaderLength_m(a) - leaderLength_m(b))
      .map((leader) => {
        const length_m = leaderLength_m(leader);
        return {
          leader: leader.name,
          length_m: toMillimetre(length_m),
          flies: FLY_CLASSES.map((fly) => {
            const { depth_m, angle_deg } = nakedLine(leader, length_m, fly, NAKED_DRAW_MPS, water);
            return {
              fly,
              depth_m: toMillimetre(depth_m),
              angle_deg: Math.round(angle_deg),
              count_s: nakedCount_s(leader, length_m, fly, water),
            };
          }),
        };
      }),
    note: "Right when the leader enters the water at about 40°: flatter, draw slower; steeper, faster. A leader of the depth and a third fishes a beaded pupa at that depth.",
  };
}
