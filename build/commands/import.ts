import { readFile } from "node:fs/promises";
import path from "node:path";
import { type IceOffImport, planIceOffImport } from "../edit/import-ice-off.ts";
import { replaceFiles } from "../edit/write-files.ts";
import { textOf } from "../input/folder.ts";
import { formatDiagnostic, printable } from "../model/diagnostic.ts";
import { isFault } from "../model/fault.ts";
import { counted, type Effects, EXIT, type Exit } from "./effects.ts";

export interface ImportRequest {
  /** The table, a CSV file. */
  readonly table: string;
  readonly dataDir: string;
  /** Says what would be added, and writes nothing. */
  readonly isDryRun: boolean;
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The table's text; undefined, with a word about it, when it cannot be read. */
async function tableText(table: string, effects: Effects): Promise<string | undefined> {
  try {
    const text = textOf(await readFile(table), true);
    if (!isFault(text)) return text;
    effects.warn(`${printable(table)}: ${text.message}: ${text.hint}`);
  } catch (error) {
    effects.warn(`cannot read ${printable(table)}: ${messageOf(error)}`);
  }
  return undefined;
}

function sayRows({ lakes, already }: IceOffImport, isDryRun: boolean, effects: Effects): void {
  for (const { file, rows } of lakes) for (const row of rows) effects.say(`${file}: - ${row}`);
  const rows = lakes.reduce((sum, lake) => sum + lake.rows.length, 0);
  const done = isDryRun ? "would be added; nothing was written" : "added";
  effects.say(
    `${counted(rows, "row")} of ${counted(lakes.length, "lake")} ${done} (${already} there already)`,
  );
}

/** Adds the ice-off days of a table to the lakes' own files: every row, or none where one is wrong. */
export async function importCommand(request: ImportRequest, effects: Effects): Promise<Exit> {
  const { table, dataDir, isDryRun } = request;
  const text = await tableText(table, effects);
  if (text === undefined) return EXIT.badUsage;
  const plan = await planIceOffImport(dataDir, { file: table, slug: "", text });
  for (const problem of plan.problems) effects.warn(formatDiagnostic(problem));
  if (plan.problems.some(({ severity }) => severity === "error")) {
    effects.warn("Nothing was written: correct the rows and import the whole table again.");
    return EXIT.badData;
  }
  if (!isDryRun)
    try {
      await replaceFiles(plan.lakes.map((lake) => ({ ...lake, file: path.join(dataDir, lake.file) })));
    } catch (error) {
      effects.warn(`cannot write into ${dataDir}: ${messageOf(error)}`);
      return EXIT.cannotWrite;
    }
  sayRows(plan, isDryRun, effects);
  return EXIT.done;
}
