import type { Fault } from "../../model/fault.ts";

/** A quote or bracket that was opened, and where. */
interface Opening {
  readonly offset: number;
  readonly sign: string;
}

const CLOSING: Readonly<Record<string, string>> = { "[": "]", "{": "}", '"': '"', "'": "'" };
const isQuote = (sign: string): boolean => sign === '"' || sign === "'";

/** Texts of several lines behind “|” or “>”: nothing in them opens anything. */
const BLOCK_TEXT =
  /^(( *)(?:[^\s#].*)?[:-][ \t]+[|>][-+\d]*[ \t]*(?:#.*)?$)((?:\r?\n(?:\2[ \t]+.*|[ \t]*)$)*)/gm;
const blanked = (text: string): string => text.replace(/[^\r\n]/g, " ");

/** Where a quote ends, or the text; a quote inside is written with a backslash, or twice. */
function endOfQuote(text: string, start: number): number {
  const sign = text[start];
  for (let i = start + 1; i < text.length; i++) {
    if (sign === '"' && text[i] === "\\") i++;
    else if (text[i] === sign) {
      if (sign === '"' || text[i + 1] !== sign) return i;
      i++;
    }
  }
  return text.length;
}

/** The innermost quote or bracket that is open where a YAML text ends; a sign inside a plain text opens nothing. */
function openAtEnd(yaml: string): Opening | undefined {
  const text = yaml.replace(BLOCK_TEXT, (_, head: string, __, body: string) => head + blanked(body));
  const open: Opening[] = [];
  let isStart = true;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i] ?? "";
    if (/[\r\n]/.test(sign)) isStart = true;
    else if (sign === "#" && (i === 0 || /\s/.test(text[i - 1] ?? "")))
      while (i + 1 < text.length && !/[\r\n]/.test(text[i + 1] ?? "")) i++;
    else if (/\s/.test(sign)) continue;
    else if (isStart && isQuote(sign)) {
      const end = endOfQuote(text, i);
      if (end === text.length) return { offset: i, sign };
      i = end;
      isStart = false;
    } else if (/[[{]/.test(sign) && (isStart || open.length > 0)) {
      open.push({ offset: i, sign });
      isStart = true;
    } else if (/[\]}]/.test(sign)) {
      open.pop();
      isStart = false;
    } else
      isStart = (open.length > 0 && sign === ",") || (/[:-]/.test(sign) && /\s/.test(text[i + 1] ?? " "));
  }
  return open.at(-1);
}

/**
 * The quote or bracket that a parser found open at `offset`; undefined where none is, or where it is closed on its own line, and
 * something else is wrong.
 */
export function unclosedBefore(text: string, offset: number): Opening | undefined {
  const opening = openAtEnd(text.slice(0, offset));
  if (opening === undefined) return undefined;
  const line = /^.*/.exec(text.slice(opening.offset + 1))?.[0] ?? "";
  return line.includes(CLOSING[opening.sign] ?? "") ? undefined : opening;
}

interface Wording {
  readonly reason: RegExp;
  readonly fault: Fault;
}

const syntax = (message: string, hint: string): Fault => ({ code: "yaml-syntax", message, hint });

const INDENT = syntax(
  "this line does not line up with the lines around it",
  "begin the lines of one group below each other, with the same number of spaces before them, and write “key: value” with a space after the colon",
);
const ROWS_BELOW_EMPTY = syntax(
  "this row stands below “[]”, which is a list without rows",
  "remove the “[]” on the line above the rows",
);
const SPACE_LEFT = syntax(
  "there is a space too many before this line",
  "remove the space; where a line begins with #, remove both the # and the space behind it",
);

const NO_COLON = syntax(
  "this line is not of the form “key: value”",
  "write a space after the colon; indent the further lines of a long text, or put it in quotes",
);

/** True where the parser notices a bad line only on the next one. */
export const isOfLineBefore = (reason: string): boolean => /multiline key|separator is expected/.test(reason);

const UNCLOSED = /flow collection|deficient indentation|quoted scalar|found ','/;

/** True where a bracket or quote may stand open. */
export const mayBeUnclosed = (reason: string): boolean => UNCLOSED.test(reason);

/** A quote or bracket that nothing closes, at the place where it was opened. */
export const unclosed = (sign: string): Fault =>
  sign === "[" || sign === "{"
    ? syntax(
        `the bracket “${sign}” that is opened here is not closed`,
        `close it with “${sign === "[" ? "]" : "}"}” behind its last entry`,
      )
    : syntax(
        `the quote ${sign} that is opened here is not closed`,
        `write ${sign} at the end of the text, too`,
      );

/** What the YAML parser says, and what we say instead. */
const WORDINGS: readonly Wording[] = [
  {
    reason: /^tab characters/,
    fault: {
      code: "yaml-tab",
      message: "this line is indented with a tab",
      hint: "use spaces, two for each step",
    },
  },
  {
    reason: /^nesting exceeded/,
    fault: {
      code: "yaml-too-deep",
      message: "brackets are nested deeper than any club file needs",
      hint: "check for a “[” or “{” too many",
    },
  },
  {
    reason: /null byte|non-printable|valid JSON character/,
    fault: {
      code: "yaml-bad-character",
      message: "the file holds a character that cannot be printed",
      hint: "delete it; save the file as plain text, UTF-8",
    },
  },
  {
    reason: /escape sequence|hexadecimal/,
    fault: syntax(
      "a backslash inside double quotes begins a code that does not exist",
      "use single quotes, or write the backslash twice",
    ),
  },
  {
    reason: UNCLOSED,
    fault: syntax(
      "a comma is missing before here, or a bracket or quote is not closed",
      "write a comma between entries; close each “[” with “]”, each “{” with “}” and each quote",
    ),
  },
  { reason: /indentation/, fault: INDENT },
  { reason: /multiline key|expected ':'|separator is expected/, fault: NO_COLON },
];

const COLON_IN_TEXT = syntax(
  "there is a second colon on this line",
  'put a text that holds a colon in quotes: notes: "Launch: north shore"',
);
const TEXT_AFTER_QUOTE = syntax(
  "the quoted text ends before the end of the line",
  "put the whole text in quotes; inside single quotes write a quote twice: 'the club''s boat'",
);
const RESERVED_START = syntax(
  "a text without quotes cannot begin with * & ! @ % or `",
  "put the text in quotes",
);

/** The lines around the place the parser stopped at. */
interface Around {
  /** The last line above that holds anything but a note. */
  readonly above: string;
  /** What stands on the line before the place. */
  readonly before: string;
  /** What stands on the line from the place on. */
  readonly rest: string;
}

/** The parser's complaint in plain words. */
export function yamlFault(reason: string, { above, before, rest }: Around): Fault {
  if (/indentation/.test(reason) && /^\s*$/.test(before)) {
    if (/^-\s/.test(rest) && /:\s+\[\s*\]\s*(#.*)?$/.test(above)) return ROWS_BELOW_EMPTY;
    if (before === " " && /^[^\s#]/.test(above)) return SPACE_LEFT;
  }
  if (/^bad indentation of a mapping entry/.test(reason)) {
    if (/^:\s/.test(rest)) return COLON_IN_TEXT;
    if (/^[@%`]/.test(rest) || /[:-]\s+[*&!]\S*\s*$/.test(before)) return RESERVED_START;
    if (/[:-]\s+(["']).*\1\s*$/.test(before)) return TEXT_AFTER_QUOTE;
  }
  return (
    WORDINGS.find((wording) => wording.reason.test(reason))?.fault ??
    syntax(
      "this is not YAML that can be read",
      "compare with the lines above, and with a file of the demo club",
    )
  );
}
