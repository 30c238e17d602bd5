import { main } from "../../build/commands/command-line.ts";
import type { Exit } from "../../build/effects.ts";

export interface Ran {
  readonly exit: Exit;
  readonly said: string;
  readonly warned: string;
}

/**
 * Runs one command line as the shell would, and keeps what it printed. No guide is built from an earlier run's results
 * unless a cache is named, and nothing is left in the user's own.
 */
export async function run(...args: string[]): Promise<Ran> {
  const said: string[] = [];
  const warned: string[] = [];
  const isColdGuide = args[0] === "guide" && !args.some((arg) => arg === "--cache");
  const exit = await main(isColdGuide ? [...args, "--no-cache"] : args, {
    say: (line) => said.push(line),
    warn: (line) => warned.push(line),
  });
  return { exit, said: said.join("\n"), warned: warned.join("\n") };
}
