import { isDeepStrictEqual } from "node:util";
import type { Diagnostic } from "../model/diagnostic.ts";
import { readYaml } from "./yaml-document.ts";

/** The rows of a file of reports; none of an empty one, undefined where it is no list. */
function rowsOf(file: string, text: string): readonly unknown[] | undefined {
  const problems: Diagnostic[] = [];
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return problems.every(({ code }) => code === "empty-file") ? [] : undefined;
  return Array.isArray(doc.data) ? doc.data : undefined;
}

/** Spaces before the dash of the list's rows. */
function indentOf(file: string, text: string): string {
  const doc = readYaml(file, text, []);
  const column = doc === undefined ? 1 : doc.keySpot([0]).column;
  return " ".repeat(column - 1);
}

/**
 * What to put behind a file's text so that it holds one more row; what is there stays as it is. Undefined when the file
 * cannot take it: it is broken, or not a list with one row behind a dash.
 */
export function textToAppend(file: string, text: string, row: string): string | undefined {
  const before = rowsOf(file, text);
  if (before === undefined) return undefined;
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const indent = indentOf(file, text);
  const lines = row.split("\n").map((line) => (line === "" ? line : indent + line));
  const added = `${/[\r\n]$/.test(text) || text === "" ? "" : lineEnd}${lines.join(lineEnd)}`;
  const after = rowsOf(file, text + added);
  const isWhole =
    after?.length === before.length + 1 && isDeepStrictEqual(after.slice(0, before.length), before);
  return isWhole ? added : undefined;
}
