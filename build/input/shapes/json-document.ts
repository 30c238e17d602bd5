import jsonc from "jsonc-parser";
import type { Diagnostic, SourceSpot } from "../../model/diagnostic.ts";
import { errorAt, startOf } from "../problem.ts";
import { spotter } from "../yaml/yaml-document.ts";

/** Keys and list positions (from 0) that lead to a value. */
export type JsonPath = readonly (string | number)[];

/** A JSON file read as data, with the place of every value. */
export interface JsonDocument {
  readonly file: string;
  readonly data: unknown;
  /** Where the value at `path` stands; where nothing is written, the group it belongs in. Reads the whole file once more. */
  spot(path: JsonPath): SourceSpot;
  /** The same, but only the beginning of a large file: for places that are kept and hardly ever shown. */
  roughSpot(path: JsonPath): SourceSpot;
}

const WANTED: Readonly<Record<string, string>> = {
  PropertyNameExpected: "a name in quotes belongs here",
  ValueExpected: "a value belongs here",
  ColonExpected: "a colon is missing before this",
  CommaExpected: "a comma is missing before this",
  CloseBraceExpected: "a closing } is missing before this",
  CloseBracketExpected: "a closing ] is missing before this",
  EndOfFileExpected: "the file goes on after its end",
  UnexpectedEndOfString: "a closing quote is missing",
};

function refusal(file: string, text: string): Diagnostic {
  const errors: jsonc.ParseError[] = [];
  jsonc.parse(text, errors, { disallowComments: true });
  const [first] = errors;
  const wanted = first && WANTED[jsonc.printParseErrorCode(first.error)];
  return errorAt(first === undefined ? startOf(file) : spotter(file, text)(first.offset), {
    code: "not-json",
    message: `this is not JSON: ${wanted ?? "it cannot be read from here on"}`,
    hint: /^\s*</.test(text)
      ? "this looks like KML, GPX or a web page: export it again, as GeoJSON"
      : "export the file again, or correct this place",
  });
}

/** Characters. */
const LARGE = 1_000_000;

/** GeoJSON nests no deeper than nine; what reads places would fail at some thousand. */
const DEEPEST = 100;

/** Where brackets are nested too deep; undefined where they are not. Brackets in strings do not count. */
function tooDeepAt(text: string): number | undefined {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '"') {
      for (i++; i < text.length && text[i] !== '"'; i++) if (text[i] === "\\") i++;
    } else if (sign === "[" || sign === "{") {
      if (++depth > DEEPEST) return i;
    } else if (sign === "]" || sign === "}") depth--;
  }
  return undefined;
}

/** Reads one JSON file; undefined, with a problem, when it is none. Places are only looked up when asked for. */
export function readJson(file: string, text: string, problems: Diagnostic[]): JsonDocument | undefined {
  const tooDeep = tooDeepAt(text);
  if (tooDeep !== undefined) {
    problems.push(
      errorAt(spotter(file, text)(tooDeep), {
        code: "json-too-deep",
        message: "brackets are nested deeper than any GeoJSON needs",
        hint: "export the file again",
      }),
    );
    return undefined;
  }
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    problems.push(refusal(file, text));
    return undefined;
  }
  let tree: jsonc.Node | undefined;
  const spotOf = spotter(file, text);
  const spot = (path: JsonPath): SourceSpot => {
    tree ??= jsonc.parseTree(text);
    for (let length = path.length; tree !== undefined && length > 0; length--) {
      const node = jsonc.findNodeAtLocation(tree, path.slice(0, length));
      if (node !== undefined) return spotOf(node.offset);
    }
    return startOf(file);
  };
  return { file, data, spot, roughSpot: (path) => (text.length > LARGE ? startOf(file) : spot(path)) };
}
