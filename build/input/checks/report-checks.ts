import { type CalendarDate, type Hemisphere, seasonOf } from "../../model/calendar.ts";
import type { Catch, Report } from "../../model/club.ts";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { type Fault, quoted } from "../../model/fault.ts";
import { clubRecord } from "../../model/fields/field.ts";
import { caughtRow, type ReportRow } from "../../model/fields/report-fields.ts";
import { rounded } from "../../model/units.ts";
import { unknownLake, unknownPattern } from "../names.ts";
import { errorAt, warningAt } from "../problem.ts";
import type { Row } from "../schema/read-record.ts";
import type { PlacedData } from "../yaml/yaml-document.ts";

/** What a row of reports is held against. */
export interface ReportContext {
  /** Lakes that reports may name; a side is undefined where the lake's file could not be read. */
  readonly lakes: ReadonlyMap<string, Hemisphere | undefined>;
  readonly patterns: ReadonlySet<string>;
  /** The season the file is named by; undefined when it is named by none. */
  readonly season: number | undefined;
}

/** Rounding in the conversion of units is no mistake of the club. */
const HARDLY_ANY_H = 1e-6;

const rodHoursOf = ({ rods, hours }: ReportRow): number | undefined =>
  rods === undefined || hours === undefined ? undefined : rods * hours;

function placeFault(
  { lake, date }: ReportRow,
  { lakes, season }: ReportContext,
  file: string,
): { key: string; fault: Fault } | undefined {
  if (!lakes.has(lake)) return { key: "lake", fault: unknownLake(lake, lakes.keys()) };
  const hemisphere = lakes.get(lake);
  if (hemisphere === undefined || season === undefined) return undefined;
  const actual = seasonOf(date, hemisphere);
  if (actual === season) return undefined;
  return {
    key: "date",
    fault: {
      code: "report-in-wrong-file",
      message: `${date} belongs to season ${actual}, but this file holds season ${season}`,
      hint: `correct the date, or move the row to reports/${actual}${file.slice(file.lastIndexOf("."))}`,
    },
  };
}

type Caught = NonNullable<ReportRow["caught"]>[number];
type Sample = NonNullable<ReportRow["samples"]>[number];
/** Where a value of the row stands. */
type SpotIn = (...inner: PropertyKey[]) => SourceSpot;

const fishedAs = ({ pattern, way }: Caught): string => (way === undefined ? pattern : `${pattern}, ${way}`);

/** The rows of one report by pattern and way; what stands there twice is counted together. */
function byPattern(caught: readonly Caught[]): Caught[] {
  const together = new Map<string, Caught>();
  for (const row of caught) {
    const earlier = together.get(fishedAs(row));
    const hours =
      earlier === undefined
        ? row.hours
        : earlier.hours === undefined || row.hours === undefined
          ? undefined
          : earlier.hours + row.hours;
    together.set(fishedAs(row), { ...row, fish: (earlier?.fish ?? 0) + row.fish, hours });
  }
  return [...together.values()];
}

/** The catches of a row that passed {@link rowProblems}. */
export const catchesOf = ({ caught }: ReportRow): Catch[] =>
  byPattern(caught ?? []).map((row) => clubRecord(caughtRow, row));

function catchErrors(row: ReportRow, { patterns }: ReportContext, at: SpotIn): Diagnostic[] {
  const fished = rodHoursOf(row);
  const caught = row.caught ?? [];
  const all = byPattern(caught);
  return caught.flatMap((line, i) => {
    if (!patterns.has(line.pattern))
      return [errorAt(at("caught", i, "pattern"), unknownPattern(line.pattern, patterns))];
    const hours = all.find((other) => fishedAs(other) === fishedAs(line))?.hours;
    const isFirst = caught.findIndex((other) => fishedAs(other) === fishedAs(line)) === i;
    if (!isFirst || hours === undefined || fished === undefined || hours <= fished + HARDLY_ANY_H) return [];
    return [
      errorAt(at("caught", i, "hours"), {
        code: "more-hours-than-fished",
        message: `${line.pattern} was fished ${rounded(hours, 2)} rod-hours, but the whole visit has ${rounded(fished, 2)}`,
        hint: "rods times hours is the most one pattern can have: correct one of the three",
      }),
    ];
  });
}

