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
export type Unread = () => Fault;
export const unread =
  (fault: Fault): Unread =>
  () =>
    fault;
export const isUnread = (value: unknown): value is Unread => typeof value === "function";

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
export const inReadingOrder = (problems: readonly Diagnostic[]): Diagnostic[] =>
  problems.toSorted(
    (a, b) =>
      (fileRank(a.file) < fileRank(b.file) ? -1 : fileRank(a.file) > fileRank(b.file) ? 1 : 0) ||
      a.line - b.line ||
      a.column - b.column,
  );
