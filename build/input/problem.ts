import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";

/** What is wrong with a value, before anybody knows where it stands. */
export interface Fault {
  /** Stable kebab-case name of the kind of problem. */
  readonly code: string;
  readonly message: string;
  readonly hint: string;
}

export const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && "code" in value && "message" in value && "hint" in value;

/** Stands where a value should, and says why there is none. No schema takes a function for a value. */
export type InvalidValue = () => Fault;
export const invalidValue =
  (fault: Fault): InvalidValue =>
  () =>
    fault;
export const isInvalidValue = (value: unknown): value is InvalidValue => typeof value === "function";

const at = (
  severity: Diagnostic["severity"],
  { file, line, column }: SourceSpot,
  fault: Fault,
): Diagnostic => ({
  file,
  line,
  column,
  severity,
  ...fault,
});

/** A problem that stops the build. */
export const errorAt = (where: SourceSpot, fault: Fault): Diagnostic => at("error", where, fault);

/** A problem the build can live with. */
export const warningAt = (where: SourceSpot, fault: Fault): Diagnostic => at("warning", where, fault);

/** A problem of a whole file. */
export const startOf = (file: string): SourceSpot => ({ file, line: 1, column: 1 });

const fileRank = (file: string): string => (file === "club.yaml" ? "" : file);

/** In reading order: club.yaml first, then by file, line and column. */
export const sortProblems = (problems: readonly Diagnostic[]): Diagnostic[] =>
  problems.toSorted(
    (a, b) =>
      (fileRank(a.file) < fileRank(b.file) ? -1 : fileRank(a.file) > fileRank(b.file) ? 1 : 0) ||
      a.line - b.line ||
      a.column - b.column,
  );

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
