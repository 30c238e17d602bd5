import type { CalendarDate } from "../model/calendar.ts";
import type { Report } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { warningAt } from "./problem.ts";

/** Drops rows that say the same as an earlier one, with a warning. */
export function withoutRepeats(reports: readonly Report[], problems: Diagnostic[]): Report[] {
  const seen = new Map<string, Report>();
  return reports.filter((report) => {
    const { where, ...said } = report;
    const key = JSON.stringify(Object.entries(said).sort());
    const earlier = seen.get(key);
    if (earlier === undefined) {
      seen.set(key, report);
      return true;
    }
    problems.push(
      warningAt(where, {
        code: "repeated-report",
        message: `this report is there already, in ${earlier.where.file} on line ${earlier.where.line}; it is used once`,
        hint: "remove one of the two",
      }),
    );
    return false;
  });
}

/** Reports from a YAML file and a table that are most likely one: the same lake, day, rods and hours. A warning; both are used. */
export function warnOfLikelyRepeats(reports: readonly Report[], problems: Diagnostic[]): void {
  const kindOf = ({ where }: Report): string => where.file.slice(where.file.lastIndexOf("."));
  const firsts = new Map<string, Report>();
  for (const report of reports) {
    const { lake, date, rods, hours, where } = report;
    if (rods === undefined || hours === undefined) continue;
    const visit = JSON.stringify([lake, date, rods, hours]);
    const earlier = firsts.get(visit);
    if (earlier === undefined) firsts.set(visit, report);
    else if (kindOf(earlier) !== kindOf(report))
      problems.push(
        warningAt(where, {
          code: "likely-repeated-report",
          message: `${earlier.where.file} tells of the same lake, day, rods and hours on line ${earlier.where.line}; both are used`,
          hint: "if the two are one visit, keep the fuller one and remove the other",
        }),
      );
  }
}

/** Leaves out reports dated after the day the guide speaks from, with a warning. */
export const knownReports = (
  reports: readonly Report[],
  asOf: CalendarDate,
  problems: Diagnostic[],
): Report[] =>
  reports.filter(({ date, where }) => {
    if (date <= asOf) return true;
    problems.push(
      warningAt(where, {
        code: "report-after-as-of",
        message: `${date} is after ${asOf}, the day this guide speaks from; the report is left out`,
        hint: "correct the date, or set a later asOf in club.yaml",
      }),
    );
    return false;
  });
