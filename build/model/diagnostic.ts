/** A place in a file of the club folder. */
export interface SourceSpot {
  /** Relative to the club folder, with forward slashes. */
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
}

/** One thing wrong, or doubtful, in the club's own data. */
export interface Diagnostic extends SourceSpot {
  readonly severity: "error" | "warning";
  /** Stable kebab-case name of the kind of problem. */
  readonly code: string;
  /** What was found. */
  readonly message: string;
  /** What to write instead. */
  readonly hint: string;
}

/** Controls (C0, C1), line separators, and marks that turn the direction of what follows (Unicode, UAX 9). */
const UNPRINTABLE = /[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/gu;

/** A club's text on one line of a terminal, which it cannot command: U+FFFD stands for what does not print. */
export const printable = (text: string): string => text.replace(UNPRINTABLE, "\ufffd");

/** `FILE:LINE:COLUMN severity CODE message`, the hint indented on the next line; {@link printable}. */
export const formatDiagnostic = (d: Diagnostic): string =>
  `${printable(`${d.file}:${d.line}:${d.column} ${d.severity} ${d.code} ${d.message}`)}\n    ${printable(d.hint)}`;
