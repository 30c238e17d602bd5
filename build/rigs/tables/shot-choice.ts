import type { RigBox, ShotStep } from "../../model/club.ts";
import { FLY_BALLS, type FlyClass } from "../fly-classes.ts";
import type { LeaderMake } from "../leaders/leader.ts";
import { hungRig } from "../leaders/leader-line.ts";
import { type Current, currentOver, PROFILES } from "../physics/current-profile.ts";
import { type Body, ballBody, lift_m, together } from "../physics/hanging-line.ts";
import { type HungRig, heldDrift, mendedDrift, windDrive } from "../physics/indicator-drift.ts";
import { tightWait_s } from "../physics/swing-down.ts";
import type { Water } from "../physics/water-properties.ts";

type Shot = RigBox["shot"][number];

/** A step with the club's own shot. */
export interface WeighedStep {
  readonly pieces: readonly { readonly shot: Shot; readonly count: number }[];
  /** Nominal mass of all pieces. */
  readonly mass_g: number;
}

/** The steps the club can pinch on, lightest first: those whose shot it carries, within the cast limit. */
export function weighedSteps(
  steps: readonly ShotStep[],
  { shot: carried, castLimit_g }: Pick<RigBox, "shot" | "castLimit_g">,
): WeighedStep[] {
  return steps
    .flatMap((step): WeighedStep[] => {
      const pieces = step.flatMap(({ shot: name, count }) => {
        const shot = carried.find((one) => one.name === name);
        return shot === undefined || shot.carried < count ? [] : [{ shot, count }];
      });
      const mass_g = pieces.reduce((sum, { shot, count }) => sum + count * shot.mass_g, 0);
      return pieces.length < step.length || mass_g > castLimit_g ? [] : [{ pieces, mass_g }];
    })
    .sort((a, b) => a.mass_g - b.mass_g);
}

/** Makers differ by a tenth, so the tables count on this share of the nominal mass. Common practice, no source. */
export const SURE_SHARE_OF_MASS = 0.9;

/** A step on the line, each piece a ball by itself. */
export function stepBody({ pieces }: WeighedStep, water: Water, shareOfMass: number): Body {
  return together(
    pieces.flatMap(({ shot: { mass_g, density_kgm3 }, count }) =>
      Array.from({ length: count }, () => ballBody({ mass_g: shareOfMass * mass_g, density_kgm3 }, water)),
    ),
  );
}

/** "none", "BB", "2 × BB". */
export const stepText = ({ pieces }: WeighedStep): string =>
  pieces.length === 0
    ? "none"
    : pieces.map(({ shot, count }) => (count === 1 ? shot.name : `${count} × ${shot.name}`)).join(" + ");

/** The rig every cell of a row hangs: a leader set over a plumbed depth, and a fly. */
export interface RowRig {
  readonly leader: LeaderMake;
  /** Plumbed depth of the water. */
  readonly depth_m: number;
  readonly set_m: number;
  readonly fly: FlyClass;
}

/** Every row counts on an indicator of 3/4 in: for smaller ones that errs toward more shot. */
export const TABLE_INDICATOR_M = 0.01905;

/** Lift of the fly in the current that is expected, and in the doubtful one, m. */
interface Lifts {
  readonly expected_m: number;
  readonly doubtful_m: number;
}

export const rigWith = ({ leader, set_m, fly }: RowRig, step: WeighedStep, water: Water): HungRig =>
  hungRig(leader, set_m, ballBody(FLY_BALLS[fly], water), stepBody(step, water, SURE_SHARE_OF_MASS));

/** The tight-line wait of a row's rig under one step. */
export const waitWith_s = (row: RowRig, step: WeighedStep, limits: Limits, water: Water): number =>
  tightWait_s(rigWith(row, step, water), limits.lift_m, water);

type Handling = "mended" | "held";

/** How far the fly may hang above straight down, and how long a wait is. */
type Limits = Pick<RigBox, "lift_m" | "mostLift_m" | "longestWait_s">;

/** How high the fly hangs under one step; null where it is beyond a limit. */
function liftsWithin(
  row: RowRig,
  step: WeighedStep,
  foam_mps: number,
  handling: Handling,
  limits: Limits,
  water: Water,
): Lifts | null {
  const rig = rigWith(row, step, water);
  const liftIn = (current: Current): number =>
    lift_m(
      (handling === "held"
        ? heldDrift(rig, current, water)
        : mendedDrift(rig, current, windDrive(foam_mps, TABLE_INDICATOR_M), water)
      ).point,
    );
  const doubtful_m = liftIn(currentOver(row.depth_m, foam_mps, PROFILES.doubtful));
  if (doubtful_m > limits.mostLift_m) return null;
  const expected_m = liftIn(currentOver(row.depth_m, foam_mps, PROFILES.expected));
  return expected_m > limits.lift_m ? null : { expected_m, doubtful_m };
}

/** The step for one cell; null where none serves. */
export interface ChosenStep {
  readonly step: WeighedStep;
  /** The line must be held still. */
  readonly hold: boolean;
  readonly lifts: Lifts;
}

/**
 * The least step that is down in time and keeps the fly within both limits with the indicator mended; else the least
 * that does so held.
 * @param steps lightest first; the heaviest need not be down in time
 * @param waits_s the tight-line wait of each
 */
export function chooseStep(
  row: RowRig,
  foam_mps: number,
  steps: readonly WeighedStep[],
  waits_s: readonly number[],
  limits: Limits,
  water: Water,
): ChosenStep | null {
  const inTime = steps.filter((_, i) => i === steps.length - 1 || (waits_s[i] ?? 0) <= limits.longestWait_s);
  for (const handling of ["mended", "held"] as const)
    for (const step of inTime) {
      const lifts = liftsWithin(row, step, foam_mps, handling, limits, water);
      if (lifts !== null) return { step, hold: handling === "held", lifts };
    }
  return null;
}
