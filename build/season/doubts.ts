import { dayMonth } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { chanceText } from "../model/units.ts";
import type { LakeSeason } from "./region-season.ts";
import type { Statement } from "./statements.ts";

/** Below this chance of being true a report is named. */
const DOUBT = 0.1;

const isUnlikely = (fit: number | undefined): boolean => (fit ?? 1) < DOUBT;

export const isDoubted = ({ spring }: LakeSeason, place: number): boolean => isUnlikely(spring.fit[place]);

const said = ({ seen, date }: Statement): string => `“${seen}” on ${dayMonth(date)}`;

/** The latest statement of open water that `statement`, which speaks of ice, comes too late for. */
function openBefore(statement: Statement, all: readonly Statement[]): Statement | undefined {
  if (statement.open) return undefined;
  const sameDay = statement.seen === "ice on";
  return all.findLast(({ open, day }) => open && (day < statement.day || (sameDay && day === statement.day)));
}

/**
 * Reports that cannot be true together, and reports the rest of the evidence speaks against. Warnings, in the order of the dates.
 * @param fit the chance of each statement to be true
 */
export function doubtsOf(
  name: string,
  statements: readonly Statement[],
  fit: LakeSeason["spring"]["fit"],
): Diagnostic[] {
  return statements.flatMap((statement, place): Diagnostic[] => {
    const { where } = statement;
    if (where === undefined) return [];
    const opened = openBefore(statement, statements);
    if (opened !== undefined)
      return [
        {
          ...where,
          severity: "warning",
          code: "ice-back",
          message: `${name}: ${said(statement)} after ${said(opened)}`,
          hint: "a lake is taken to open once in a season: check both dates and take out the one that is wrong",
        },
      ];
    if (!isUnlikely(fit[place])) return [];
    return [
      {
        ...where,
        severity: "warning",
        code: "report-doubted",
        message: `${name}: ${said(statement)} hardly fits past seasons and the other reports (chance ${chanceText(fit[place] ?? 0)})`,
        hint: "check the lake and the date; if both are right leave it, it counts for little against the rest",
      },
    ];
  });
}
