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

/** Problems of one kind that are listed one by one; a wrong date format would fill the screen. */
const MOST_IN_TABLE = 10;
const MOST_IN_FILE = 100;

/** The same problems; of one kind in one file, those after the first `most` are counted. */
export function limitPerCode(problems: readonly Diagnostic[], most = MOST_IN_TABLE): Diagnostic[] {
  const same = new Map<string, Diagnostic[]>();
  for (const problem of problems) {
    const kind = `${problem.file} ${problem.code}`;
    const alike = same.get(kind);
    if (alike === undefined) same.set(kind, [problem]);
    else alike.push(problem);
  }
  return [...same.values()].flatMap((alike) => {
    const [first, ...rest] = alike.slice(most);
    if (first === undefined) return alike;
    return [
      ...alike.slice(0, most),
      {
        ...first,
        code: "more-rows",
        message: `${first.code} here and in ${rest.length} more places`,
        hint: "correct the first ones and look again",
      },
    ];
  });
}

const fileRank = (file: string): string => (file === "club.yaml" ? "" : file);

/** In reading order: club.yaml first, then by file, line and column. No file fills the screen with one kind of problem. */
export const sortProblems = (problems: readonly Diagnostic[]): Diagnostic[] =>
  limitPerCode(problems, MOST_IN_FILE).sort(
    (a, b) =>
      (fileRank(a.file) < fileRank(b.file) ? -1 : fileRank(a.file) > fileRank(b.file) ? 1 : 0) ||
      a.line - b.line ||
      a.column - b.column,
  );
