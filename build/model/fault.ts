/** What is wrong with a value, not yet tied to a place in a file. */
export interface Fault {
  /** Stable kebab-case name of the kind of problem. */
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

export const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && "code" in value && "message" in value && "hint" in value;

const LONGEST = 40;

/** A club's own text on one line, shortened where it is long. */
export function shortened(text: string): string {
  const line = text.slice(0, 4 * LONGEST).replace(/[\p{Cc}\s]+/gu, " ");
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}

/** The same in quotation marks. */
export const quoted = (text: string): string => `“${shortened(text)}”`;

/** A value on one line. Objects go through JSON: a club's group may have a key “toString”. */
export const asWritten = (raw: unknown): string =>
  typeof raw === "object" && raw !== null ? JSON.stringify(raw) : String(raw);
