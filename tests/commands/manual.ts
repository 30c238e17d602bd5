import { readdir, readFile } from "node:fs/promises";
import path from "node:path";

/** A block of a page of the manual. */
interface Block {
  readonly language: string;
  /** What its opening line says behind the language: `file=lakes/a.yaml`, `add-to=club.yaml`, `beside=ice-off.csv`. */
  readonly about: string;
  readonly text: string;
}

export interface Page {
  readonly name: string;
  readonly text: string;
  readonly blocks: readonly Block[];
}

const MANUAL = "content/manual";
const FENCED = /^```(\w+)(?: (.+))?\n([\s\S]*?)^```$/gm;

const pageOf = (name: string, text: string): Page => ({
  name,
  text,
  blocks: [...text.matchAll(FENCED)].map(([, language = "", about = "", block = ""]) => ({
    language,
    about,
    text: block,
  })),
});

/** Every page of the manual, by name. */
export async function manualPages(): Promise<Page[]> {
  const names = (await readdir(MANUAL)).sort();
  return Promise.all(
    names.map(async (name) => pageOf(name, await readFile(path.join(MANUAL, name), "utf8"))),
  );
}

/** Commands that a text tells: lines set in or fenced, and code between backticks; each once, in order. */
export function commandsIn(text: string): string[] {
  const told = [
    ...text.matchAll(/^ {4}(npm .+)$|^((?:npm|cp) .+)$|`(npm (?:run|start|ci|test|pack|install)[^`]*)`/gm),
  ]
    .flatMap(([, setIn = "", fenced = "", code = ""]) => (setIn || fenced || code).split("&&"))
    .map((command) => command.trim());
  return [...new Set(told)];
}

/** The words of a command line, quotes undone. */
export const wordsOf = (command: string): string[] =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
