import { type DepthBand, METHODS, type Method, type RigBox } from "../model/club.ts";
import { PHASES, type Phase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { bandOf, phasesOf, type RiggedLake, usualBandOf } from "./bands.ts";
import { lineOf } from "./countdown.ts";
import { indicatorRig } from "./indicator-rig.ts";
import { leaderOf } from "./leaders/leader.ts";
import { TIPPET_SIZES, tippetDiameter_mm, tippetSizeText } from "./leaders/tippet.ts";
import { retrieveRig } from "./retrieve-rig.ts";
import type { Leader, Line, PhaseRigs, Rig, Tippet, UsualRig } from "./rig-plan.ts";
import { isUnderIndicator, WAYS_OF_PHASE } from "./ways.ts";

const rigFor = (way: Method, phase: Phase, band: DepthBand, box: RigBox, units: UnitSystem): Rig =>
  (isUnderIndicator(way) ? indicatorRig : retrieveRig)(way, phase, band, box, units);

/**
 * What to fish on a lake, phase by phase: two phases for a lake that does not turn over, else three.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function rigsForLake(lake: RiggedLake, box: RigBox, units: UnitSystem): PhaseRigs[] {
  return phasesOf(lake).map((phase) => {
    const band = bandOf(lake, phase);
    return {
      phase,
      band,
      rigs: WAYS_OF_PHASE[phase].map((way) => rigFor(way, phase, band, box, units)),
    };
  });
}

/** The phases, the one most worth fishing first. */
const BEST_FIRST: readonly Phase[] = [
  "post-turnover",
  ...PHASES.filter((phase) => phase !== "post-turnover"),
];

/**
 * Every way a pattern may be fished, each once, over the usual depths of the best phase for it.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function usualRigs(box: RigBox, units: UnitSystem): UsualRig[] {
  return METHODS.flatMap((way) => {
    const phase = BEST_FIRST.find((one) => WAYS_OF_PHASE[one].includes(way));
    if (phase === undefined) return [];
    const band = usualBandOf(phase);
    return [{ phase, band, rig: rigFor(way, phase, band, box, units) }];
  });
}

/**
 * The tables of the rig page: tippet sizes, the club's leaders, its lines.
 * @param box free of the errors that `rigDiagnostics` finds
 * @throws RangeError for a leader with a size that is none
 */
export function rigTables(
  box: RigBox,
  units: UnitSystem,
): { tippet: Tippet[]; leaders: Leader[]; lines: Line[] } {
  return {
    tippet: TIPPET_SIZES.map((size) => ({
      size: tippetSizeText(size),
      diameter_mm: tippetDiameter_mm(size),
    })),
    leaders: box.leaders.map((leader) => leaderOf(leader, box.margin_m, units)),
    lines: box.lines.map((line) => lineOf(line, units)),
  };
}
