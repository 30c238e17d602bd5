import { PHASES } from "../model/phase.ts";
import { catchRate, pooled } from "./catch-rates.ts";
import { type PhasedReport, visitTally } from "./catch-rates-outings.ts";
import type { LakeCatches } from "./catch-rates-schema.ts";

/**
 * Catch per rod-hour of one lake, in all and phase by phase.
 * @param reports of the lake
 * @param isThisSeason whether a report is of the season in progress
 */
export function lakeCatches(
  reports: readonly PhasedReport[],
  isThisSeason: (report: PhasedReport["report"]) => boolean,
): LakeCatches {
  const visits = reports.flatMap(({ report, phase }) => {
    const tally = visitTally(report);
    return tally === null ? [] : [{ ...tally, phase, isThisSeason: isThisSeason(report) }];
  });
  return {
    season: catchRate(pooled(visits.filter((visit) => visit.isThisSeason))),
    all: catchRate(pooled(visits)),
    phases: PHASES.flatMap((phase) => {
      const rate = catchRate(pooled(visits.filter((visit) => visit.phase === phase)));
      return rate === null ? [] : [{ phase, rate }];
    }),
  };
}
