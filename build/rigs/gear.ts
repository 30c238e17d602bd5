import type { RigBox } from "../model/club.ts";
import type { DayState } from "../model/phase.ts";
import type { UnitSystem } from "../model/units.ts";
import { atAnchor } from "./anchor.ts";
import type { RiggedLake } from "./bands.ts";
import { bandsToFish, leaderBoards } from "./boards.ts";
import { tableDepths_m, tableStep_m } from "./countdown.ts";
import type { UsualRig } from "./rig-plan.ts";
import type { AtAnchor, LeaderBoards, ShotTable, SinkTable, SwingTable } from "./rig-tables.ts";
import { usualRigs } from "./rigs.ts";
import { shotTable } from "./shot-table.ts";
import { sinkTable } from "./sink.ts";
import { swingTable } from "./swing.ts";

/** Water of each state where nobody has measured it, °C. Common practice, from memory. */
export const USUAL_WATER_C: Readonly<Record<DayState, number>> = {
  iced: 4,
  iceOff: 5,
  turnover: 8,
  postTurnover: 11,
  laterWeeks: 16,
};

/** Round depths that cover the bands fished under an indicator, no deeper than the lake, m. */
function shotDepths_m(lake: RiggedLake, units: UnitSystem): number[] {
  const step_m = tableStep_m(units);
  const bands = bandsToFish(lake).map(({ band }) => band);
  const from = Math.max(1, Math.floor(Math.min(...bands.map(({ from_m }) => from_m)) / step_m));
  const to = Math.ceil(Math.max(...bands.map(({ to_m }) => to_m)) / step_m - 1e-9);
  return Array.from({ length: Math.max(1, to - from + 1) }, (_, i) => (from + i) * step_m);
}

/** One rod's day on one lake: the leaders to have on boards, and the shot for its depths. */
export interface LakeGear {
  readonly boards: LeaderBoards;
  readonly shot: ShotTable;
}

/**
 * What to have tied, and how much shot to pinch on, for one lake.
 * @param box free of the errors that `rigDiagnostics` finds
 * @param water_C 0 to 40 °C
 * @throws RangeError for other water
 */
export const lakeGear = (lake: RiggedLake, box: RigBox, water_C: number, units: UnitSystem): LakeGear => ({
  boards: leaderBoards(bandsToFish(lake), box, { days: 1, rods: 1 }, units),
  shot: shotTable(box, water_C, shotDepths_m(lake, units), units),
});

/** The club-wide rigs and tables, in the water of the best weeks. */
export function gearTables(
  box: RigBox,
  units: UnitSystem,
): { ways: UsualRig[]; shot: ShotTable; sinking: SinkTable; swing: SwingTable; anchor: AtAnchor } {
  const depths_m = tableDepths_m(units);
  const water_C = USUAL_WATER_C.postTurnover;
  const swing = swingTable(box);
  return {
    ways: usualRigs(box, units),
    shot: shotTable(box, water_C, depths_m, units),
    sinking: sinkTable(box, water_C, depths_m),
    swing,
    anchor: atAnchor(swing),
  };
}
