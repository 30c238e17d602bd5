import { createInterface } from "node:readline";
import { type CalendarDate, parseCalendarDate } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Progress } from "../model/progress.ts";

/** Asks somebody at a terminal, one line at a time. */
export interface Prompter {
  /** The answer without spaces at its ends; undefined when there will be no more. */
  ask(question: string): Promise<string | undefined>;
  close(): void;
}

export function openPrompter(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): Prompter {
  const lines = createInterface({ input, output });
  const answers = lines[Symbol.asyncIterator]();
  return {
    async ask(question) {
      lines.setPrompt(question);
      lines.prompt();
      const { value, done } = await answers.next();
      return done === true ? undefined : value.trim();
    },
    close: () => lines.close(),
  };
}

/** What a command may do to the world besides reading and writing files: talk, and look at the calendar. */
export interface Effects {
  /** One line of the answer, to standard output. */
  say(line: string): void;
  /** One line about the run itself, to standard error. */
  warn(line: string): void;
  today(): CalendarDate;
  /** Milliseconds on a clock that runs forward only, from some moment. */
  now_ms(): number;
  /** Absent where nobody wants to know how far a build is. */
  readonly progress?: Progress;
  /** What the program was started with; absent where it does not matter. */
  readonly env?: Readonly<Record<string, string | undefined>>;
  /** Absent where nobody is there to be asked. */
  openAsker?(): Prompter;
}

/** How a command ends; the numbers are the process's exit code. */
export const EXIT = { done: 0, badData: 1, badUsage: 2, cannotWrite: 3 } as const;
export type Exit = (typeof EXIT)[keyof typeof EXIT];

/** The day it is where the program runs. @throws when the clock shows no day of the calendar */
export function today(): CalendarDate {
  const now = new Date();
  const [year, month, day] = [now.getFullYear(), now.getMonth() + 1, now.getDate()];
  const date = parseCalendarDate(`${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`);
  if (date === undefined) throw new Error(`the clock shows ${now.toString()}`);
  return date;
}

/** Where an error began: the stack of what caused it first. */
const rootOf = (error: unknown): unknown => {
  if (!(error instanceof Error)) return error;
  return error.cause === undefined ? error.stack : rootOf(error.cause);
};

/** A fault of the program itself: what failed for whoever ran it, and where for whoever mends it. */
export function printInternalError(error: unknown, outDir: string, effects: Effects): void {
  effects.warn(`The program failed: ${error instanceof Error ? error.message : String(error)}`);
  effects.warn(`Nothing written, ${outDir} is as it was. For the developers:`);
  effects.warn(String(rootOf(error)));
}

/** "1 lake", "2 lakes". */
export const counted = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** "2 errors, 1 warning", or "no problems". */
export function problemCount(problems: readonly Diagnostic[]): string {
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const warnings = problems.length - errors;
  const parts = [
    ...(errors > 0 ? [counted(errors, "error")] : []),
    ...(warnings > 0 ? [counted(warnings, "warning")] : []),
  ];
  return parts.length === 0 ? "no problems" : parts.join(", ");
}
