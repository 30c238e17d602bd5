import { PassThrough, Readable } from "node:stream";
import { main } from "../../build/commands/command-line.ts";
import type { Exit } from "../../build/commands/effects.ts";
import { openPrompter } from "../../build/commands/effects.ts";
import { parseCalendarDate } from "../../build/model/calendar.ts";

const TODAY = parseCalendarDate("2026-05-20") ?? never();
function never(): never {
  throw new Error("20 May 2026 is a day");
}
const linesOf = (answers: readonly string[]): Readable =>
  Readable.from(answers.map((answer) => `${answer}\n`));

export interface Ran {
  readonly exit: Exit;
  readonly said: string;
  readonly warned: string;
}

/**
 * Runs one command line as the shell would, and keeps what it printed. No guide is built from an earlier run's results
 * unless a cache is named, and nothing is left in the user's own.
 */
export const run = (...args: string[]): Promise<Ran> => runAsked(undefined, ...args);

/** The same with somebody at the terminal, who gives these answers and then no more. */
export async function runAsked(answers: readonly string[] | undefined, ...args: string[]): Promise<Ran> {
  const said: string[] = [];
  const warned: string[] = [];
  let clock_ms = Math.round(performance.now());
  const isCold = (args[0] === "guide" || args[0] === "check") && !args.some((arg) => arg === "--cache");
  const exit = await main(isCold ? [...args, "--no-cache"] : args, {
    say: (line) => said.push(line),
    warn: (line) => warned.push(line),
    today: () => TODAY,
    now_ms: () => {
      clock_ms += 1234;
      return clock_ms;
    },
    ...(answers === undefined ? {} : { openAsker: () => openPrompter(linesOf(answers), new PassThrough()) }),
  });
  return { exit, said: said.join("\n"), warned: warned.join("\n") };
}
