import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export interface Child {
  readonly process: ChildProcess;
  /** What it has printed so far. */
  text(): string;
  /** What it printed, when it has ended. */
  readonly ended: Promise<{ readonly exit: number | null; readonly text: string }>;
}

export interface ChildOptions {
  readonly env?: Readonly<Record<string, string>>;
  /** The user it runs as. */
  readonly uid?: number;
  readonly nodeArgs?: readonly string[];
}

/** Starts a program of the project as the shell would, in TypeScript or not. */
export function start(script: string, args: readonly string[], options: ChildOptions = {}): Child {
  const { env = {}, uid, nodeArgs = [] } = options;
  const runner = script.endsWith(".ts") ? ["--import", "tsx"] : [];
  const process_ = spawn(process.execPath, [...nodeArgs, ...runner, script, ...args], {
    cwd: ROOT,
    env: { ...process.env, ...env },
    stdio: ["ignore", "pipe", "pipe"],
    ...(uid === undefined ? {} : { uid }),
  });
  let text = "";
  for (const stream of [process_.stdout, process_.stderr])
    stream.on("data", (chunk: Buffer) => {
      text += chunk.toString();
    });
  const ended = new Promise<{ exit: number | null; text: string }>((resolve, reject) => {
    process_.once("error", reject);
    process_.once("close", (exit) => resolve({ exit, text }));
  });
  return { process: process_, text: () => text, ended };
}

/** Starts the real command. `cache`: where it keeps results for the next run; nowhere when left out. */
export const startGuide = (
  data: string,
  out: string,
  { cache, ...options }: ChildOptions & { readonly cache?: string } = {},
): Child =>
  start(
    "build/bin.mjs",
    ["guide", "--data", data, "--out", out, ...(cache === undefined ? ["--no-cache"] : ["--cache", cache])],
    options,
  );