/** Rows without known rod-hours: shown, but in no catch rate. */
function withoutHours(row: ReportRow): Fault | undefined {
  const open = byPattern(row.caught ?? []).filter(({ hours }) => hours === undefined);
  const [first] = open;
  if (first === undefined) return undefined;
  const code = "fish-without-hours";
  const fished = rodHoursOf(row);
  if (fished === undefined) {
    const missing = [
      ...(row.rods === undefined ? ["“rods: 2”"] : []),
      ...(row.hours === undefined ? ["“hours: 4 h”"] : []),
    ];
    return {
      code,
      message: "nothing says how long these fish took; they are shown, but not counted per rod-hour",
      hint: `add ${missing.join(" and ")} to the report, or to each pattern the rod-hours it was fished`,
    };
  }
  const given = (row.caught ?? []).reduce((sum, { hours }) => sum + (hours ?? 0), 0);
  if (given < fished - HARDLY_ANY_H) return undefined;
  return {
    code,
    message: `the other patterns use up all ${rounded(fished, 2)} rod-hours; ${first.pattern} is shown, but not counted per rod-hour`,
    hint: `write the rod-hours of ${first.pattern} too, or correct those of the others`,
  };
}

const twice = (caught: readonly Caught[]): { i: number; name: string }[] =>
  caught.flatMap((row, i) => {
    const first = caught.findIndex((other) => fishedAs(other) === fishedAs(row));
    return first === i ? [] : [{ i, name: fishedAs(row) }];
  });

function sampleFault(food: string, found: Sample[keyof Sample]): Fault | undefined {
  if (typeof found !== "object" || (found.count ?? 0) > 0) return undefined;
  if (found.weight !== undefined)
    return {
      code: "weight-without-count",
      message: `${quoted(food)} has a weight, but no count`,
      hint: "count them: { count: 12, weight: 0.3 g }; where they cannot be counted, leave the food out and tell it in the notes",
    };
  return found.count === undefined
    ? { code: "not-a-count", message: `${quoted(food)} has no count`, hint: `write “${food}: 12”` }
    : undefined;
}

const sampleErrors = ({ samples }: ReportRow, at: SpotIn): Diagnostic[] =>
  (samples ?? []).flatMap((sample, i) =>
    Object.entries(sample).flatMap(([food, found]) => {
      const fault = sampleFault(food, found);
      return fault === undefined ? [] : [errorAt(at("samples", i, food), fault)];
    }),
  );

/** What is wrong or doubtful with a row that its schema accepts. An error means: the row is not used. */
export function rowProblems(
  { value: row, path }: Row<ReportRow>,
  context: ReportContext,
  doc: PlacedData,
): Diagnostic[] {
  const at: SpotIn = (...inner) => doc.spot([...path, ...inner]);
  const place = placeFault(row, context, doc.file);
  const noHours = withoutHours(row);
  return [
    ...(place === undefined ? [] : [errorAt(at(place.key), place.fault)]),
    ...catchErrors(row, context, at),
    ...sampleErrors(row, at),
    ...(row.deep !== undefined && row.water === undefined
      ? [
          errorAt(at("deep"), {
            code: "deep-without-surface",
            message: "a temperature at depth says nothing without one at the surface",
            hint: "add “water: 46 degF”, read at the surface on the same visit",
          }),
        ]
      : []),
    ...(noHours === undefined ? [] : [warningAt(at("caught"), noHours)]),
    ...twice(row.caught ?? []).map(({ i, name }) =>
      warningAt(at("caught", i), {
        code: "pattern-caught-twice",
        message: `${quoted(name)} is there already in this report; the two are counted together`,
        hint: "write one row with the sum, or remove the one that is there by mistake",
      }),
    ),
  ];
}

/** Drops rows that say the same as an earlier one, with a warning. */
export function removeDuplicateReports(reports: readonly Report[], problems: Diagnostic[]): Report[] {
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
export function warnOfLikelyDuplicates(reports: readonly Report[], problems: Diagnostic[]): void {
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
export const reportsUpTo = (
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
