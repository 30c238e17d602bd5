import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** More than the longest list of costs. */
const MOST_OUTPUT_BYTES = 1_000_000;

/**
 * Runs one script of this folder in a process of its own, as `npm run guide` runs the program, and reads the JSON it says.
 * @throws when the script fails, with what it complained of
 */
export function runChild(script: string, ...args: readonly string[]): unknown {
  const file = fileURLToPath(new URL(script, import.meta.url));
  const run = spawnSync(process.execPath, ["--import", "tsx", file, ...args], {
    encoding: "utf8",
    maxBuffer: MOST_OUTPUT_BYTES,
    stdio: ["ignore", "pipe", "pipe"],
  });
  if (run.status !== 0) throw new Error(`${script} ended with ${run.status ?? run.signal}: ${run.stderr}`);
  return JSON.parse(run.stdout);
}
