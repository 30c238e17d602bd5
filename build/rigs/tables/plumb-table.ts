import type { RigBox } from "../../model/club.ts";
import { toBase, type UnitSystem } from "../../model/units.ts";
import { FLY_BALLS, type FlyClass } from "../fly-classes.ts";
import { leastIndicatorDiameter_m, smallestIndicator } from "../indicator.ts";
import { shortestIndicatorLeader } from "../leaders/choose-leader.ts";
import { leaderLine, ringWeight_N } from "../leaders/leader-line.ts";
import { ballBody, segmentWeight_N } from "../physics/hanging-line.ts";
import { type Water, waterAt } from "../physics/water-properties.ts";
import { flyDepth_m, LEAST_SET_M, longestFixedSet_m } from "../set-depth.ts";
import { anchorRope_m } from "./anchor-rope.ts";
import { CONDITIONS, type Condition, FOAM_MPS, type RigSettings } from "./conditions.ts";
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
const TABLE_WATER_C = 10;

/** Rows of the plumb table. */
const ROWS = {
  imperial: { steps: 8, step_m: toBase(3, "ft", "length") },
  metric: { steps: 7, step_m: 1 },
} as const;

/** The plumbed depths the table has rows for, m: 3 to 24 ft by 3, or 1 to 7 m by 1. */
export const plumbDepths_m = (units: UnitSystem): number[] =>
  Array.from({ length: ROWS[units].steps }, (_, i) => (i + 1) * ROWS[units].step_m);

const ROUND_S = 5;
const upTo5 = (seconds: number): number => Math.ceil(seconds / ROUND_S - 1e-9) * ROUND_S;

/** How long to wait before drawing: the short end after throwing slack, the long end on a tight line. */
export interface WaitRange {
  readonly from_s: number;
  readonly to_s: number;
  /** Longer than most anglers wait: the table says so. */
  readonly long: boolean;
}

/**
 * Half the tight-line wait to all of it, each up to the next 5 s. Against a chain of twelve links a rig held tight is
 * down in 0.85 to 0.98 of the tight-line wait, one whose indicator runs in on slack line in 0.3 to 0.6.
 */
export const waitRange = (tightWait_s: number, longestWait_s: number): WaitRange => ({
  from_s: upTo5(tightWait_s / 2),
  to_s: upTo5(tightWait_s),
  long: upTo5(tightWait_s) > longestWait_s,
});

/** What to pinch on in one condition. */
export interface PlumbCell {
  readonly condition: Condition;
  /** "none", "2 × BB", "too quick". */
  readonly text: string;
  readonly shot: readonly { readonly name: string; readonly count: number }[];
  /** The line must be held still, or the fly lifts. */
  readonly hold: boolean;
  readonly tooQuick: boolean;
  /** How much higher than straight below the indicator the fly hangs; null where it is too quick. */
  readonly lift: { readonly expected_m: number; readonly doubtful_m: number } | null;
}

/** One row for one class of fly. */
export interface PlumbRow {
  readonly fly: FlyClass;
  readonly cells: readonly PlumbCell[];
  /** The smallest indicator carried that serves every cell; null when none does. */
  readonly indicator: string | null;
  /** Diameter of the least one that would. */
  readonly leastIndicator_mm: number | null;
  /** For the step of the calm column. */
  readonly wait: WaitRange | null;
}

/** What to set and pinch on over one plumbed depth. */
export interface PlumbDepth {
  readonly depth_m: number;
  /** From fly to stop; null in water too shallow for an indicator. */
  readonly set_m: number | null;
  /** Name of the leader board; null when none in the box serves the set. */
  readonly board: string | null;
  readonly landing: "fixed" | "slip";
  readonly rows: readonly PlumbRow[];
  readonly rope: readonly { readonly condition: Condition; readonly length_m: number }[];
}

/** What a box has to have for the tables. */
export type TableBox = Omit<RigBox, "lift_m">;

function indicatorFor(
  { leader, set_m, fly }: RowRig,
  heaviest: WeighedStep,
  box: TableBox,
  water: Water,
): Pick<PlumbRow, "indicator" | "leastIndicator_mm"> {
  const line_N = leaderLine(leader, set_m).reduce((sum, part) => sum + segmentWeight_N(part, water), 0);
  const load_N =
    ballBody(FLY_BALLS[fly], water).weight_N +
    stepBody(heaviest, water, 1).weight_N +
    ringWeight_N(water) +
    line_N;
  const lightest_kgm3 = Math.min(...box.indicators.map(({ density_kgm3 }) => density_kgm3));
  const least_m = leastIndicatorDiameter_m(load_N, box.dryShare, lightest_kgm3, water);
  return {
    indicator: smallestIndicator(load_N, box.dryShare, box.indicators, water)?.name ?? null,
    leastIndicator_mm: least_m === undefined ? null : Math.ceil(least_m * 10_000) / 10,
  };
}

const cellOf = (condition: Condition, chosen: ChosenStep | null): PlumbCell =>
  chosen === null
    ? { condition, text: "too quick", shot: [], hold: false, tooQuick: true, lift: null }
    : {
        condition,
        text: stepText(chosen.step),
        shot: chosen.step.pieces.map(({ shot, count }) => ({ name: shot.name, count })),
        hold: chosen.hold,
        tooQuick: false,
        lift: chosen.lifts,
      };

function plumbRow(row: RowRig, box: TableBox, settings: RigSettings, water: Water): PlumbRow {
  const steps = weighedSteps(settings.steps, box);
  const waits_s = steps.map((step) => waitWith_s(row, step, settings, water));
  const chosen = CONDITIONS.map((condition) =>
    chooseStep(row, FOAM_MPS[condition], steps, waits_s, settings, water),
  );
  const used = chosen.flatMap((one) => (one === null ? [] : [one.step]));
  const heaviest = used.toSorted((a, b) => b.mass_g - a.mass_g)[0];
  const calmWait_s = chosen[0] ? waits_s[steps.indexOf(chosen[0].step)] : undefined;
  return {
    fly: row.fly,
    cells: CONDITIONS.map((condition, i) => cellOf(condition, chosen[i] ?? null)),
    ...(heaviest === undefined
      ? { indicator: null, leastIndicator_mm: null }
      : indicatorFor(row, heaviest, box, water)),
    wait: calmWait_s === undefined ? null : waitRange(calmWait_s, settings.longestWait_s),
  };
}

/**
 * Set, board, shot by condition, indicator, wait and rope for one plumbed depth.
 * @param box free of the errors that `rigDiagnostics` finds
 */
export function plumbDepth(
  depth_m: number,
  flies: readonly FlyClass[],
  box: TableBox,
  settings: RigSettings,
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
      leader === undefined
        ? []
        : flies.map((fly) => plumbRow({ leader, depth_m, set_m, fly }, box, settings, water)),
    rope: CONDITIONS.map((condition) => ({
      condition,
      length_m: anchorRope_m(depth_m, condition, settings, units),
    })),
  };
}
