import { spawnSync } from "node:child_process";
import { cp, readdir, rm, stat } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Stage } from "../../build/model/progress.ts";
import { type Cost, type StageCost, startCost } from "./stage-watch.ts";

/** More than the longest list of costs. */
const MOST_OUTPUT_BYTES = 1_000_000;

/**
 * Runs one script of this folder in a process of its own, as `npm run guide` runs the program, and reads the JSON it says.
 * @throws when the script fails, with what it complained of
 */
function runChild(script: string, ...args: readonly string[]): unknown {
  const file = fileURLToPath(new URL(script, import.meta.url));
  const run = spawnSync(process.execPath, ["--import", "tsx", file, ...args], {
    encoding: "utf8",
    maxBuffer: MOST_OUTPUT_BYTES,
    stdio: ["ignore", "pipe", "pipe"],
  });
  if (run.status !== 0) throw new Error(`${script} ended with ${run.status ?? run.signal}: ${run.stderr}`);
  return JSON.parse(run.stdout);
}

/** One club built, and what it is compared with. */
export interface Measured {
  readonly name: string;
  readonly lakes: number;
  readonly stages: readonly StageCost[];
  /** The whole process, from its start to its end. */
  readonly whole: Cost;
  /** The same again, with results kept and nothing changed. */
  readonly again_s: number;
  readonly barePages: Cost;
  readonly bareCards: Cost;
  /** Copying the finished output. */
  readonly copy: Cost;
  readonly files: number;
  readonly bytes: number;
}

export const stageOf = ({ stages }: Measured, stage: Stage): StageCost | undefined =>
  stages.find((cost) => cost.stage === stage);

async function sizeOf(dir: string): Promise<{ files: number; bytes: number }> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  let bytes = 0;
  for (const { parentPath, name } of files) bytes += (await stat(path.join(parentPath, name))).size;
  return { files: files.length, bytes };
}

/** A `guide` command in a process of its own; its seconds from outside, the rest from inside. */
function build(dataDir: string, outDir: string, cacheDir: string): { stages: StageCost[]; whole: Cost } {
  const began_ms = performance.now();
  const stages = runChild(
    ...(["one-run.ts", "guide", "--data", dataDir, "--out", outDir, "--cache", cacheDir] as const),
  ) as StageCost[];
  const whole = {
    seconds: (performance.now() - began_ms) / 1000,
    cpu_s: stages.reduce((sum, { cpu_s }) => sum + cpu_s, 0),
    peak_MB: Math.max(...stages.map(({ peak_MB }) => peak_MB)),
  };
  return { stages, whole };
}

/** Builds a club without and with kept results, then times the bare libraries and the copy on what came out. */
export async function measure(name: string, dataDir: string, lakes: number, work: string): Promise<Measured> {
  const at = (what: string): string => path.join(work, `${name} ${what}`);
  const first = build(dataDir, at("site"), at("cache"));
  const again = build(dataDir, at("site"), at("cache"));
  const barePages = runChild("bare-pages.ts", at("site"), at("bare")) as Cost;
  const bareCards = runChild("bare-cards.ts", at("site"), at("bare")) as Cost;
  const costOfCopy = startCost();
  await cp(at("site"), at("copy"), { recursive: true });
  const copy = costOfCopy();
  const size = await sizeOf(at("site"));
  for (const what of ["site", "cache", "bare", "copy"]) await rm(at(what), { recursive: true, force: true });
  return { name, lakes, ...first, again_s: again.whole.seconds, barePages, bareCards, copy, ...size };
}
