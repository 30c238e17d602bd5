import { type Diagnostic, formatDiagnostic } from "../../build/model/diagnostic.ts";
import type { ClubFiles } from "./base-club.ts";

/** C0 and C1 controls, and what turns the direction of a terminal's text: none may reach one. */
const UNPRINTABLE = /[\p{Cc}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u;
const SLIPPED_THROUGH = /undefined|\[object|Invalid input|\bNaN\b/;
/** The club may have written as much itself. */
const OF_THE_CLUB = /undefined|\[object|Invalid input|\bnan\b/i;
const LONGEST = 1500;

/** What is wrong with a problem as it is told: its place, its name, its words. */
export function diagnosticFaults(
  problems: readonly Diagnostic[],
  files: ClubFiles,
  /** So many, from the first, are of the reader, which shortens what it quotes. */
  ofReader: number,
): string[] {
  const written = [...files.values()].map(String).join("\n");
  const linesOf = new Map<string, readonly string[]>();
  const linesIn = (file: string, text: string): readonly string[] => {
    const lines = linesOf.get(file) ?? text.split(/\r\n|\n|\r/);
    linesOf.set(file, lines);
    return lines;
  };
  return problems.flatMap((problem, i) => {
    const { file, line, column, code, message, hint } = problem;
    const content = files.get(file);
    const text = typeof content === "string" ? content : undefined;
    const lines = text === undefined ? undefined : linesIn(file, text);
    const faults = [
      ...(file === "" ? ["no file"] : []),
      ...(Number.isInteger(line) && line >= 1 && line <= (lines?.length ?? Number.POSITIVE_INFINITY)
        ? []
        : ["no such line"]),
      ...(Number.isInteger(column) &&
      column >= 1 &&
      column <= (lines?.[line - 1]?.length ?? Number.POSITIVE_INFINITY) + 1
        ? []
        : ["no such column"]),
      ...(/^[a-z0-9]+(-[a-z0-9]+)*$/.test(code) ? [] : ["no code"]),
      ...(message.trim() === "" ? ["no message"] : []),
      ...(hint.trim() === "" ? ["no hint"] : []),
      ...(UNPRINTABLE.test(formatDiagnostic(problem).replace("\n", ""))
        ? ["a character that no terminal should get"]
        : []),
      ...(SLIPPED_THROUGH.test(`${message}${hint}`) && !OF_THE_CLUB.test(`${file} ${written}`)
        ? ["our own words slipped"]
        : []),
      ...(i < ofReader && (message.length > LONGEST || hint.length > LONGEST)
        ? ["longer than anybody reads"]
        : []),
    ];
    return faults.map(
      (fault) =>
        `${fault}: ${JSON.stringify({ ...problem, message: message.slice(0, 300), hint: hint.slice(0, 300) })}`,
    );
  });
}
