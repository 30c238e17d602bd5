import path from "node:path";
import type { z } from "zod";
import { type CalendarDate, type Hemisphere, seasonOf } from "../model/calendar.ts";
import type { Report } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { ClubFile } from "./club-files.ts";
import { nearestOrList } from "./did-you-mean.ts";
import { present } from "./present.ts";
import { errorAt, type Fault, startOf, warningAt } from "./problem.ts";
import { quoted } from "./quote.ts";
import { type Row, readRows } from "./read-record.ts";
import { type reportRow, reportsSchema } from "./report-schema.ts";
import { readYaml } from "./yaml-document.ts";

/** A lake that reports may name. */
export type LakeSides = ReadonlyMap<string, Hemisphere | undefined>;

const YEAR = /^\d{4}$/;

/** Names no lake file of the club: what to say. */
export const unknownLake = (slug: string, lakes: Iterable<string>): Fault => ({
  code: "unknown-lake",
  message: `there is no lake ${quoted(slug)}`,
  hint: nearestOrList(slug, [...lakes], "lakes"),
});

function fileSeason({ file, slug }: ClubFile, problems: Diagnostic[]): number | undefined {
  if (YEAR.test(slug)) return Number(slug);
  problems.push(
    errorAt(startOf(file), {
      code: "bad-file-name",
      message: `${quoted(path.posix.basename(file))} does not say which season its reports are of`,
      hint: "name it by the year of the season, such as 2026.yaml",
    }),
  );
  return undefined;
}

function rowFault(
  { lake, date }: z.output<typeof reportRow>,
  lakes: LakeSides,
  season: number | undefined,
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
      hint: `correct the date, or move the row to reports/${actual}.yaml`,
    },
  };
}

function toReport({ value, where }: Row<z.output<typeof reportRow>>): Report {
  return {
    lake: value.lake,
    date: value.date,
    where,
    catches: [],
    samples: [],
    ...present({
      ice: value.ice,
      phase: value.phase,
      water_C: value.water,
      clarity_m: value.clarity,
      oxygen_mgL: value.oxygen,
      rods: value.rods,
      hours: value.hours,
      notes: value.notes,
    }),
  };
}

/** Reads one file of reports. */
export function readReports(file: ClubFile, lakes: LakeSides, problems: Diagnostic[]): Report[] {
  const season = fileSeason(file, problems);
  const doc = readYaml(file.file, file.text, problems);
  if (doc === undefined) return [];
  return readRows(reportsSchema, [], doc, problems).flatMap((row) => {
    const found = rowFault(row.value, lakes, season);
    if (found === undefined) return [toReport(row)];
    problems.push(errorAt(doc.spot([...row.path, found.key]), found.fault));
    return [];
  });
}

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
