import type { Diagnostic, SourceSpot } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";

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
