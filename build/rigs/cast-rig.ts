import type { DepthBand, LeaderStock, Method, RigBox } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { depthText, rounded, smallLengthText, toBase, type UnitSystem } from "../model/units.ts";
import { TABLE_FLY } from "./fly-classes.ts";
import { chooseRetrieveLeader, chooseShortLeader } from "./leaders/choose-leader.ts";
import { leaderLength_m, toMillimetre } from "./leaders/leader.ts";
import { checkText, SHORT_PIECE_M, shortPieceText } from "./method-words.ts";
import { holdingSpeed_mps, trolledLineOut_m } from "./physics/sinking-line.ts";
import { waterAt } from "./physics/water-properties.ts";
import type { Rig } from "./rig-schemas.ts";
import { flyDepth_m } from "./set-depth.ts";
import { chooseLine, type FlyLine, type LineCount, lineCount, noCountText } from "./tables/line-counts.ts";
import { NAKED_DRAW_MPS, nakedCount_s, nakedLine } from "./tables/naked-line.ts";
import { TABLE_WATER_C } from "./tables/plumb-table.ts";

/** A leader for a plain retrieve is about 9 ft or more. Common practice, from memory. */
const USUAL_LEADER_M = 2.7;
/** A naked line wants a leader of the depth and a third: then a pupa drawn slowly fishes at that depth. Derived. */
const NAKED_LEADER_SHARE = 4 / 3;
/** A cast with a long leader, 50 ft. Common practice, from memory. */
export const USUAL_CAST_M = 15.24;
/** A slow troll, about a knot. Common practice, from memory. */
const TROLL_MPS = 0.5;
/** A fly line and some backing. From memory. */
const MOST_OUT_M = 40;

/** What a method adds to its line, leader and check. */
interface Details {
  readonly leader: LeaderStock | undefined;
  /** How deep the fly fishes. */
  readonly fly: DepthBand;
  readonly countdown: Rig["countdown"];
  readonly draw: string | null;
  readonly words: readonly string[];
}

/** What all methods are worked out from. */
interface Cast {
  readonly band: DepthBand;
  readonly line: FlyLine | undefined;
  readonly box: RigBox;
  readonly units: UnitSystem;
}

const over = (band: DepthBand, depth: (depth_m: number) => number): DepthBand => ({
  from_m: toMillimetre(Math.max(0, depth(band.from_m))),
  to_m: toMillimetre(Math.max(0, depth(band.to_m))),
});

/** Floating line, long leader, no shot, no indicator, drawn slowly. */
function nakedDetails({ band, box, units }: Cast): Details {
  const deepest_m = flyDepth_m(band.to_m, box);
  const leader = chooseRetrieveLeader(Math.max(USUAL_LEADER_M, NAKED_LEADER_SHARE * deepest_m), box.leaders);
  const draw = `Pull ${smallLengthText(NAKED_DRAW_MPS * 5, units)} every 5 s.`;
  if (leader === undefined)
    return {
      leader,
      fly: over(band, (depth_m) => flyDepth_m(depth_m, box)),
      countdown: null,
      draw,
      words: [],
    };
  const length_m = leaderLength_m(leader);
  const water = waterAt(TABLE_WATER_C);
  const reach_m = nakedLine(leader, length_m, TABLE_FLY, NAKED_DRAW_MPS, water).depth_m;
  const count_s = nakedCount_s(leader, length_m, TABLE_FLY, water);
  return {
    leader,
    fly: over(band, (depth_m) => Math.min(flyDepth_m(depth_m, box), reach_m)),
    countdown:
      count_s === null ? null : { from_s: count_s, to_s: count_s, long: count_s > box.longestCount_s },
    draw,
    words:
      reach_m < deepest_m - 0.05
        ? [`Drawn so, a beaded pupa on ${leader.name} fishes ${depthText(reach_m, units)} down, no deeper.`]
        : [],
  };
}

/** Counts for the two ends of a band, and why there is none. */
function countsOver(
  depths: DepthBand,
  line: FlyLine,
  longestCount_s: number,
  units: UnitSystem,
): Pick<Details, "countdown" | "words"> {
  const [from, to] = [depths.from_m, depths.to_m].map((depth_m) =>
    lineCount(line, depth_m, longestCount_s),
  ) as [LineCount, LineCount];
  const missing = [from, to].flatMap((count) =>
    count.seconds === null ? (noCountText(line, count.reason, units) ?? []) : [],
  );
  return {
    countdown:
      from.seconds === null
        ? null
        : {
            from_s: from.seconds,
            to_s: to.seconds,
            long: from.long || (to.seconds !== null && to.long),
          },
    words: [...new Set(missing)],
  };
}

