/** The three states of a lake's surface that the plumb table has columns for. */
export const CONDITIONS = ["calm", "ripple", "chop"] as const;
export type Condition = (typeof CONDITIONS)[number];

/** Shot pinched on together; no pieces is none. */
export type ShotStep = readonly { readonly shot: string; readonly count: number }[];

/** What the rig tables are computed with, besides the gear itself. */
export interface RigSettings {
  /** Lightest first. */
  readonly steps: readonly ShotStep[];
  /** How far the fly may hang above straight down in the expected current, m. */
  readonly lift_m: number;
  /** The same in the doubtful current. */
  readonly mostLift_m: number;
  /** The longest wait on a tight line that the lighter steps may ask for. */
  readonly longestWait_s: number;
  /** Rope between the bow and the water, m. */
  readonly bow_m: number;
  /** Anchor rope over depth and bow. */
  readonly scope: Readonly<Record<Condition, number>>;
}

/** Common practice, no source, but for the scope: BoatUS Foundation; US Coast Guard Auxiliary. */
export const USUAL_SETTINGS: RigSettings = {
  steps: [[], [{ shot: "No. 4", count: 1 }], [{ shot: "BB", count: 1 }], [{ shot: "BB", count: 2 }]],
  lift_m: 0.15,
  mostLift_m: 0.3,
  longestWait_s: 90,
  bow_m: 0.6096,
  scope: { calm: 5, ripple: 5, chop: 7 },
};

/**
 * Foam at the quick edge of each condition, m/s: winds of 1.5, 3 and 5 m/s at 3 %, Beaufort 1, 2 and 3. For the open
 * sea; a lake's waves are smaller.
 */
export const FOAM_MPS: Readonly<Record<Condition, number>> = { calm: 0.045, ripple: 0.09, chop: 0.15 };

/** What the water looks like. Beaufort scale, forces 0 to 3: words for the open sea. */
const LOOKS: Readonly<Record<Condition, string>> = {
  calm: "mirror or scale-like ripples",
  ripple: "short glassy wavelets",
  chop: "crests begin to break",
};

const ROUND_S = 5;
const roundedSeconds = (seconds: number): number => Math.round(seconds / ROUND_S) * ROUND_S;

/** A column of the plumb table: what the water looks like, and how long foam takes to pass the rod. */
export interface ConditionColumn {
  readonly condition: Condition;
  readonly looks: string;
  /** Seconds for foam to pass the rod at the quick edge. */
  readonly from_s: number;
  /** At the slow edge; null for any slower. */
  readonly to_s: number | null;
}

/** The columns for a rod's length. */
export const conditionColumns = (rod_m: number): ConditionColumn[] =>
  CONDITIONS.map((condition, i) => {
    const slower = CONDITIONS[i - 1];
    return {
      condition,
      looks: LOOKS[condition],
      from_s: roundedSeconds(rod_m / FOAM_MPS[condition]),
      to_s: slower === undefined ? null : roundedSeconds(rod_m / FOAM_MPS[slower]),
    };
  });
