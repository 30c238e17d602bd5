import { LINE_KINDS, type LineKind, type Method, type RigBox } from "../../model/club.ts";
import { depthText, type UnitSystem } from "../../model/units.ts";
import { tipCount_s } from "../physics/sinking-line.ts";

export type FlyLine = RigBox["lines"][number];

/** A count beyond this is not given at all, s. */
const LAST_COUNT_S = 90;

/** Why there is no count. */
export type NoCount = "floats" | "no rate" | "no tip length" | "too short a tip" | "too slow";

/** Seconds to count a line down to a depth, long beyond the club's longest count; or why there is no count. */
export type LineCount =
  | { readonly seconds: number; readonly long: boolean }
  | { readonly seconds: null; readonly reason: NoCount };

/** The count for the end of a line to reach a depth. */
export function lineCount(
  { kind, sinkRate_mps, tip_m }: FlyLine,
  depth_m: number,
  longestCount_s: number,
): LineCount {
  const none = (reason: NoCount): LineCount => ({ seconds: null, reason });
  if (kind === "floating") return none("floats");
  if (sinkRate_mps === undefined) return none("no rate");
  if (kind === "sink tip" && tip_m === undefined) return none("no tip length");
  const exact_s =
    kind === "sink tip" && tip_m !== undefined
      ? tipCount_s({ length_m: tip_m, sinkRate_mps }, depth_m)
      : depth_m / sinkRate_mps;
  if (exact_s === null) return none("too short a tip");
  const seconds = Math.round(exact_s);
  return seconds > LAST_COUNT_S ? none("too slow") : { seconds, long: seconds > longestCount_s };
}

const isInTime = (line: FlyLine, depth_m: number, longestCount_s: number): boolean => {
  const count = lineCount(line, depth_m, longestCount_s);
  return count.seconds !== null && !count.long;
};

/** The slowest line that is down at a depth within the longest count; undefined when none is. */
export const slowestInTime = <T extends FlyLine>(
  lines: readonly T[],
  depth_m: number,
  longestCount_s: number,
): T | undefined =>
  lines
    .filter((line) => isInTime(line, depth_m, longestCount_s))
    .sort((a, b) => (a.sinkRate_mps ?? 0) - (b.sinkRate_mps ?? 0))[0];

/** The kinds of line a method is fished with, best first. */
const KINDS_FOR_METHOD: Readonly<Record<Method, readonly [LineKind, ...LineKind[]]>> = {
  "indicator still": ["floating"],
  "indicator twitched": ["floating"],
  "floating line": ["floating"],
  "clear intermediate": ["clear intermediate"],
  "sink tip": ["sink tip"],
  "buoyant on sinking line": ["sinking"],
  trolled: ["sinking", "sink tip", "clear intermediate"],
};

/** The line for a method, or what is missing in words. */
export interface ChosenLine {
  readonly line: FlyLine | undefined;
  readonly missing: string | null;
}

/**
 * The line to fish a band with: of the best kind carried the slowest that is down at the deep end in time, else at the
 * shallow end, else the fastest.
 */
export function chooseLine(
  method: Method,
  band: { readonly from_m: number; readonly to_m: number },
  { lines, longestCount_s }: Pick<RigBox, "lines" | "longestCount_s">,
): ChosenLine {
  const kinds = KINDS_FOR_METHOD[method];
  for (const kind of kinds) {
    const ofKind = lines.filter((line) => line.kind === kind);
    const line =
      slowestInTime(ofKind, band.to_m, longestCount_s) ??
      slowestInTime(ofKind, band.from_m, longestCount_s) ??
      ofKind.toSorted((a, b) => (b.sinkRate_mps ?? 0) - (a.sinkRate_mps ?? 0))[0];
    if (line !== undefined) return { line, missing: null };
  }
  return {
    line: undefined,
    missing: `No ${kinds.join(" or ")} line in the box: ${insteadText(kinds[0], lines)}.`,
  };
}

const kindDistance = (a: LineKind, b: LineKind): number =>
  Math.abs(LINE_KINDS.indexOf(a) - LINE_KINDS.indexOf(b));

/** The line that comes nearest to a kind; only a floating line does for one. */
function insteadText(kind: LineKind, lines: readonly FlyLine[]): string {
  const nearest = lines.toSorted((a, b) => kindDistance(a.kind, kind) - kindDistance(b.kind, kind))[0];
  return kind === "floating" || nearest === undefined || nearest.kind === "floating"
    ? "nothing carried does instead"
    : `the nearest carried is ${nearest.name}`;
}

/** Why a line has no count for a depth, for readers; null where it floats and needs none. */
export function noCountText({ name, tip_m }: FlyLine, reason: NoCount, units: UnitSystem): string | null {
  switch (reason) {
    case "floats":
      return null;
    case "no rate":
      return `The sink rate of ${name} is not known: time it once over a known depth.`;
    case "no tip length":
      return `How long the tip of ${name} is has not been written down: no count without it.`;
    case "too short a tip":
      return `Not with this tip: ${name} hangs no deeper than its ${depthText(tip_m ?? 0, units)}.`;
    case "too slow":
      return `${name} takes over ${LAST_COUNT_S} s to the deep end: use a faster line there.`;
  }
}
