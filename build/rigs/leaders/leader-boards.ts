import type { DepthBand, RigBox } from "../../model/club.ts";
import { phaseName } from "../../model/phase.ts";
import { depthNumber, depthRange, depthUnit, type UnitSystem } from "../../model/units.ts";
import { tooShallowText } from "../method-words.ts";
import { bandOf, isUnderIndicator, METHODS_OF_PHASE, phasesOf, type RiggedLake } from "../methods.ts";
import type { LeaderBoards } from "../rig-schemas.ts";
import { leastIndicatorWater_m, setDepthOf } from "../set-depth.ts";
import { cover, overlap_m, SAME_M } from "./interval-cover.ts";
import { leaderOf, sectionsOf } from "./leader.ts";
import { type LeaderCandidate, leaderCandidates, unservedText } from "./leader-candidates.ts";

/** A band of water depths to be fished under an indicator. */
export interface BandToFish {
  /** For readers: "Ember Lake, best weeks". */
  readonly name: string;
  readonly band: DepthBand;
}

/** How long and by how many the boards will be used. */
export interface BoardUse {
  readonly days: number;
  readonly rods: number;
}

/** The bands of a lake that are fished under an indicator, phase by phase. */
export const bandsToFish = (lake: RiggedLake): BandToFish[] =>
  phasesOf(lake)
    .filter((phase) => METHODS_OF_PHASE[phase].some(isUnderIndicator))
    .map((phase) => ({
      name: `${lake.name}, ${phaseName(phase).toLowerCase()}`,
      band: bandOf(lake, phase),
    }));

/** A rod loses a long leader about every sixth day. Common practice, from memory. */
const ROD_DAYS_A_SPARE = 6;
/** Of the boards that serve less than the first, one is ready for so many rods. Common practice, no source. */
const RODS_AN_OTHER_BOARD = 2;

const times = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** How many of a board to have, and how that comes about. */
function needFor(isFirst: boolean, { days, rods }: BoardUse): { needed: number; how: string } {
  if (!isFirst) {
    const needed = Math.ceil(rods / RODS_AN_OTHER_BOARD);
    return { needed, how: `${needed}: one for every ${RODS_AN_OTHER_BOARD} of ${times(rods, "rod")}.` };
  }
  const spares = Math.ceil((rods * Math.max(1, days)) / ROD_DAYS_A_SPARE);
  return {
    needed: rods + spares,
    how: `${rods + spares}: one on each of ${times(rods, "rod")}, and a spare for every ${ROD_DAYS_A_SPARE} of ${times(rods * Math.max(1, days), "rod-day")}.`,
  };
}

/** The club's name for its own recipe, else the lengths: "9 + 6 + 3 ft". */
const nameFor = ({ stock, make }: LeaderCandidate, units: UnitSystem): string =>
  stock?.name ??
  `${sectionsOf(make)
    .map(({ length_m }) => depthNumber(length_m, units))
    .join(" + ")} ${depthUnit(units)}`;

interface BandSets {
  readonly name: string;
  readonly sets: DepthBand;
}

function whyText({ serves }: LeaderCandidate, bands: readonly BandSets[], units: UnitSystem): string {
  const parts = bands
    .filter(({ sets }) => overlap_m(sets, serves) >= -SAME_M)
    .map(({ name, sets }) => {
      const part = { from_m: Math.max(sets.from_m, serves.from_m), to_m: Math.min(sets.to_m, serves.to_m) };
      return `${name} (sets ${depthRange(part.from_m, part.to_m, units)})`;
    });
  return `For ${parts.join("; ")}.`;
}

/**
 * The leader boards to tie for one lake or a trip's lakes: the fewest leaders that serve every set depth of every
 * band, those already tied first.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function leaderBoards(
  bands: readonly BandToFish[],
  box: RigBox,
  use: BoardUse,
  units: UnitSystem,
): LeaderBoards {
  const sets = bands.flatMap(({ name, band }): BandSets[] => {
    const own = setDepthOf(band, box);
    return own === undefined ? [] : [{ name, sets: own }];
  });
  const candidates = leaderCandidates(box);
  const { chosen, uncovered } = cover(
    sets.map(({ sets: own }) => own),
    candidates.map((candidate) => ({ ...candidate, alreadyTied: (candidate.stock?.tied ?? 0) > 0 })),
  );
  const reach = ({ serves }: LeaderCandidate): number =>
    sets.reduce((sum, { sets: own }) => sum + Math.max(0, overlap_m(own, serves)), 0);
  const first = chosen.toSorted((a, b) => reach(b) - reach(a))[0];
  return {
    boards: chosen.map((candidate) => {
      const tied = candidate.stock?.tied ?? 0;
      const { needed, how } = needFor(candidate === first, use);
      return {
        leader: leaderOf({ ...candidate.make, name: nameFor(candidate, units), tied }, box.margin_m, units),
        why: whyText(candidate, sets, units),
        needed,
        how,
        tie: Math.max(0, needed - tied),
      };
    }),
    uncovered: [
      ...bands
        .filter(({ band }) => band.from_m < leastIndicatorWater_m(box))
        .map(({ name }) => `${name}: ${tooShallowText(box, units)}`),
      ...uncovered.map((piece) => unservedText(piece, candidates, units)),
    ],
  };
}
