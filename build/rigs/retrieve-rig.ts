import type { DepthBand, LeaderStock, Method, RigBox } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { chooseLine, LONGEST_COUNT_S } from "./choose-line.ts";
import { countdown_s } from "./countdown.ts";
import { chooseRetrieveLeader, chooseShortLeader } from "./leaders/choose-leader.ts";
import { leaderLength_m } from "./leaders/leader.ts";
import type { Rig } from "./rig-plan.ts";
import { checkText, noRateText, SHORT_PIECE_M, shortPieceText, tooSlowText } from "./rig-words.ts";
import { toMillimetre } from "./round.ts";
import { flyDepth_m } from "./set-depth.ts";

/** A leader for a plain retrieve is about 9 ft or more. Common practice, from memory. */
const USUAL_LEADER_M = 2.7;

/** Off a floating line the leader must also reach down; behind a sinking tip it is kept short, under a sinking line shorter still. */
function leaderFor(
  way: Method,
  deepestFly_m: number,
  leaders: readonly LeaderStock[],
): LeaderStock | undefined {
  if (way === "buoyant on sinking line") return chooseShortLeader(leaders);
  if (way === "sink tip") return chooseRetrieveLeader(0, leaders);
  return chooseRetrieveLeader(
    way === "floating line" ? Math.max(USUAL_LEADER_M, deepestFly_m) : USUAL_LEADER_M,
    leaders,
  );
}

/** The depths to count a line down to, m; none for a line that floats or is trolled. */
function countTo(way: Method, band: DepthBand, box: RigBox): DepthBand | null {
  if (way === "floating line" || way === "trolled") return null;
  if (way === "buoyant on sinking line") return band;
  return { from_m: flyDepth_m(band.from_m, box), to_m: flyDepth_m(band.to_m, box) };
}

/** How deep the fly fishes over the two ends of the band, m; a leader off a floating line reaches no deeper than it is long. */
function flyDepths(way: Method, band: DepthBand, leader: LeaderStock | undefined, box: RigBox): DepthBand {
  const length_m = leader === undefined ? undefined : leaderLength_m(leader);
  const over = (depth_m: number): number => {
    if (way === "buoyant on sinking line")
      return toMillimetre(Math.max(0, depth_m - (length_m ?? SHORT_PIECE_M)));
    const fly_m = flyDepth_m(depth_m, box);
    return way === "floating line" ? Math.min(fly_m, length_m ?? fly_m) : fly_m;
  };
  return { from_m: over(band.from_m), to_m: over(band.to_m) };
}

/** One way of fishing a cast, counted down and drawn in, or trolled, over a band of water depths. */
export function retrieveRig(way: Method, phase: Phase, band: DepthBand, box: RigBox, units: UnitSystem): Rig {
  const deepestFly_m = flyDepth_m(band.to_m, box);
  const { line, missing } = chooseLine(way, deepestFly_m, box.lines);
  const leader = leaderFor(way, deepestFly_m, box.leaders);
  const depths = countTo(way, band, box);
  const rate_mps = line?.sinkRate_mps;
  const countdown =
    depths === null || rate_mps === undefined
      ? null
      : { from_s: countdown_s(depths.from_m, rate_mps), to_s: countdown_s(depths.to_m, rate_mps) };
  const words = [
    ...(missing === null ? [] : [missing]),
    ...(line !== undefined && depths !== null && countdown === null ? [noRateText(line.name)] : []),
    ...(line !== undefined && countdown !== null && countdown.to_s > LONGEST_COUNT_S
      ? [tooSlowText(line.name, countdown.to_s)]
      : []),
  ];
  return {
    way,
    setDepth: null,
    fly: flyDepths(way, band, leader, box),
    leader: leader?.name ?? null,
    hold: null,
    line: line?.name ?? null,
    countdown,
    check: [
      checkText(way, phase, box, units),
      ...(way === "buoyant on sinking line" && leader === undefined ? [shortPieceText(units)] : []),
    ].join(" "),
    uncovered: words.length === 0 ? null : words.join(" "),
  };
}
