import type { Lake, RigBox } from "../model/club.ts";
import type { UnitSystem } from "../model/units.ts";
import { bandOf, phasesOf } from "./bands.ts";
import { lineOf } from "./countdown.ts";
import { indicatorRig } from "./indicator-rig.ts";
import { leaderOf } from "./leader.ts";
import { retrieveRig } from "./retrieve-rig.ts";
import type { Leader, Line, PhaseRigs, Tippet } from "./rig-plan.ts";
import { TIPPET_SIZES, tippetDiameter_mm, tippetSizeText } from "./tippet.ts";
import { isUnderIndicator, WAYS_OF_PHASE } from "./ways.ts";

/**
 * What to fish on a lake, phase by phase: two phases for a lake that does not turn over, else three.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function rigsForLake(lake: Lake, box: RigBox, units: UnitSystem): PhaseRigs[] {
  return phasesOf(lake).map((phase) => {
    const band = bandOf(lake, phase);
    return {
      phase,
      band,
      rigs: WAYS_OF_PHASE[phase].map((way) =>
        (isUnderIndicator(way) ? indicatorRig : retrieveRig)(way, phase, band, box, units),
      ),
    };
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
