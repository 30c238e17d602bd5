import type { GuideLake } from "./guide-schema.ts";
import { seasonOfReport } from "./report-totals.ts";

/** What the list needs of a lake. */
export type ListedLake = Pick<GuideLake, "slug" | "name" | "position" | "reports">;

/** One report with all that is needed to point at it. */
export interface ListedReport {
  readonly lake: ListedLake;
  readonly report: GuideLake["reports"][number];
  readonly season: number;
  /**
   * Unlike any other report's: lake and day, "ember-2026-05-12", and for a second one of that day "ember-2026-05-12-2". It stays while
   * the order of one lake's reports of one day does.
   */
  readonly id: string;
}

/** Every report of these lakes, newest first; those of one day in the order of the lakes. */
export function listReports(lakes: readonly ListedLake[]): ListedReport[] {
  return lakes
    .flatMap((lake) =>
      lake.reports.map((report, place) => {
        const before = lake.reports.slice(0, place).filter(({ date }) => date === report.date).length;
        const id = `${lake.slug}-${report.date}${before === 0 ? "" : `-${before + 1}`}`;
        return { lake, report, season: seasonOfReport(lake, report), id };
      }),
    )
    .sort((a, b) => (a.report.date < b.report.date ? 1 : a.report.date > b.report.date ? -1 : 0));
}