/** A line counted down, then drawn in. */
function countedDetails(method: Method, { band, line, box, units }: Cast): Details {
  const isBuoyant = method === "buoyant on sinking line";
  const leader = isBuoyant
    ? chooseShortLeader(box.leaders)
    : chooseRetrieveLeader(method === "sink tip" ? 0 : USUAL_LEADER_M, box.leaders);
  const depths = isBuoyant ? band : over(band, (depth_m) => flyDepth_m(depth_m, box));
  const floats_m = leader === undefined ? SHORT_PIECE_M : leaderLength_m(leader);
  const tip_m =
    line?.kind === "sink tip" ? (line.tip_m ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
  const hold_mps =
    line?.sinkRate_mps === undefined || isBuoyant || method === "sink tip"
      ? null
      : holdingSpeed_mps({ depth_m: depths.to_m, out_m: USUAL_CAST_M }, line.sinkRate_mps);
  return {
    leader,
    fly: isBuoyant
      ? over(band, (depth_m) => depth_m - floats_m)
      : over(band, (depth_m) => Math.min(flyDepth_m(depth_m, box), tip_m)),
    ...(line === undefined
      ? { countdown: null, words: [] }
      : countsOver(depths, line, box.longestCount_s, units)),
    draw: hold_mps === null ? null : `${holdText(hold_mps, units)} Slower it sinks on, faster it climbs.`,
  };
}

/** "Pulled at about 8 in a second it keeps its depth." */
const holdText = (hold_mps: number, units: UnitSystem): string =>
  `Pulled ${smallLengthText(hold_mps, units)} a second it keeps its depth.`;

/** A line let out behind a boat that is rowed slowly. */
function trolledDetails({ band, line, box, units }: Cast): Details {
  const fly = over(band, (depth_m) => flyDepth_m(depth_m, box));
  const rate_mps = line?.kind === "sink tip" ? undefined : line?.sinkRate_mps;
  const leader = chooseRetrieveLeader(USUAL_LEADER_M, box.leaders);
  const rod_s = rounded(box.rod_m / TROLL_MPS);
  const pace = `Row a rod length in ${rod_s} s`;
  if (rate_mps === undefined) return { leader, fly, countdown: null, draw: `${pace}.`, words: [] };
  const out_m = trolledLineOut_m((fly.from_m + fly.to_m) / 2, rate_mps, TROLL_MPS);
  const most = out_m > MOST_OUT_M;
  return {
    leader,
    fly,
    countdown: null,
    draw: most
      ? `${pace} or slower, all the line out: it still runs too high.`
      : `${pace}, about ${lineOutText(out_m, units)} of line out: that runs at ${depthText((fly.from_m + fly.to_m) / 2, units)}.`,
    words: [],
  };
}

/** Line let out, to 10 ft or 5 m. */
const lineOutText = (out_m: number, units: UnitSystem): string => {
  const step_m = units === "imperial" ? toBase(10, "ft", "length") : 5;
  return depthText(Math.max(1, Math.round(out_m / step_m)) * step_m, units);
};

function detailsOf(method: Method, cast: Cast): Details {
  if (method === "floating line") return nakedDetails(cast);
  return method === "trolled" ? trolledDetails(cast) : countedDetails(method, cast);
}

/** A method that casts or trolls the fly, over a band of water depths. */
export function castRig(method: Method, phase: Phase, band: DepthBand, box: RigBox, units: UnitSystem): Rig {
  const { line, missing } = chooseLine(
    method,
    over(band, (depth_m) => flyDepth_m(depth_m, box)),
    box,
  );
  const { leader, fly, countdown, draw, words } = detailsOf(method, { band, line, box, units });
  const uncovered = [...(missing === null ? [] : [missing]), ...words];
  return {
    way: method,
    setDepth: null,
    fly,
    leader: leader?.name ?? null,
    landing: null,
    line: line?.name ?? null,
    countdown,
    draw,
    check: [
      checkText(method, phase, box, units),
      ...(method === "buoyant on sinking line" && leader === undefined ? [shortPieceText(units)] : []),
    ].join(" "),
    uncovered: uncovered.length === 0 ? null : uncovered.join(" "),
  };
}
