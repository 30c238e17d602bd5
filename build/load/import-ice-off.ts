import type { Diagnostic } from "../model/diagnostic.ts";
import { readClubFacts } from "./club-file.ts";
import { type ClubFile, type ClubFiles, readClubFiles } from "./club-files.ts";
import { type ImportRow, type ImportSources, readImportRows } from "./import-rows.ts";
import { insertIceOff } from "./insert-ice-off.ts";
import { type LakeDraft, readLake } from "./lake-file.ts";
import type { Moment } from "./moment.ts";
import { present } from "./present.ts";
import { errorAt, type Fault } from "./problem.ts";
import type { Row } from "./read-record.ts";
import { OWN_FORM } from "./report-form.ts";
import { mostOf } from "./report-table.ts";

/** What becomes of one lake's file. */
interface LakeImport {
  /** Relative to the club folder. */
  readonly file: string;
  /** As it was read. */
  readonly before: string;
  readonly after: string;
  /** As they are written behind a dash. */
  readonly rows: readonly string[];
}

export interface IceOffImport {
  /** Empty when any problem is an error: all rows are taken, or none. */
  readonly lakes: readonly LakeImport[];
  /** Rows that the club has already, day for day. */
  readonly already: number;
  readonly problems: readonly Diagnostic[];
}

type Days = Pick<ImportRow, "season" | "on" | "after" | "by">;

const rowText = ({ season, ...days }: Days): string =>
  `{ ${["season", ...["on", "after", "by"].filter((key) => key in days)]
    .map((key) => `${key}: ${{ season, ...days }[key as keyof Days]}`)
    .join(", ")} }`;

const daysOf = ({ season, on, after, by }: Days): Days => ({ season, ...present({ on, after, by }) });
const words = ({ on, after, by }: Days): string =>
  Object.entries(present({ on, after, by }))
    .map(([key, date]) => `${key} ${date}`)
    .join(" ");

interface Known {
  readonly days: Days;
  readonly file: string;
  readonly line: number;
}

const conflict = (days: Days, { days: other, file, line }: Known): Fault => ({
  code: "recorded-otherwise",
  message: `season ${days.season} is there already: ${words(other)} in ${file}, line ${line}; here ${words(days)}`,
  hint: "keep the one you trust: correct the other, or remove this row",
});

/** The rows of one lake that are new; repeats are counted, other days of a known season are problems. */
function sortOut(
  rows: readonly Row<ImportRow>[],
  { iceOff }: LakeDraft,
  problems: Diagnostic[],
): { added: Days[]; already: number } {
  const known = iceOff.map(({ value, where }): Known => ({ days: daysOf(value), ...where }));
  const added: Days[] = [];
  let already = 0;
  for (const { value, where } of rows) {
    const days = daysOf(value);
    const same = known.filter((other) => other.days.season === days.season);
    const [other] = same;
    if (other === undefined) {
      added.push(days);
      known.push({ days, ...where });
    } else if (same.some((one) => rowText(one.days) === rowText(days))) already += 1;
    else problems.push(errorAt(where, conflict(days, other)));
  }
  return { added: added.sort((a, b) => a.season - b.season), already };
}

const isError = ({ severity }: Diagnostic): boolean => severity === "error";

function sourcesOf(
  files: ClubFiles,
  drafts: ReadonlyMap<string, LakeDraft>,
  problems: Diagnostic[],
): ImportSources {
  const facts = files.club && readClubFacts(files.club, problems);
  const { season, asOf } = facts ?? {};
  const lakes = files.lakeSlugs.map((slug) => ({
    slug,
    name: drafts.get(slug)?.fields.name,
    hemisphere: drafts.get(slug)?.hemisphere,
  }));
  const moment: Moment | undefined =
    season === undefined || asOf === undefined ? undefined : { season, asOf };
  return { lakes, dates: (facts?.form ?? OWN_FORM).dates, moment };
}

/**
 * Plans to add a table's ice-off days to the lakes of a club: nothing is written here.
 * @param csv the table, wherever it lies; its problems are told under its `file`
 */
export async function planIceOffImport(dir: string, csv: ClubFile): Promise<IceOffImport> {
  const { files, problems: found } = await readClubFiles(dir);
  const problems = found.filter(isError);
  if (files === undefined || problems.length > 0) return { lakes: [], already: 0, problems };
  const ofLakes: Diagnostic[] = [];
  const drafts = new Map(
    files.lakes.flatMap((file) => {
      const draft = readLake(file, ofLakes);
      return draft === undefined ? [] : [[file.slug, draft] as const];
    }),
  );
  const sources = sourcesOf(files, drafts, problems);
  const inTable: Diagnostic[] = [];
  const rows = readImportRows(csv, sources, inTable);
  const wanted = new Set(rows.map(({ value }) => value.lake));
  const lakes: LakeImport[] = [];
  let already = 0;
  for (const { file, slug, text } of files.lakes.filter((lake) => wanted.has(lake.slug))) {
    const own = ofLakes.filter((problem) => problem.file === file && isError(problem));
    problems.push(...own);
    const draft = drafts.get(slug);
    if (draft === undefined || own.length > 0) continue;
    const news = sortOut(
      rows.filter(({ value }) => value.lake === slug),
      draft,
      inTable,
    );
    already += news.already;
    if (news.added.length === 0) continue;
    const written = news.added.map((value) => ({ value, text: rowText(value) }));
    const after = insertIceOff(file, text, written, problems);
    if (after !== undefined) lakes.push({ file, before: text, after, rows: written.map((row) => row.text) });
  }
  problems.push(...mostOf(inTable.toSorted((a, b) => a.line - b.line || a.column - b.column)));
  return { lakes: problems.some(isError) ? [] : lakes, already, problems };
}
