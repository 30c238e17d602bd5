import { CORE_SCHEMA, dump } from "js-yaml";
import { startOf } from "../input/problem.ts";
import { contextOf, reportsIn } from "../input/report-file.ts";
import { descriptionOf, examplesOf, schemaAt } from "../input/schema/schema-messages.ts";
import { cellValue } from "../input/tables/report-cells.ts";
import { ICE_STATES, LOOKS } from "../model/club.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { REPORT_KEYS, type ReportKey, reportRow } from "../model/fields/report-fields.ts";
import { PHASE_WORDS } from "../model/phase.ts";
import type { EditContext } from "./edit-context.ts";

export type Answers = Readonly<Record<string, unknown>>;

/** The answers so far with one more, read and checked as a cell of a table would be. */
export function withAnswer(
  desk: EditContext,
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

/** Values to copy for keys whose own schema shows none that fits every club. */
function exampleOf(key: ReportKey, pattern: string | undefined): string | undefined {
  switch (key) {
    case "ice":
      return "off";
    case "phase":
      return "best-weeks";
    case "looks":
      return "clear";
    case "deep":
      return "{ at: 15 ft, water: 41 degF }";
    case "rods":
      return "2";
    case "caught":
      return pattern === undefined ? undefined : `[{ pattern: ${pattern}, fish: 0 }]`;
    case "notes":
      return '"What else you saw."';
    default:
      return examplesOf(schemaAt(reportRow, [key]))[0];
  }
}

const CHOICES: Partial<Readonly<Record<ReportKey, readonly string[]>>> = {
  ice: ICE_STATES,
  phase: PHASE_WORDS,
  looks: LOOKS,
};

/** What the schema says about a key of a report. */
export const keyDescription = (key: ReportKey): string => {
  const words = descriptionOf(schemaAt(reportRow, [key]));
  const choices = CHOICES[key] ?? [];
  return choices.length === 0 ? words : `${words} One of: ${choices.join(", ")}.`;
};

/** A row with the lake and the day, and every other key in a note beside an example. */
export function blankReport(lake: string, date: string, pattern: string | undefined): string {
  const notes = REPORT_KEYS.filter((key) => key !== "lake" && key !== "date").flatMap((key) => {
    const example = exampleOf(key, pattern);
    return example === undefined ? [] : [`  # ${keyDescription(key)}`, `  # ${key}: ${example}`];
  });
  return [
    "# To use a line below that begins with # and a key, remove the # and the space behind it.",
    `- lake: ${lake}`,
    `  date: ${date}`,
    ...notes,
    "",
  ].join("\n");
}

/** A row as a YAML file of reports holds it: one key a line. */
export const reportText = (row: Readonly<Record<string, unknown>>): string =>
  dump([row], { flowLevel: 2, lineWidth: -1, schema: CORE_SCHEMA });
