import { access, appendFile, mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { type EditContext, readEditContext } from "../edit/edit-context.ts";
import { textToAppend } from "../edit/insert-yaml-rows.ts";
import { type Answers, blankReport, keyDescription, reportText, withAnswer } from "../edit/report-entry.ts";
import { editorSchemas, type ScaffoldClub, type ScaffoldKind, scaffold } from "../edit/scaffold.ts";
import { reportsHeader } from "../edit/scaffold-templates.ts";
import { writeAll } from "../edit/write-files.ts";
import { findLakeSlug, slugOf } from "../input/names.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import { isFault } from "../model/fault.ts";
import type { ReportKey } from "../model/fields/report-fields.ts";
import { COLUMN_KEYS } from "../model/fields/report-form.ts";
import { type Effects, EXIT, type Exit, type Prompter } from "./effects.ts";
import { shellQuoted } from "./npm-invocation.ts";

export interface NewRequest {
  readonly kind: ScaffoldKind;
  readonly name: string;
  readonly dataDir: string;
}

/** The club a file is begun for; for a new club, one of this year. Undefined, with its problems told, when there is none. */
async function clubFor({ kind, dataDir }: NewRequest, effects: Effects): Promise<ScaffoldClub | undefined> {
  const today = effects.today();
  if (kind === "club") return { season: Number(today.slice(0, 4)), side: "north", lakes: [] };
  const { desk, problems } = await readEditContext(dataDir, today);
  if (desk === undefined) for (const problem of problems) effects.warn(formatDiagnostic(problem));
  return desk && { season: desk.season, side: desk.side, lakes: desk.sources.lakes.map(({ slug }) => slug) };
}

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );

function sayNext(dir: string, firstFile: string, effects: Effects): void {
  const data = `--data ${shellQuoted(dir)}`;
  effects.warn(`It can be built at once: npm run guide -- ${data}`);
  effects.warn(`Then put your own lake into ${firstFile}; npm run check -- ${data} says what is wrong.`);
}

/** Where a new club is made, and its name: a name with a slash is the folder itself. */
const clubPlace = (name: string): { readonly dir: string; readonly name: string } =>
  /[\\/]/.test(name)
    ? { dir: path.normalize(name), name: path.basename(path.resolve(name)) }
    : { dir: slugOf(name), name };

/** Writes ready-to-edit files and the schemas that explain their keys; never over a file of the club's. */
export async function newCommand(request: NewRequest, effects: Effects): Promise<Exit> {
  const { kind, name, dataDir } = request;
  if (name === "") {
    effects.warn(`Give it a name: npm run new -- ${kind} "A name"`);
    return EXIT.badUsage;
  }
  const place = kind === "club" ? clubPlace(name) : undefined;
  const slug = slugOf(place?.name ?? name);
  if (slug === "") {
    effects.warn(`“${name}” gives no file name: use a name with letters or digits in it.`);
    return EXIT.badUsage;
  }
  const club = await clubFor(request, effects);
  if (club === undefined) return EXIT.badUsage;
  const root = place?.dir ?? dataDir;
  const files = scaffold(kind, place?.name ?? name, club).map((file) => ({
    ...file,
    path: path.join(root, place === undefined ? file.path : path.relative(slug, file.path)),
  }));
  for (const file of place === undefined ? files.map((target) => target.path) : [root]) {
    if (!(await exists(file))) continue;
    effects.warn(`${file} is there already: choose another name.`);
    return EXIT.badUsage;
  }
  try {
    await writeAll(".", files);
    await writeAll(root, editorSchemas());
  } catch (error) {
    effects.warn(`cannot write ${root}: ${error instanceof Error ? error.message : error}`);
    return EXIT.cannotWrite;
  }
  for (const file of files) effects.say(file.path);
  const lake = files.find((file) => file.path.includes(`lakes${path.sep}`));
  if (kind === "club" && lake !== undefined) sayNext(root, lake.path, effects);
  return EXIT.done;
}

export interface NewReportRequest {
  /** The lake's name or file name; "" when none was given. */
  readonly lake: string;
  readonly dataDir: string;
  readonly mayAsk: boolean;
}

