import { type DepthBand, METHODS, type Method, type RigBox } from "../model/club.ts";
import { PHASES, type Phase } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { castRig } from "./cast-rig.ts";
import { indicatorRig } from "./indicator-rig.ts";
import {
  bandOf,
  isUnderIndicator,
  METHODS_OF_PHASE,
  phasesOf,
  type RiggedLake,
  usualBandOf,
} from "./methods.ts";
import type { PhaseRigs, Rig, UsualRig } from "./rig-schemas.ts";

const rigFor = (method: Method, phase: Phase, band: DepthBand, box: RigBox, units: UnitSystem): Rig =>
  (isUnderIndicator(method) ? indicatorRig : castRig)(method, phase, band, box, units);

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
      rigs: METHODS_OF_PHASE[phase].map((method) => rigFor(method, phase, band, box, units)),
    };
  });
}

/** The phases, the one most worth fishing first. */
const BEST_FIRST: readonly Phase[] = [
  "post-turnover",
  ...PHASES.filter((phase) => phase !== "post-turnover"),
];

/**
 * Every method a pattern may be fished with, each once, over the usual depths of the best phase for it.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function usualRigs(box: RigBox, units: UnitSystem): UsualRig[] {
  return METHODS.flatMap((method) => {
    const phase = BEST_FIRST.find((one) => METHODS_OF_PHASE[one].includes(method));
    if (phase === undefined) return [];
    const band = usualBandOf(phase);
    return [{ phase, band, rig: rigFor(method, phase, band, box, units) }];
  });
}
