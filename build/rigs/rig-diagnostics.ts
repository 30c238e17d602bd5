import type { RigBox } from "../model/club.ts";
import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import { type Finding, warning } from "./finding.ts";
import { indicatorFindings, lineFindings, shotFindings } from "./gear-findings.ts";
import { leaderFindings } from "./leader-findings.ts";

/** Gear that is listed but of which none is carried, said once, at the first of its list. */
function noneCarried<T extends { readonly carried: number; readonly where: SourceSpot }>(
  list: readonly T[],
  what: string,
): Diagnostic[] {
  const first = list[0];
  if (first === undefined || list.some(({ carried }) => carried > 0)) return [];
  return [
    {
      ...first.where,
      ...warning(
        `no-${what}`,
        `no ${what} is carried`,
        `write how many of each ${what} are carried, such as carried: 10`,
      ),
    },
  ];
}

/**
 * What cannot be right, or is doubtful, in the club's rig box. With an error among them the rigs cannot be computed;
 * with warnings alone they can.
 */
export function rigDiagnostics(box: RigBox): Diagnostic[] {
  const at = <T extends { readonly where: SourceSpot }>(
    list: readonly T[],
    findings: (item: T) => Finding[],
  ): Diagnostic[] => list.flatMap((item) => findings(item).map((finding) => ({ ...item.where, ...finding })));
  return [
    ...at(box.leaders, (leader) => leaderFindings(leader, box.margin_m)),
    ...at(box.lines, lineFindings),
    ...at(box.shot, shotFindings),
    ...noneCarried(box.shot, "shot"),
    ...at(box.indicators, (indicator) => indicatorFindings(indicator, box.dryShare)),
    ...noneCarried(box.indicators, "indicator"),
  ];
}
