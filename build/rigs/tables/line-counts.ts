import type { RigBox } from "../../model/club.ts";
import { tipCount_s } from "../physics/sinking-line.ts";

export type FlyLine = RigBox["lines"][number] & { /** Length of a sink tip. */ readonly tip_m?: number };

/** Nobody counts longer after every cast, s. From memory. */
export const LONGEST_COUNT_S = 60;
/** A count beyond this is not given at all, s. */
const LAST_COUNT_S = 90;

/** Seconds to count a line down to a depth, or why there is no count. */
export type LineCount =
  | { readonly seconds: number; readonly long: boolean }
  | {
      readonly seconds: null;
      readonly reason: "floats" | "no rate" | "no tip length" | "too short a tip" | "too slow";
    };

/** The count for the end of a line to reach a depth. */
export function lineCount({ kind, sinkRate_mps, tip_m }: FlyLine, depth_m: number): LineCount {
  const none = (reason: NonNullable<Extract<LineCount, { seconds: null }>["reason"]>): LineCount => ({
    seconds: null,
    reason,
  });
  if (kind === "floating") return none("floats");
  if (sinkRate_mps === undefined) return none("no rate");
  if (kind === "sink tip" && tip_m === undefined) return none("no tip length");
  const exact_s =
    kind === "sink tip" && tip_m !== undefined
      ? tipCount_s({ length_m: tip_m, sinkRate_mps }, depth_m)
      : depth_m / sinkRate_mps;
  if (exact_s === null) return none("too short a tip");
  const seconds = Math.round(exact_s);
  return seconds > LAST_COUNT_S ? none("too slow") : { seconds, long: seconds > LONGEST_COUNT_S };
}

/** The slowest line that is down at a depth within the longest count; undefined when none is. */
export const slowestInTime = <T extends FlyLine>(lines: readonly T[], depth_m: number): T | undefined =>
  lines
    .filter((line) => {
      const count = lineCount(line, depth_m);
      return count.seconds !== null && !count.long;
    })
    .sort((a, b) => (a.sinkRate_mps ?? 0) - (b.sinkRate_mps ?? 0))[0];
