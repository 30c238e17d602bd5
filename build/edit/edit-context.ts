import { readClubFacts } from "../input/club-file.ts";
import { type ClubFile, readClubFiles } from "../input/club-files.ts";
import { readLake } from "../input/lake-file.ts";
import { readPattern } from "../input/pattern-file.ts";
import type { NamedLake, ReportSources } from "../input/report-file.ts";
import { type CalendarDate, dateOfSeasonDay, type Hemisphere, seasonOf } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { OWN_FORM } from "../model/fields/report-form.ts";

/** What is needed to write one more report, or another new file, of the club's season. */
export interface EditContext {
  readonly season: number;
  readonly side: Hemisphere;
  /** The day a new report is of unless somebody says another. */
  readonly date: CalendarDate;
  /** Where the season's reports are written, relative to the club folder. */
  readonly file: string;
  /** The file as it is now; undefined when there is none. */
  readonly text: string | undefined;
  readonly sources: ReportSources & { readonly form: typeof OWN_FORM };
}

/** Middle of spring where nothing says better: the 121st day, 1 May in the north. */
const SOME_SPRING_DAY = 121;

/** The day the guide speaks from; else today, if it is in the season; else some day of its spring. */
function defaultReportDate(
  asOf: CalendarDate | undefined,
  today: CalendarDate,
  season: number,
  side: Hemisphere,
): CalendarDate {
  if (asOf !== undefined) return asOf;
  return seasonOf(today, side) === season ? today : dateOfSeasonDay(SOME_SPRING_DAY, season, side);
}

/** Reads as much of a club folder as something new in it needs; without a desk, the problems say why. */
export async function readEditContext(
  dir: string,
  today: CalendarDate,
): Promise<{ desk?: EditContext; problems: readonly Diagnostic[] }> {
  const { files, problems } = await readClubFiles(dir);
  const facts = files?.club === undefined ? undefined : readClubFacts(files.club, problems);
  if (files === undefined || facts?.season === undefined) return { problems };
  const ignored: Diagnostic[] = [];
  const named = <T>(list: readonly ClubFile[], read: (file: ClubFile, to: Diagnostic[]) => T | undefined) =>
    new Map(list.map((file) => [file.slug, read(file, ignored)]));
  const drafts = named(files.lakes, readLake);
  const patterns = named(files.patterns, readPattern);
  const lakes = files.lakeSlugs.map(
    (slug): NamedLake => ({
      slug,
      name: drafts.get(slug)?.fields.name ?? slug,
      hemisphere: drafts.get(slug)?.hemisphere,
    }),
  );
  const side = lakes.find(({ hemisphere }) => hemisphere !== undefined)?.hemisphere ?? "north";
  const { season } = facts;
  const file = `reports/${season}.yaml`;
  return {
    desk: {
      season,
      side,
      date: defaultReportDate(facts.asOf, today, season, side),
      file,
      text: files.reports.find((other) => other.file === file)?.text,
      sources: {
        lakes,
        patterns: files.patternSlugs.map((slug) => ({ slug, name: patterns.get(slug)?.name ?? slug })),
        form: OWN_FORM,
      },
    },
    problems,
  };
}
