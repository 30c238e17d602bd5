const LONGEST = 40;

/** What somebody wrote, in quotation marks and on one line, shortened where it is long. */
export function quoted(text: string): string {
  const line = text.slice(0, 4 * LONGEST).replace(/[\p{Cc}\s]+/gu, " ");
  return `“${line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line}”`;
}
