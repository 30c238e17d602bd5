import { readFile } from "node:fs/promises";
import path from "node:path";
import type { Diagnostic } from "../model/diagnostic.ts";
import { readYaml } from "./yaml/yaml-document.ts";

/** A problem of one key of a club's file that was found long after the file was read. */
interface FieldProblem extends Diagnostic {
  readonly field: string;
}

/** Fields that go by another name than their key. */
const KEYS: Readonly<Record<string, string>> = { "club name": "name" };

/** A card's problem without the card and how much is too much. */
const alike = (message: string): string => message.replace(/^card \S+, /, "").replace(/\d+/g, "");

/**
 * The same problems, each at its key's line where the file has that key; what is said of one key on both sides or on several
 * cards is said once.
 */
export async function placeAtFields(
  dataDir: string,
  problems: readonly FieldProblem[],
): Promise<Diagnostic[]> {
  const texts = new Map<string, string | undefined>();
  for (const { file } of problems)
    if (file.endsWith(".yaml") && !texts.has(file))
      texts.set(file, await readFile(path.join(dataDir, file), "utf8").catch(() => undefined));
  const said = new Set<string>();
  return problems.flatMap(({ field, ...problem }) => {
    const words = JSON.stringify([problem.file, field, alike(problem.message), problem.hint]);
    if (said.has(words)) return [];
    said.add(words);
    const text = texts.get(problem.file);
    const doc = text === undefined ? undefined : readYaml(problem.file, text, []);
    const key = KEYS[field] ?? field;
    return [doc?.has(key) === true ? { ...problem, ...doc.keySpot([key]) } : problem];
  });
}
