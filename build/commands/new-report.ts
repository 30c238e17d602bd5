import { appendFile, mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { type Effects, EXIT, type Exit } from "../effects.ts";
import { textToAppend } from "../load/append-report.ts";
import { lakeCalled } from "../load/named.ts";
import { isFault } from "../load/problem.ts";
import { type Answers, withAnswer } from "../load/report-answers.ts";
import { openReportDesk, type ReportDesk } from "../load/report-desk.ts";
import { REPORT_KEYS, type ReportKey } from "../load/report-form.ts";
import { reportText, reportToFillIn, wordsAbout } from "../load/report-row-text.ts";
import { editorSchemas } from "../load/scaffold.ts";
import { reportsHeader } from "../load/scaffold-texts.ts";
import { formatDiagnostic } from "../model/diagnostic.ts";
import type { Asker } from "./asker.ts";
import { writeAll } from "./write-all.ts";

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

const question = (key: ReportKey, desk: ReportDesk): string =>
  `${key}: ${HOW[key] ?? wordsAbout(key)}${key === "date" ? ` [${desk.date}]` : ""}\n> `;

/** Asks for one field until the answer can be read or nothing is answered; undefined when there are no more answers. */
async function askFor(
  key: ReportKey,
  answers: Answers,
  desk: ReportDesk,
  asker: Asker,
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
  desk: ReportDesk,
  asker: Asker,
  effects: Effects,
): Promise<Answers | undefined> {
  effects.warn(
    `A report for ${desk.file}. An empty answer leaves a field out; Ctrl-D leaves without writing.`,
  );
  let answers = known;
  for (const key of REPORT_KEYS) {
    if (key in known) continue;
    const next = await askFor(key, answers, desk, asker, effects);
    if (next === undefined) return undefined;
    answers = next;
  }
  return answers;
}

/** Puts a row at the end of the season's file, or begins the file; what is there stays as it is. */
async function writeRow(row: string, desk: ReportDesk, dataDir: string, effects: Effects): Promise<Exit> {
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
  const { desk, problems } = await openReportDesk(request.dataDir, effects.today());
  if (desk === undefined) {
    for (const problem of problems) effects.warn(formatDiagnostic(problem));
    return EXIT.badUsage;
  }
  const { lakes, patterns } = desk.sources;
  const [only, second] = lakes;
  const called = lakeCalled(
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
    return writeRow(reportToFillIn(lake ?? "", desk.date, patterns[0]?.slug), desk, request.dataDir, effects);
  try {
    const answers = await askForRow(lake === undefined ? {} : { lake }, desk, asker, effects);
    if (answers !== undefined) return await writeRow(reportText(answers), desk, request.dataDir, effects);
    effects.warn("Nothing was written.");
    return EXIT.badUsage;
  } finally {
    asker.close();
  }
}
