import { dayMonth } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { chanceText } from "../model/units.ts";
import type { LakeForecast, RegionForecast } from "./forecast.ts";
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

/** The middle forecast lies on or before the day the lake was last reported iced. */
function medianBeforeIce(
  name: string,
  statements: readonly Statement[],
  { p50, status }: LakeForecast["iceOff"],
): Diagnostic[] {
  const iced = statements.findLast(({ seen }) => seen === "ice on");
  if (iced?.where === undefined || status === "observed" || p50 > iced.date) return [];
  return [
    {
      ...iced.where,
      severity: "warning",
      code: "median-before-ice",
      message: `${name}: the forecast's middle day, ${dayMonth(p50)}, is not after ${said(iced)}`,
      hint: "the other lakes speak for an earlier opening: check the report's lake and date; if both are right, report the lake again",
    },
  ];
}

/**
 * Reports that cannot be true together, reports the rest of the evidence speaks against, and a forecast that a report speaks against.
 * Warnings, in the order of the dates.
 * @param fit the chance of each statement to be true
 */
export function doubtsOf(
  name: string,
  statements: readonly Statement[],
  fit: LakeSeason["spring"]["fit"],
  iceOff: LakeForecast["iceOff"] | undefined,
): Diagnostic[] {
  const ofReports = statements.flatMap((statement, place): Diagnostic[] => {
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
  return [...ofReports, ...(iceOff === undefined ? [] : medianBeforeIce(name, statements, iceOff))];
}

/** The chance of the largest scatter from which a spring is called unusually uneven. A judgement. */
const UNEVEN = 0.5;

export const isUneven = ({ uneven }: Pick<RegionForecast, "uneven">): boolean => uneven > UNEVEN;

/**
 * What is unusual of a region's reports as a whole. Warnings at the latest report of the region.
 * @param statements of all lakes of the region
 */
export function regionDoubts(
  { region, mostInformative, openingsOnly, ...rest }: RegionForecast,
  statements: readonly Statement[],
  nameOf: (slug: string) => string,
): Diagnostic[] {
  const latest = statements
    .filter(({ where }) => where !== undefined)
    .reduce<Statement | undefined>(
      (late, one) => (late === undefined || one.day >= late.day ? one : late),
      undefined,
    );
  if (latest?.where === undefined) return [];
  const { where } = latest;
  const place = region === null ? "" : `${region}: `;
  const warning = (code: string, message: string, hint: string): Diagnostic => ({
    ...where,
    severity: "warning",
    code,
    message: `${place}${message}`,
    hint,
  });
  return [
    ...(isUneven(rest)
      ? [
          warning(
            "uneven-spring",
            "this spring is unusually uneven: spreads are wider",
            "the lakes do not open in their usual order: check that each report names the right lake and day; if they are right leave them",
          ),
        ]
      : []),
    ...(openingsOnly && mostInformative !== null
      ? [
          warning(
            "openings-only",
            "this spring's reports tell of openings only",
            `one look at ${nameOf(mostInformative.lake)}, still iced or not, would help most: report lakes that are still iced, too`,
          ),
        ]
      : []),
  ];
}
