import { main } from "../../build/commands/command-line.ts";
import type { Exit } from "../../build/effects.ts";

export interface Ran {
  readonly exit: Exit;
  readonly said: string;
  readonly warned: string;
}

/** Runs one command line as the shell would, and keeps what it printed. */
export async function run(...args: string[]): Promise<Ran> {
  const said: string[] = [];
  const warned: string[] = [];
  const exit = await main(args, { say: (line) => said.push(line), warn: (line) => warned.push(line) });
  return { exit, said: said.join("\n"), warned: warned.join("\n") };
}
