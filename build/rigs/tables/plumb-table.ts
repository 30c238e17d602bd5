import { CONDITIONS, type Condition, type RigBox } from "../../model/club.ts";
import { toBase, type UnitSystem } from "../../model/units.ts";
import { FLY_BALLS, type FlyClass } from "../fly-classes.ts";
import { shortestIndicatorLeader } from "../leaders/choose-leader.ts";
import { leaderLine, ringWeight_N } from "../leaders/leader-line.ts";
import { ballBody, segmentWeight_N } from "../physics/hanging-line.ts";
import { ballDiameter_m, type Water, waterAt } from "../physics/water-properties.ts";
import type { PlumbTable } from "../rig-schemas.ts";
import { flyDepth_m, LEAST_SET_M, longestFixedSet_m } from "../set-depth.ts";
import { anchorRope_m } from "./at-anchor.ts";
import { FOAM_MPS } from "./conditions.ts";
import { leastIndicatorDiameter_m, smallestIndicator } from "./indicator-buoyancy.ts";
import {
  type ChosenStep,
  chooseStep,
  type RowRig,
  stepBody,
  stepText,
  type WeighedStep,
  waitWith_s,
  weighedSteps,
} from "./shot-choice.ts";

/** Water the tables are computed in: 4 to 18 °C changes two cells of 24. */
export const TABLE_WATER_C = 10;

/** Rows of the plumb table. */
const ROWS = {
  imperial: { steps: 8, step_m: toBase(3, "ft", "length") },
  metric: { steps: 7, step_m: 1 },
} as const;

/** Depth between two rows of every depth table, m: 3 ft or 1 m. */
export const tableStep_m = (units: UnitSystem): number => ROWS[units].step_m;

/** The plumbed depths the table has rows for, m: 3 to 24 ft by 3, or 1 to 7 m by 1. */
export const plumbDepths_m = (units: UnitSystem): number[] =>
  Array.from({ length: ROWS[units].steps }, (_, i) => (i + 1) * ROWS[units].step_m);

const ROUND_S = 5;
const upTo5 = (seconds: number): number => Math.ceil(seconds / ROUND_S - 1e-9) * ROUND_S;

/**
 * Half the tight-line wait to all of it, each up to the next 5 s. Against a chain of twelve links a rig held tight is
 * down in 0.85 to 0.98 of the tight-line wait, one whose indicator runs in on slack line in 0.3 to 0.6.
 */
const waitRange = (tightWait_s: number, longestWait_s: number): WaitRange => ({
  from_s: upTo5(tightWait_s / 2),
  to_s: upTo5(tightWait_s),
  long: upTo5(tightWait_s) > longestWait_s,
});

export type PlumbDepth = PlumbTable["depths"][number];
type PlumbRow = PlumbDepth["rows"][number];
type PlumbCell = PlumbRow["cells"][number];
type WaitRange = NonNullable<PlumbRow["wait"]>;

const tenth_mm = (length_m: number): number => Math.round(length_m * 10_000) / 10;

function indicatorFor(
  { leader, set_m, fly }: RowRig,
  heaviest: WeighedStep,
  box: RigBox,
  water: Water,
): Pick<PlumbRow, "indicator" | "indicator_mm" | "leastIndicator_mm"> {
  const line_N = leaderLine(leader, set_m).reduce((sum, part) => sum + segmentWeight_N(part, water), 0);
  const load_N =
    ballBody(FLY_BALLS[fly], water).weight_N +
    stepBody(heaviest, water, 1).weight_N +
    ringWeight_N(water) +
    line_N;
  const lightest_kgm3 = Math.min(...box.indicators.map(({ density_kgm3 }) => density_kgm3));
  const least_m = leastIndicatorDiameter_m(load_N, box.dryShare, lightest_kgm3, water);
  const indicator = smallestIndicator(load_N, box.dryShare, box.indicators, water);
  return {
    indicator: indicator?.name ?? null,
    indicator_mm: indicator === undefined ? null : tenth_mm(indicator.diameter_m),
    leastIndicator_mm: least_m === undefined ? null : Math.ceil(least_m * 10_000) / 10,
  };
}

const cellOf = (condition: Condition, chosen: ChosenStep | null): PlumbCell =>
  chosen === null
    ? { condition, text: "too quick", shot: [], hold: false, tooQuick: true, lift: null }
    : {
        condition,
        text: stepText(chosen.step),
        shot: chosen.step.pieces.map(({ shot, count }) => ({
          name: shot.name,
          count,
          diameter_mm: tenth_mm(ballDiameter_m(shot.mass_g, shot.density_kgm3)),
        })),
        hold: chosen.hold,
        tooQuick: false,
        lift: { ...chosen.lifts },
      };

function plumbRow(row: RowRig, box: RigBox, water: Water): PlumbRow {
  const steps = weighedSteps(box.steps, box);
  const waits_s = steps.map((step) => waitWith_s(row, step, box, water));
  const chosen = CONDITIONS.map((condition) =>
    chooseStep(row, FOAM_MPS[condition], steps, waits_s, box, water),
  );
  const used = chosen.flatMap((one) => (one === null ? [] : [one.step]));
  const heaviest = used.toSorted((a, b) => b.mass_g - a.mass_g)[0];
  const calmWait_s = chosen[0] ? waits_s[steps.indexOf(chosen[0].step)] : undefined;
  return {
    fly: row.fly,
    cells: CONDITIONS.map((condition, i) => cellOf(condition, chosen[i] ?? null)),
    ...(heaviest === undefined
      ? { indicator: null, indicator_mm: null, leastIndicator_mm: null }
      : indicatorFor(row, heaviest, box, water)),
    wait: calmWait_s === undefined ? null : waitRange(calmWait_s, box.longestWait_s),
  };
}

/**
 * Set, board, shot by condition, indicator, wait and rope for one plumbed depth.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function plumbDepth(
  depth_m: number,
  flies: readonly FlyClass[],
  box: RigBox,
  units: UnitSystem,
): PlumbDepth {
  const set_m = flyDepth_m(depth_m, box);
  const fits = set_m >= LEAST_SET_M;
  const leader = fits ? shortestIndicatorLeader(set_m, box) : undefined;
  const water = waterAt(TABLE_WATER_C);
  return {
    depth_m,
    set_m: fits ? set_m : null,
    board: leader?.name ?? null,
    landing: set_m > longestFixedSet_m(box) ? "slip" : "fixed",
    rows:
      leader === undefined ? [] : flies.map((fly) => plumbRow({ leader, depth_m, set_m, fly }, box, water)),
    rope: CONDITIONS.map((condition) => ({
      condition,
      length_m: anchorRope_m(depth_m, condition, box, units),
    })),
  };
}
