import { LINE_KINDS, type LineKind, type Method, type RigBox } from "../model/club.ts";
import { countdown_s } from "./countdown.ts";

type FlyLine = RigBox["lines"][number];

/** The kinds of line a way is fished with, best first. */
const KINDS_FOR_WAY: Readonly<Record<Method, readonly [LineKind, ...LineKind[]]>> = {
  "indicator still": ["floating"],
  "indicator twitched": ["floating"],
  "floating line": ["floating"],
  "clear intermediate": ["clear intermediate"],
  "sink tip": ["sink tip"],
  "buoyant on sinking line": ["sinking"],
  trolled: ["sinking", "sink tip", "clear intermediate"],
};

/** Nobody counts longer than this after every cast. From memory. */
export const LONGEST_COUNT_S = 60;

/** Of several lines of a kind: the slowest that is down in time, else the fastest. */
function bestOfKind(lines: readonly FlyLine[], depth_m: number): FlyLine | undefined {
  const rate = (line: FlyLine): number => line.sinkRate_mps ?? 0;
  const slowestFirst = [...lines].sort((a, b) => rate(a) - rate(b));
  return (
    slowestFirst.find((line) => rate(line) > 0 && countdown_s(depth_m, rate(line)) <= LONGEST_COUNT_S) ??
    slowestFirst.at(-1)
  );
}

const kindDistance = (a: LineKind, b: LineKind): number =>
  Math.abs(LINE_KINDS.indexOf(a) - LINE_KINDS.indexOf(b));

/** The line for a way of fishing, or what is missing in words. */
export function chooseLine(
  way: Method,
  depth_m: number,
  lines: readonly FlyLine[],
): { line: FlyLine | undefined; missing: string | null } {
  const kinds = KINDS_FOR_WAY[way];
  for (const kind of kinds) {
    const line = bestOfKind(
      lines.filter((candidate) => candidate.kind === kind),
      depth_m,
    );
    if (line !== undefined) return { line, missing: null };
  }
  const nearest = [...lines].sort(
    (a, b) => kindDistance(a.kind, kinds[0]) - kindDistance(b.kind, kinds[0]),
  )[0];
  const instead =
    kinds[0] === "floating" || nearest === undefined || nearest.kind === "floating"
      ? "nothing carried does instead"
      : `the nearest carried is ${nearest.name}`;
  return { line: undefined, missing: `No ${kinds.join(" or ")} line in the box: ${instead}.` };
}
