import type { Catch, Report } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { pooled, type Tally } from "./catch-rates.ts";

/** A report and the phase it belongs to: null when nobody can tell. */
export interface PhasedReport {
  readonly report: Report;
  readonly phase: Phase | null;
}

/** One pattern fished on one lake on one day for a known time. */
export interface Outing extends Tally {
  readonly lake: string;
  readonly phase: Phase | null;
  readonly pattern: string;
}

/** Rod-hours of a whole visit; undefined when rods or hours are not told. */
const visitHours = ({ rods, hours }: Report): number | undefined =>
  rods === undefined || hours === undefined ? undefined : rods * hours;

/**
 * Each row of a report's catches with its rod-hours: those written, else an equal share of what the visit leaves to the rows
 * without; undefined when that is not known or nothing is left.
 */
export function catchesWithHours(
  report: Report,
): (Omit<Catch, "rodHours"> & { readonly rodHours: number | undefined })[] {
  const written = report.catches.reduce((sum, { rodHours }) => sum + (rodHours ?? 0), 0);
  const without = report.catches.filter(({ rodHours }) => rodHours === undefined).length;
  const visit = visitHours(report);
  const left = visit === undefined ? 0 : Math.max(0, visit - written);
  const share = without === 0 || left === 0 ? undefined : left / without;
  return report.catches.map((row) => ({ ...row, rodHours: row.rodHours ?? share }));
}

/** Every row of catches whose rod-hours are known, fish or none. */
export function outingsOf(reports: readonly PhasedReport[]): Outing[] {
  return reports.flatMap(({ report, phase }) =>
    catchesWithHours(report).flatMap(({ pattern, fish, rodHours }) =>
      rodHours === undefined || rodHours <= 0 ? [] : [{ lake: report.lake, phase, pattern, fish, rodHours }],
    ),
  );
}

/**
 * Fish and rod-hours of a whole visit. A report without a row of catches does not say that nothing was caught, and gives null; so does
 * one whose hours nobody knows. A visit that caught nothing says so with a row of 0 fish.
 */
export function visitTally(report: Report): Tally | null {
  if (report.catches.length === 0) return null;
  const fish = report.catches.reduce((sum, row) => sum + row.fish, 0);
  const rows = catchesWithHours(report);
  const written = pooled(rows.map((row) => ({ fish: row.fish, rodHours: row.rodHours ?? 0 })));
  const rodHours = Math.max(visitHours(report) ?? 0, written.rodHours);
  const allTimed = visitHours(report) !== undefined || rows.every((row) => row.rodHours !== undefined);
  return allTimed && rodHours > 0 ? { fish, rodHours } : null;
}
