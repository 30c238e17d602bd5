import type { CalendarDate } from "../model/calendar.ts";
import type { Club } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import {
  type FileStamp,
  type Memoize,
  type MemoizeLast,
  memoizeRead,
  unmemoized,
  unmemoizedLast,
} from "../model/memoize.ts";
import { indicatorProblems } from "./checks/indicator-checks.ts";
import { recordedTwice } from "./checks/lake-records.ts";
import { lakePositionWarnings } from "./checks/position-checks.ts";
import { removeDuplicateReports, reportsUpTo, warnOfLikelyDuplicates } from "./checks/report-checks.ts";
import { momentOf, readClubFacts } from "./club-file.ts";
import { type ClubFile, readClubFiles } from "./club-files.ts";
import { finishLake, readLake } from "./lake-file.ts";
import { readPage } from "./page-file.ts";
import { readPattern } from "./pattern-file.ts";
import { errorAt, sortProblems, startOf } from "./problem.ts";
import { type ReportSources, readReports } from "./report-file.ts";
import { readRigBox } from "./rigs-file.ts";
import { attachShapes } from "./shapes/lake-shapes.ts";
import { readTrip, tripProblems, tripsOfSeason } from "./trip-file.ts";

export interface LoadOptions {
  /** Overrides club.yaml's as-of date. */
  readonly asOf?: CalendarDate;
  /** Keeps costly results from one run to the next; reads everything anew unless it is given. */
  readonly memoize?: Memoize;
  /** Keeps what was read in memory from one edit to the next. */
  readonly memoizeLast?: MemoizeLast;
  /** Tells which files need not be read again; all are unless it is given. */
  readonly fileStamp?: FileStamp;
}

export interface LoadedClub {
  /** Absent when any problem is an error. */
  readonly club?: Club;
  /** In reading order: club.yaml first, then by file, line and column. */
  readonly problems: readonly Diagnostic[];
}

/**
 * Reads a club folder: the whole club, or every problem of every file in one run. What could not be read of one
 * file is not held against another: a report of a lake whose file is broken is no second problem.
 */
export async function loadClub(dir: string, options: LoadOptions = {}): Promise<LoadedClub> {
  const { memoizeLast = unmemoizedLast, memoize = unmemoized } = options;
  const { files, problems } = await readClubFiles(dir, options);
  if (files === undefined) return { problems };
  const reading = memoizeRead(memoizeLast);
  const readOne = <T>(
    read: (file: ClubFile, problems: Diagnostic[]) => T,
    file: ClubFile,
    context: readonly unknown[] = [],
  ): T => reading(file.file, [file.text, ...context], (found) => read(file, found), problems);
  const readAll = <T>(
    read: (file: ClubFile, problems: Diagnostic[]) => T | undefined,
    list: readonly ClubFile[],
  ): T[] => list.map((file) => readOne(read, file)).filter((value) => value !== undefined);

  const facts = files.club && readOne(readClubFacts, files.club);
  const drafts = readAll(readLake, files.lakes);
  const sides = new Map([
    ...files.lakeSlugs.map((slug) => [slug, undefined] as const),
    ...drafts.map(({ slug, hemisphere }) => [slug, hemisphere] as const),
  ]);
  if (sides.size === 0) problems.push(NO_LAKES);
  const hemisphere = [...sides.values()].find((side) => side !== undefined) ?? "north";
  const patterns = readAll(readPattern, files.patterns);
  const lakeNames = new Map(drafts.map(({ slug, fields }) => [slug, fields.name]));
  const patternNames = new Map(patterns.map(({ slug, name }) => [slug, name]));
  const sources: ReportSources = {
    lakes: [...sides].map(([slug, side]) => ({ slug, hemisphere: side, name: lakeNames.get(slug) })),
    patterns: files.patternSlugs.map((slug) => ({ slug, name: patternNames.get(slug) })),
    form: facts?.form,
  };
  const written = removeDuplicateReports(
    files.reports.flatMap((file) =>
      readOne((text, found) => readReports(text, sources, found), file, partsOf(sources)),
    ),
    problems,
  );
  warnOfLikelyDuplicates(written, problems);
  const moment = facts && momentOf(facts, options.asOf, written, hemisphere, problems);

  const finished = drafts.flatMap(
    (draft) =>
      reading(
        `records of lake ${draft.slug}`,
        [draft, moment?.season, moment?.asOf],
        (found) => finishLake(draft, moment, found),
        problems,
      ) ?? [],
  );
  const lakes = attachShapes(finished, files.shapes, drafts, files.lakeSlugs, problems, {
    memoize,
    reading,
  });
  const slugs = new Set(sides.keys());
  const planned = files.trips.flatMap(
    (file) => readOne((text, found) => readTrip(text, slugs, found), file, [...slugs]) ?? [],
  );
  const pages = readAll(readPage, files.pages);
  const rigs = await readRigBox(files.rigs, problems, reading);

  if (facts?.timezone !== undefined && facts.season !== undefined)
    problems.push(...lakePositionWarnings(drafts, facts.timezone, facts.season));
  if (moment === undefined) return { problems: sortProblems(problems) };
  const reports = reportsUpTo(written, moment.asOf, problems);
  const trips = tripsOfSeason(planned, moment.season, hemisphere, problems);
  problems.push(
    ...tripProblems(trips, lakes),
    ...recordedTwice(lakes, reports, moment),
    ...indicatorProblems(
      lakes,
      reports,
      trips.map(({ trip, doc }) => ({ lakes: trip.lakes, spotOf: (i) => doc.spot(["lakes", i]) })),
    ),
  );

  const sorted = sortProblems(problems);
  const settings = facts?.settings;
  if (settings === undefined || sorted.some(({ severity }) => severity === "error"))
    return { problems: sorted };
  const club: Club = {
    ...settings,
    ...moment,
    lakes: lakes.filter(({ role }) => role === undefined),
    indicators: lakes.filter(({ role }) => role === "indicator"),
    patterns,
    reports,
    trips: trips.map(({ trip }) => trip),
    rigs,
    pages,
  };
  return { club, problems: sorted };
}

/** All that a file of reports is read with, one by one. */
const partsOf = ({ lakes, patterns, form }: ReportSources): unknown[] => [
  form,
  ...lakes.flatMap(({ slug, name, hemisphere }) => [slug, name, hemisphere]),
  ...patterns.flatMap(({ slug, name }) => [slug, name]),
];

const NO_LAKES = errorAt(startOf("lakes"), {
  code: "no-lakes",
  message: "there is no lake",
  hint: "write one with a name and a position, or begin with: npm run new -- lake NAME",
});
