import { CONDITIONS, type Condition } from "../../model/club.ts";

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
