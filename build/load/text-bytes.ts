import type { Fault } from "./problem.ts";

const UTF_8 = new TextDecoder("utf-8", { fatal: true });
const WIDE = {
  little: new TextDecoder("utf-16le", { fatal: true }),
  big: new TextDecoder("utf-16be", { fatal: true }),
} as const;

const NOT_UTF8: Fault = {
  code: "not-utf8",
  message: "the file is not saved as UTF-8 text",
  hint: "save it again in your editor with the encoding UTF-8",
};
const TABLE_NOT_UTF8: Fault = {
  ...NOT_UTF8,
  hint: "save it from the spreadsheet as “CSV UTF-8”, or choose the encoding UTF-8 where it asks",
};

/** A byte order mark of UTF-16 at the beginning, which spreadsheets write into the text files they call Unicode. */
function widthOf([first, second]: Uint8Array): keyof typeof WIDE | undefined {
  if (first === 0xff && second === 0xfe) return "little";
  return first === 0xfe && second === 0xff ? "big" : undefined;
}

/**
 * A file's text, without a byte order mark; what to say where its bytes are no UTF-8. A table may be UTF-16 if it says
 * so; it is never guessed at, for a wrong guess turns letters into other letters.
 */
export function textOf(bytes: Uint8Array, isTable: boolean): string | Fault {
  const width = isTable ? widthOf(bytes) : undefined;
  const fault = isTable ? TABLE_NOT_UTF8 : NOT_UTF8;
  try {
    const text = (width === undefined ? UTF_8 : WIDE[width]).decode(bytes);
    // UTF-16 without its mark is read as UTF-8 with a zero byte behind every letter.
    return isTable && text.includes("\u0000") ? fault : text;
  } catch (error) {
    if (error instanceof TypeError) return fault; // how a strict decoder says that the bytes are none of its own
    throw error;
  }
}
