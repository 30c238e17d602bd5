import type { Diagnostic } from "../model/diagnostic.ts";
import { startOf } from "./problem.ts";
import { cellValue } from "./report-cells.ts";
import type { ReportDesk } from "./report-desk.ts";
import { contextOf, reportsIn } from "./report-file.ts";
import type { ReportKey } from "./report-form.ts";

export type Answers = Readonly<Record<string, unknown>>;

/** The answers so far with one more, read and checked as a cell of a table would be. */
export function withAnswer(
  desk: ReportDesk,
  answers: Answers,
  key: ReportKey,
  text: string,
): { answers: Answers; problems: readonly Diagnostic[] } {
  const value = cellValue(
    text,
    { key, heading: key, isNamed: false },
    { dates: desk.sources.form.dates, ...desk.sources, decimalComma: false },
  );
  const next = value === undefined ? answers : { ...answers, [key]: value };
  const problems: Diagnostic[] = [];
  const spot = () => startOf(desk.file);
  // A report needs its day; until it is asked for, the usual one stands in.
  const data = [{ date: desk.date, ...next }];
  reportsIn({ file: desk.file, data, spot, keySpot: spot }, contextOf(desk.sources, desk.season), problems);
  return { answers: next, problems };
}
