import "./commands/heap-growth.ts";
import { main } from "./commands/command-line.ts";
import { openPrompter, today } from "./commands/effects.ts";
import { rewriteNpmCommands } from "./commands/npm-invocation.ts";
import { progressLine } from "./commands/progress-line.ts";

const called = rewriteNpmCommands(process.env);
const { CI } = process.env;
const now_ms = (): number => performance.now();
const line = progressLine({
  isTerminal: process.stderr.isTTY === true && CI === undefined,
  now_ms,
  write: (text) => void process.stderr.write(text),
});
/** What is printed stands below the progress, never inside its line. */
const printedBy =
  (print: (text: string) => void) =>
  (text: string): void => {
    line.clear();
    print(called(text));
  };

process.exitCode = await main(process.argv.slice(2), {
  say: printedBy(console.log),
  warn: printedBy(console.error),
  today,
  env: process.env,
  now_ms,
  progress: line.progress,
  ...(process.stdin.isTTY ? { openAsker: () => openPrompter(process.stdin, process.stderr) } : {}),
});
