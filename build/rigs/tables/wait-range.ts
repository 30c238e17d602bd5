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
