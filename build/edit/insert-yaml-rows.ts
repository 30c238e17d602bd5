import { isDeepStrictEqual } from "node:util";
import { errorAt, startOf } from "../input/problem.ts";
import { lineStarts, readYaml, type YamlDocument } from "../input/yaml/yaml-document.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";

/** A row as it is written behind its dash: `{ season: 2017, on: 2017-05-09 }`. */
type IceOffText = string;

const KEY = "iceOff";
/** Lines behind the last value of a list in which its row may still go on. */
const LINES_TO_TRY = 10;

const IN_BRACKETS: Fault = {
  code: "list-in-brackets",
  message: "the rows of iceOff stand in square brackets: none can be added behind them",
  hint: "write each row on a line of its own behind a dash",
};
const NO_ROOM: Fault = {
  code: "cannot-add-rows",
  message: "no rows can be added to this file without changing what is there",
  hint: "write iceOff as a list, each row on a line of its own behind a dash",
};

/** The data without spaces at the ends of texts: a line more behind a text is no change of it. */
const plain = (data: unknown): string =>
  JSON.stringify(data, (_, value: unknown) => (typeof value === "string" ? value.trimEnd() : value));

const isGroup = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === "object" && data !== null && !Array.isArray(data);

/** Offsets at which the lines begin, and the end of the text. */
const lineBounds = (text: string): number[] => [...new Set([...lineStarts(text), text.length])];

/** The line, from 1, on which the last thing known of the row begins. */
function lastLineOf(row: unknown, index: number, doc: YamlDocument): number {
  const keys = isGroup(row) ? Object.keys(row) : [];
  return Math.max(...[[], ...keys.map((key) => [key])].map((rest) => doc.spot([KEY, index, ...rest]).line));
}

/** An empty list in brackets, with the spaces before it. */
const NOTHING_IN_BRACKETS = / *\[[ \t]*\]/y;
const USUAL_INDENT = 2;

/** Where rows go: those of an empty list take the place of its brackets. */
interface Place {
  readonly text: string;
  readonly offset: number;
  /** Columns before the dash. */
  readonly indent: number;
  /** What stands before the first row, its key where the list is new. */
  readonly before: string;
}

function inPlaceOfBrackets(text: string, line: number, keyIndent: number): Place[] {
  const lineStart = lineBounds(text)[line - 1] ?? 0;
  NOTHING_IN_BRACKETS.lastIndex = text.indexOf(":", lineStart) + 1;
  if (!NOTHING_IN_BRACKETS.test(text)) return [];
  const end = NOTHING_IN_BRACKETS.lastIndex;
  const kept = text.slice(0, text.indexOf(":", lineStart) + 1) + text.slice(end);
  return [
    {
      text: kept,
      offset: lineBounds(kept)[line] ?? kept.length,
      indent: keyIndent + USUAL_INDENT,
      before: "",
    },
  ];
}

function placesFor(text: string, doc: YamlDocument, data: Readonly<Record<string, unknown>>): Place[] {
  const list = data[KEY];
  if (!doc.has(KEY)) {
    const [first = ""] = Object.keys(data);
    const indent = doc.keySpot([first]).column - 1;
    return [
      { text, offset: text.length, indent: indent + USUAL_INDENT, before: `${" ".repeat(indent)}${KEY}:` },
    ];
  }
  const key = doc.keySpot([KEY]);
  if (!Array.isArray(list)) return [];
  if (list.length === 0) return inPlaceOfBrackets(text, key.line, key.column - 1);
  const last = list.length - 1;
  const starts = lineBounds(text);
  const line = lastLineOf(list[last], last, doc);
  return starts
    .slice(line, line + LINES_TO_TRY)
    .map((offset) => ({ text, offset, indent: doc.keySpot([KEY, last]).column - 1, before: "" }));
}

function withRows(rows: readonly IceOffText[], { text, offset, indent, before }: Place): string {
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const head = text.slice(0, offset);
  const lines = [...(before === "" ? [] : [before]), ...rows.map((row) => `${" ".repeat(indent)}- ${row}`)];
  const gap = head === "" || /[\r\n]$/.test(head) ? "" : lineEnd;
  return `${head}${gap}${lines.map((line) => line + lineEnd).join("")}${text.slice(offset)}`;
}

/**
 * A lake file's text with rows behind those of `iceOff`, or with such a list at its end; all that was there stays as it
 * is, letter by letter, but for the brackets of an empty list. Undefined, with a problem, where the file's form does not allow that.
 * @param rows none that the file holds already
 */
export function insertIceOff(
  file: string,
  text: string,
  rows: readonly { readonly text: IceOffText; readonly value: object }[],
  problems: Diagnostic[],
): string | undefined {
  const doc = readYaml(file, text, problems);
  if (doc === undefined) return undefined;
  const { data } = doc;
  const at = doc.spot([KEY]);
  const start = (lineBounds(text)[at.line - 1] ?? 0) + at.column - 1;
  const list = isGroup(data) && Array.isArray(data[KEY]) ? data[KEY] : [];
  if (list.length > 0 && text[start] === "[") {
    problems.push(errorAt(at, IN_BRACKETS));
    return undefined;
  }
  const wanted = isGroup(data) && plain({ ...data, [KEY]: [...list, ...rows.map(({ value }) => value)] });
  const texts = rows.map((row) => row.text);
  for (const place of isGroup(data) ? placesFor(text, doc, data) : []) {
    const next = withRows(texts, place);
    const read = readYaml(file, next, []);
    if (read !== undefined && plain(read.data) === wanted) return next;
  }
  problems.push(errorAt(doc.has(KEY) ? at : startOf(file), NO_ROOM));
  return undefined;
}

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
