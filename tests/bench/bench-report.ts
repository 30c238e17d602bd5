import { linearRegression } from "simple-statistics";
import type { Stage } from "../../build/model/progress.ts";
import { type Measured, stageOf } from "./measure.ts";
import type { Cost, StageCost } from "./stage-watch.ts";

/**
 * How something grows with size: the slope of the least-squares line through the logarithms, 1 for what grows in
 * proportion, 2 for its square.
 * @param points size and what was measured, both above 0
 * @returns undefined for fewer than two sizes
 */
export function growthExponent(
  points: readonly (readonly [size: number, measured: number])[],
): number | undefined {
  if (new Set(points.map(([size]) => size)).size < 2) return undefined;
  return linearRegression(points.map(([size, measured]) => [Math.log(size), Math.log(measured)])).m;
}

const costLine = (name: string, { seconds, cpu_s, peak_MB }: Cost, made = 0): string =>
  `  ${name.padEnd(22)}${seconds.toFixed(2).padStart(9)} s${cpu_s.toFixed(2).padStart(9)} CPU s${String(peak_MB).padStart(7)} MB${made === 0 ? "" : `   ${made} made`}`;

const ratioLine = (name: string, ours: Cost | undefined, theirs: Cost): string => {
  const times = (of: (cost: Cost) => number): string =>
    ours === undefined || of(theirs) === 0 ? "-" : (of(ours) / of(theirs)).toFixed(1);
  return `  ${name.padEnd(48)}${times((cost) => cost.seconds).padStart(8)} x   (CPU ${times((cost) => cost.cpu_s)} x)`;
};

/** What one club cost, stage by stage, and how many times what the bare work costs. */
export function measuredLines(measured: Measured): string[] {
  const { name, files, bytes, stages, whole, again_s, barePages, bareCards, copy } = measured;
  return [
    `${name}: ${files} files, ${(bytes / 1e6).toFixed(1)} MB`,
    ...stages.map((cost: StageCost) => costLine(cost.stage, cost, cost.made)),
    costLine("whole", whole),
    `  ${"again, nothing changed".padEnd(22)}${again_s.toFixed(2).padStart(9)} s`,
    ratioLine("pages / Eleventy alone, same pages and bytes", stageOf(measured, "pages"), barePages),
    ratioLine("cards / pdfkit alone, same text", stageOf(measured, "cards"), bareCards),
    ratioLine("whole / copying the output", whole, copy),
  ];
}

const GROWING: readonly (Stage | "whole")[] = [
  "load",
  "compute",
  "pages",
  "data",
  "cards",
  "publish",
  "whole",
];

/** How each stage grows with the number of lakes; nothing for a single size. */
export function growthLines(clubs: readonly Measured[]): string[] {
  const exponentOf = (stage: Stage | "whole", of: (cost: Cost) => number): string | undefined =>
    growthExponent(
      clubs.flatMap((club) => {
        const cost = stage === "whole" ? club.whole : stageOf(club, stage);
        return cost === undefined || of(cost) <= 0 ? [] : [[club.lakes, of(cost)] as const];
      }),
    )?.toFixed(2);
  const rows = GROWING.flatMap((stage) => {
    const seconds = exponentOf(stage, (cost) => cost.seconds);
    const cpu_s = exponentOf(stage, (cost) => cost.cpu_s);
    return seconds === undefined
      ? []
      : [`  ${stage.padEnd(22)}${seconds.padStart(9)}   (CPU ${cpu_s ?? "-"})`];
  });
  return rows.length === 0 ? [] : ["growth exponent in lakes (1: in proportion; 2: its square)", ...rows];
}
