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
