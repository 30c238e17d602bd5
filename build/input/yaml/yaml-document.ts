import { constructFromEvents, EVENT_ID, type Event, parseEvents, YAMLException } from "js-yaml";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import type { Fault } from "../../model/fault.ts";
import { errorAt, startOf } from "../problem.ts";
import { type Entry, type Place, placesOf } from "./yaml-places.ts";
import { isOfLineBefore, mayBeUnclosed, unclosed, unclosedBefore, yamlFault } from "./yaml-syntax-faults.ts";

/** Keys and list positions (from 0) that lead to a value. */
export type Path = readonly PropertyKey[];

/** A file read as data, with the place of every key and value. */
export interface PlacedData {
  readonly file: string;
  readonly data: unknown;
  /** Where the value at `path` stands; where nothing is written, its key or the group it belongs in. */
  spot(path: Path): SourceSpot;
  /** Where the key that ends `path` stands. */
  keySpot(path: Path): SourceSpot;
}

/** A YAML file read as data. */
export interface YamlDocument extends PlacedData {
  /** True when the file has this key, whatever its value. */
  has(key: string): boolean;
}

/** Deeper than any club file needs: its deepest value is five steps down. */
const MAX_DEPTH = 12;

const EMPTY_FILE: Fault = {
  code: "empty-file",
  message: "the file is empty",
  hint: "fill it in, or delete it",
};
const SEVERAL_DOCUMENTS: Fault = {
  code: "several-documents",
  message: "a second document begins here",
  hint: "remove this line, or move what follows to a file of its own",
};

/** Characters of a line that are looked at to say what is wrong with it. */
const NEARBY = 500;

export type SpotOf = (offset: number) => SourceSpot;

/** Offsets at which the lines begin; the last may be the text's end. */
export const lineStarts = (text: string): number[] => [
  0,
  ...[...text.matchAll(/\r\n|\n|\r/g)].map((match) => match.index + match[0].length),
];

export function spotter(file: string, text: string): SpotOf {
  const starts = lineStarts(text);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { file, line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
  };
}

/** Offset of the line that begins the second document; undefined when there is only one. */
function secondDocumentStart(text: string, events: readonly Event[]): number | undefined {
  const documents = events.filter((event) => event.type === EVENT_ID.DOCUMENT);
  if (documents.length < 2) return undefined;
  const marks = [...text.matchAll(/^(?:---|\.\.\.)(?=\s|$)/gm)].map(({ index }) => index);
  return marks[documents[0]?.explicitStart === true ? 1 : 0] ?? 0;
}

function finder(root: Place, spotOf: SpotOf): Omit<YamlDocument, "file" | "data"> {
  const entryAt = (path: Path): Entry =>
    path.reduce<Entry>((entry, step) => entry.value.entries.get(String(step)) ?? entry, {
      keyStart: root.start,
      value: root,
    });
  return {
    spot: (path) => spotOf(entryAt(path).value.start),
    keySpot: (path) => spotOf(entryAt(path).keyStart),
    has: (key) => root.entries.has(key),
  };
}

const lastLineStart = (text: string): number => {
  const end = text.trimEnd().length;
  return Math.max(text.lastIndexOf("\n", end - 1), text.lastIndexOf("\r", end - 1)) + 1;
};

function refusal(error: unknown, text: string, spotOf: SpotOf): Diagnostic {
  if (!(error instanceof YAMLException) || error.mark === undefined) throw error;
  const { position } = error.mark;
  const before =
    text
      .slice(Math.max(0, position - NEARBY), position)
      .split(/[\r\n]/)
      .at(-1) ?? "";
  const rest = text.slice(position, position + NEARBY).split(/[\r\n]/)[0] ?? "";
  const spot = spotOf(position);
  const open = mayBeUnclosed(error.reason) ? unclosedBefore(text, position) : undefined;
  if (open !== undefined) return errorAt(spotOf(open.offset), unclosed(open.sign));
  const place = isOfLineBefore(error.reason)
    ? spotOf(lastLineStart(text.slice(0, position - spot.column + 1)))
    : spot;
  const above =
    text
      .slice(0, position - before.length)
      .split(/[\r\n]+/)
      .findLast((line) => /^\s*[^\s#]/.test(line)) ?? "";
  return errorAt(place, yamlFault(error.reason, { above, before, rest }));
}

/**
 * Reads one YAML file strictly: one document, no aliases, no tags, no key twice. Undefined, with a problem, when the
 * file cannot be read as data.
 */
export function readYaml(file: string, text: string, problems: Diagnostic[]): YamlDocument | undefined {
  const spotOf = spotter(file, text);
  const refuse = (where: SourceSpot, fault: Fault): undefined => {
    problems.push(errorAt(where, fault));
    return undefined;
  };
  try {
    const events = parseEvents(text, { maxDepth: MAX_DEPTH });
    if (events.length === 0) return refuse(startOf(file), EMPTY_FILE);
    const second = secondDocumentStart(text, events);
    if (second !== undefined) return refuse(spotOf(second), SEVERAL_DOCUMENTS);
    let isUsable = true;
    const root = placesOf(text, events, {
      refuse: (offset, fault) => {
        // A key written twice does not hide the file's other problems: the later one is read.
        if (fault.code !== "duplicate-key") isUsable = false;
        refuse(spotOf(offset), fault);
      },
      lineOf: (offset) => spotOf(offset).line,
    });
    if (!isUsable) return undefined;
    const [data] = constructFromEvents(events, { source: text, maxAliases: 0, json: true });
    return { file, data, ...finder(root, spotOf) };
  } catch (error) {
    problems.push(refusal(error, text, spotOf));
    return undefined;
  }
}
