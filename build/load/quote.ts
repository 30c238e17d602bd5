const LONGEST = 40;

/** What somebody wrote, on one line and shortened where it is long. */
export function shortened(text: string): string {
  const line = text.slice(0, 4 * LONGEST).replace(/[\p{Cc}\s]+/gu, " ");
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}

/** The same in quotation marks. */
export const quoted = (text: string): string => `“${shortened(text)}”`;

/** A value on one line; never by its own idea of a text, for a club's group may have a key “toString”. */
export const asWritten = (raw: unknown): string =>
  typeof raw === "object" && raw !== null ? JSON.stringify(raw) : String(raw);
