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

/** `FILE:LINE:COLUMN severity CODE message`, the hint indented on the next line. */
export const formatDiagnostic = (d: Diagnostic): string =>
  `${d.file}:${d.line}:${d.column} ${d.severity} ${d.code} ${d.message}\n    ${d.hint}`;
