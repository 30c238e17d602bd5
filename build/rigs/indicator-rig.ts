import type { DepthBand, Method, RigBox } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { depthText, type UnitSystem } from "../model/units.ts";
import { shortestIndicatorLeader, unservedSets } from "./leaders/choose-leader.ts";
import { servedRange } from "./leaders/leader.ts";
import { leaderCandidates, unservedText } from "./leaders/leader-candidates.ts";
import { checkText, NO_ROOM, slipText, tooShallowText } from "./method-words.ts";
import type { Rig } from "./rig-schemas.ts";
import { leastIndicatorWater_m, longestFixedSet_m, setDepthOf } from "./set-depth.ts";
import { chooseLine } from "./tables/line-counts.ts";

/** A board, and the deepest set in a band for which it is the shortest that serves. */
interface BoardReach {
  readonly name: string;
  readonly to_m: number;
}

/** The boards for a band of sets from shallow to deep, each the shortest that serves: the plumb table's rule. */
function boardsAlong(sets: DepthBand, box: RigBox): BoardReach[] {
  const ends_m = box.leaders.flatMap((leader) => {
    const serves = servedRange(leader, box.margin_m);
    return serves === undefined ? [] : [serves.from_m, serves.to_m];
  });
  const inside_m = ends_m.filter((end_m) => end_m > sets.from_m && end_m < sets.to_m);
  const stops_m = [sets.from_m, ...inside_m.sort((a, b) => a - b), sets.to_m];
  const reaches: BoardReach[] = [];
  for (const [i, to_m] of stops_m.entries()) {
    const from_m = stops_m[i - 1] ?? to_m;
    const name = shortestIndicatorLeader((from_m + to_m) / 2, box)?.name;
    if (name === undefined) continue;
    if (reaches.at(-1)?.name === name) reaches.pop();
    reaches.push({ name, to_m });
  }
  return reaches;
}

/** "Edge to a set of 8.5 ft, Nine-foot to 11.5 ft, then Usual long." */
function boardsText(reaches: readonly BoardReach[], units: UnitSystem): string[] {
  const last = reaches.at(-1);
  if (last === undefined || reaches.length < 2) return [];
  const before = reaches
    .slice(0, -1)
    .map(({ name, to_m }) => `${name} to a set of ${depthText(to_m, units)}`);
  return [`${before.join(", ")}, then ${last.name}.`];
}

const orNull = (words: readonly string[]): string | null => (words.length === 0 ? null : words.join(" "));

/** One method under an indicator over a band of water depths; its leader is that of the deep end. */
export function indicatorRig(
  method: Method,
  phase: Phase,
  band: DepthBand,
  box: RigBox,
  units: UnitSystem,
): Rig {
  const sets = setDepthOf(band, box);
  const shallow = band.from_m < leastIndicatorWater_m(box) ? [tooShallowText(box, units)] : [];
  const { line, missing } = chooseLine(method, band, box);
  const noLine = missing === null ? [] : [missing];
  const common = { way: method, line: line?.name ?? null, countdown: null, draw: null };
  if (sets === undefined)
    return {
      ...common,
      setDepth: null,
      fly: null,
      leader: null,
      landing: null,
      check: NO_ROOM,
      uncovered: orNull([...shallow, ...noLine]),
    };
  const reaches = boardsAlong(sets, box);
  const slips = sets.to_m > longestFixedSet_m(box);
  const unserved = unservedSets(sets, box);
  const candidates = unserved.length === 0 ? [] : leaderCandidates(box);
  return {
    ...common,
    setDepth: sets,
    fly: sets,
    leader: reaches.at(-1)?.name ?? null,
    landing: slips ? "slip" : "fixed",
    check: [
      checkText(method, phase, box, units),
      ...boardsText(reaches, units),
      ...(slips ? [slipText(box, units)] : []),
    ].join(" "),
    uncovered: orNull([
      ...shallow,
      ...unserved.map((piece) => unservedText(piece, candidates, units)),
      ...noLine,
    ]),
  };
}
