/** A quote or bracket that was opened, and where. */
export interface Opening {
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
