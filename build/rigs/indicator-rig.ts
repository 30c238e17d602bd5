import type { DepthBand, Method, RigBox } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { chooseLine } from "./choose-line.ts";
import {
  type ChosenLeader,
  chooseIndicatorLeader,
  indicatorLeaders,
  unservedSets,
} from "./leaders/choose-leader.ts";
import { cover, subtract } from "./leaders/interval-cover.ts";
import { leaderLength_m } from "./leaders/leader.ts";
import { knotsOf, leaderCandidates, unservedText } from "./leaders/leader-candidates.ts";
import type { Rig } from "./rig-plan.ts";
import { changeLeaderText, checkText, NO_ROOM, slipText, tooShallowText } from "./rig-words.ts";
import { leastIndicatorWater_m, longestFixedSet_m, setDepthOf } from "./set-depth.ts";

/** Which other leaders take over where the chosen one does not reach. */
function leaderChanges(sets: DepthBand, chosen: ChosenLeader, box: RigBox, units: UnitSystem): string[] {
  const others = indicatorLeaders(box).map((other) => ({
    ...other,
    alreadyTied: other.leader.tied > 0,
    knots: knotsOf(other.leader),
    material_m: leaderLength_m(other.leader),
  }));
  return subtract(sets, [chosen.serves]).flatMap((rest) =>
    cover([rest], others).chosen.map(({ leader, serves }) =>
      changeLeaderText(
        leader.name,
        { from_m: Math.max(rest.from_m, serves.from_m), to_m: Math.min(rest.to_m, serves.to_m) },
        units,
      ),
    ),
  );
}

const orNull = (words: readonly string[]): string | null => (words.length === 0 ? null : words.join(" "));

/** One way of fishing under an indicator over a band of water depths. */
export function indicatorRig(
  way: Method,
  phase: Phase,
  band: DepthBand,
  box: RigBox,
  units: UnitSystem,
): Rig {
  const sets = setDepthOf(band, box);
  const shallow = band.from_m < leastIndicatorWater_m(box) ? [tooShallowText(box, units)] : [];
  const { line, missing } = chooseLine(way, band.to_m, box.lines);
  const noLine = missing === null ? [] : [missing];
  const common = { way, line: line?.name ?? null, countdown: null };
  if (sets === undefined)
    return {
      ...common,
      setDepth: null,
      fly: null,
      leader: null,
      hold: null,
      check: NO_ROOM,
      uncovered: orNull([...shallow, ...noLine]),
    };
  const chosen = chooseIndicatorLeader(sets, box);
  const slips = sets.to_m > longestFixedSet_m(box);
  const unserved = unservedSets(sets, box);
  const candidates = unserved.length === 0 ? [] : leaderCandidates(box);
  return {
    ...common,
    setDepth: sets,
    fly: sets,
    leader: chosen?.leader.name ?? null,
    hold: slips ? "slip" : "fixed",
    check: [
      checkText(way, phase, box, units),
      ...(chosen === undefined ? [] : leaderChanges(sets, chosen, box, units)),
      ...(slips ? [slipText(box, units)] : []),
    ].join(" "),
    uncovered: orNull([
      ...shallow,
      ...unserved.map((piece) => unservedText(piece, candidates, units)),
      ...noLine,
    ]),
  };
}
