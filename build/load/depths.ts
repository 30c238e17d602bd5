import type { DayRange } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { PHASES } from "../model/phase.ts";
import type { LakeFields } from "./lake-schema.ts";
import { errorAt, type Fault } from "./problem.ts";
import type { YamlDocument } from "./yaml-document.ts";

/** "from" beyond "to" in a pair of depths, heights or spans. */
export const fromBeyondTo = (label: string, beyond: string): Fault => ({
  code: "from-after-to",
  message: `${label}: “from” is ${beyond} than “to”`,
  hint: "swap or correct them",
});

/** Checks a lake's depths and depth bands against each other. */
export function checkDepths(fields: LakeFields, doc: YamlDocument, problems: Diagnostic[]): void {
  const { max, mean } = fields.depth ?? {};
  if (max !== undefined && mean !== undefined && mean > max)
    problems.push(
      errorAt(doc.spot(["depth", "mean"]), {
        code: "mean-above-max",
        message: "depth.mean is more than depth.max",
        hint: "“max” is the deepest place, “mean” the depth on average: swap or correct them",
      }),
    );
  for (const phase of PHASES) {
    const band = fields.depthBands?.[phase];
    if (band === undefined) continue;
    const label = `depthBands.${phase}`;
    const where = doc.spot(["depthBands", phase, "to"]);
    if (band.from > band.to) problems.push(errorAt(where, fromBeyondTo(label, "deeper")));
    else if (max !== undefined && band.to > max)
      problems.push(
        errorAt(where, {
          code: "band-below-bottom",
          message: `${label}: “to” is deeper than the lake, depth.max`,
          hint: "correct the band, or depth.max",
        }),
      );
  }
}

/** Checks a club's own turnover rule: whole days, and ranges the right way round. */
export function checkTurnoverRule(fields: LakeFields, doc: YamlDocument, problems: Diagnostic[]): void {
  const { turnoverRule } = fields;
  if (turnoverRule === undefined || turnoverRule === "none") return;
  for (const part of ["onset", "duration"] as const)
    problems.push(...dayRangeProblems(turnoverRule[part], ["turnoverRule", part], doc));
}

function dayRangeProblems({ from, to }: DayRange, path: readonly string[], doc: YamlDocument): Diagnostic[] {
  const parts = Object.entries({ from, to }).filter(([, days]) => !Number.isInteger(days));
  return [
    ...parts.map(([key, days]) =>
      errorAt(doc.spot([...path, key]), {
        code: "not-whole-days",
        message: `${[...path, key].join(".")}: ${days} days are not whole days`,
        hint: "write whole days, such as 8 days",
      }),
    ),
    ...(from > to ? [errorAt(doc.spot([...path, "to"]), fromBeyondTo(path.join("."), "more"))] : []),
  ];
}
