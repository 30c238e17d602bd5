import path from "node:path";
import type { Hemisphere } from "../model/calendar.ts";
import type { FoundFood, Report, ThroatSample } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { quoted } from "../model/fault.ts";
import { clubRecord } from "../model/fields/field.ts";
import { type ReportRow, reportRow, reportsSchema } from "../model/fields/report-fields.ts";
import type { ReportForm } from "../model/fields/report-form.ts";
import { oldPhaseWords } from "./checks/old-words.ts";
import { catchesOf, type ReportContext, rowProblems } from "./checks/report-checks.ts";
import type { ClubFile } from "./club-files.ts";
import type { Named } from "./names.ts";
import { errorAt, limitPerCode, startOf } from "./problem.ts";
import { type Row, readRows } from "./schema/read-record.ts";
import { readReportTable } from "./tables/report-table.ts";
import { type PlacedData, readYaml } from "./yaml/yaml-document.ts";

const YEAR = /^\d{4}$/;

function fileSeason({ file, slug }: ClubFile, problems: Diagnostic[]): number | undefined {
  if (YEAR.test(slug)) return Number(slug);
  problems.push(
    errorAt(startOf(file), {
      code: "bad-file-name",
      message: `${quoted(path.posix.basename(file))} does not say which season its reports are of`,
      hint: `name it by the year of the season, such as 2026${path.posix.extname(file)}`,
    }),
  );
  return undefined;
}

const samplesOf = ({ samples }: ReportRow): ThroatSample[] =>
  (samples ?? []).map((fish) =>
    Object.entries(fish).flatMap(([food, found]) => {
      const { count = 0, weight = undefined } = typeof found === "number" ? { count: found } : (found ?? {});
      return count === 0
        ? []
        : [{ food: food as FoundFood, count, ...(weight === undefined ? {} : { mass_g: weight }) }];
    }),
  );

function toReport({ value, where }: Row<ReportRow>): Report {
  const { caught: _, samples: __, ...seen } = clubRecord(reportRow, value);
  return { ...seen, where, catches: catchesOf(value), samples: samplesOf(value) };
}

/** Of one season; a large club writes some hundred. */
const MOST_REPORTS = 30_000;

/** Reports of rows from any kind of file: one schema, the same checks. Rows with errors are left out. */
export function reportsIn(doc: PlacedData, context: ReportContext, problems: Diagnostic[]): Report[] {
  if (Array.isArray(doc.data) && doc.data.length > MOST_REPORTS) {
    problems.push(
      errorAt(doc.spot([MOST_REPORTS]), {
        code: "too-many-reports",
        message: `the file holds ${doc.data.length} reports; one may hold ${MOST_REPORTS}`,
        hint: "split it by season, or look for rows written twice",
      }),
    );
    return [];
  }
  return readRows(reportsSchema, [], doc, problems).flatMap((row) => {
    const found = rowProblems(row, context, doc);
    problems.push(...found);
    return found.some(({ severity }) => severity === "error") ? [] : [toReport(row)];
  });
}

/** What a file of reports is read with. */
export interface ReportSources {
  readonly lakes: readonly NamedLake[];
  readonly patterns: readonly Named[];
  /** Undefined where club.yaml describes it and cannot be read: then no table is. */
  readonly form: ReportForm | undefined;
}

/** A lake by its file name and name; its side is undefined where its file could not be read. */
export interface NamedLake extends Named {
  readonly hemisphere: Hemisphere | undefined;
}

/** What rows of a season are held against. */
export const contextOf = ({ lakes, patterns }: ReportSources, season: number | undefined): ReportContext => ({
  lakes: new Map(lakes.map(({ slug, hemisphere }) => [slug, hemisphere])),
  patterns: new Set(patterns.map(({ slug }) => slug)),
  season,
});

/** Reads one file of reports, YAML or a table. */
export function readReports(file: ClubFile, sources: ReportSources, problems: Diagnostic[]): Report[] {
  const season = fileSeason(file, problems);
  const context = contextOf(sources, season);
  if (!file.file.endsWith(".csv")) {
    const doc = readYaml(file.file, file.text, problems);
    if (doc === undefined) return [];
    for (const problem of oldPhaseWords(doc)) problems.push(problem);
    return reportsIn(doc, context, problems);
  }
  if (sources.form === undefined) return [];
  const found: Diagnostic[] = [];
  const doc = readReportTable(file, { ...sources, form: sources.form }, found);
  const reports = doc === undefined ? [] : reportsIn(doc, context, found);
  problems.push(...limitPerCode(found));
  return reports;
}