/** How a cell of a form is written, where the schema shows a list. */
const HOW: Partial<Readonly<Record<ReportKey, string>>> = {
  lake: "Its name or file name.",
  caught: "Such as: pale-scud 4 in 3 h; bloodworm 0",
  samples: "Such as: scud 12, leech 1; scud 5; empty",
};

const question = (key: ReportKey, desk: EditContext): string =>
  `${key}: ${HOW[key] ?? keyDescription(key)}${key === "date" ? ` [${desk.date}]` : ""}\n> `;

/** Asks for one field until the answer can be read or nothing is answered; undefined when there are no more answers. */
async function askFor(
  key: ReportKey,
  answers: Answers,
  desk: EditContext,
  asker: Prompter,
  effects: Effects,
): Promise<Answers | undefined> {
  for (;;) {
    const written = await asker.ask(question(key, desk));
    if (written === undefined) return undefined;
    if (written === "" && key !== "lake" && key !== "date") return answers;
    const text = written === "" && key === "date" ? desk.date : written;
    const { answers: next, problems } = withAnswer(desk, answers, key, text);
    for (const { message, hint } of problems) effects.warn(`${message}\n    ${hint}`);
    if (!problems.some(({ severity }) => severity === "error")) return next;
  }
}

/** The fields one after another; undefined when the answers end before the last field. */
async function askForRow(
  known: Answers,
  desk: EditContext,
  asker: Prompter,
  effects: Effects,
): Promise<Answers | undefined> {
  effects.warn(
    `A report for ${desk.file}. An empty answer leaves a field out; Ctrl-D leaves without writing.`,
  );
  let answers = known;
  for (const key of COLUMN_KEYS) {
    if (key in known) continue;
    const next = await askFor(key, answers, desk, asker, effects);
    if (next === undefined) return undefined;
    answers = next;
  }
  return answers;
}

/** Puts a row at the end of the season's file, or begins the file; what is there stays as it is. */
async function writeRow(row: string, desk: EditContext, dataDir: string, effects: Effects): Promise<Exit> {
  const file = path.join(dataDir, desk.file);
  if (desk.text === undefined) {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, `${reportsHeader(desk.season)}\n${row}`, { flag: "wx" });
    await writeAll(dataDir, editorSchemas());
  } else {
    const added = textToAppend(desk.file, desk.text, row);
    if (added === undefined) {
      effects.warn(
        `${file} cannot take another row at its end. Mend it (npm run check), or write this there:\n${row}`,
      );
      return EXIT.badUsage;
    }
    await appendFile(file, added);
  }
  effects.say(file);
  return EXIT.done;
}

/** Writes one more report into the season's file: asked for field by field at a terminal, else to fill in. */
export async function newReportCommand(request: NewReportRequest, effects: Effects): Promise<Exit> {
  const { desk, problems } = await readEditContext(request.dataDir, effects.today());
  if (desk === undefined) {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    return EXIT.badUsage;
  }
  const { lakes, patterns } = desk.sources;
  const [only, second] = lakes;
  const called = findLakeSlug(
    request.lake === "" && second === undefined ? (only?.slug ?? "") : request.lake,
    lakes,
  );
  const asker = request.mayAsk ? effects.openAsker?.() : undefined;
  if (isFault(called) && (request.lake !== "" || asker === undefined)) {
    effects.warn(request.lake === "" ? `Name the lake. ${called.hint}` : `${called.message}: ${called.hint}`);
    asker?.close();
    return EXIT.badUsage;
  }
  const lake = isFault(called) ? undefined : called;
  if (asker === undefined)
    return writeRow(blankReport(lake ?? "", desk.date, patterns[0]?.slug), desk, request.dataDir, effects);
  try {
    const answers = await askForRow(lake === undefined ? {} : { lake }, desk, asker, effects);
    if (answers !== undefined) return await writeRow(reportText(answers), desk, request.dataDir, effects);
    effects.warn("Nothing was written.");
    return EXIT.badUsage;
  } finally {
    asker.close();
  }
}
