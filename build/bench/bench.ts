import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { writeSyntheticClub } from "./synthetic-club.ts";

const SIZES = [10, 100, 1000];
const ONE_RUN = fileURLToPath(new URL("./one-run.ts", import.meta.url));

/** One `guide` command in a process of its own: seconds from outside, peak memory from inside. */
function oneRun(dataDir: string, outDir: string, cacheDir: string): { seconds: number; peak_MB: number } {
  const started = performance.now();
  const run = spawnSync(
    process.execPath,
    [
      ...["--max-semi-space-size=64", "--import", "tsx", ONE_RUN, "guide"],
      ...["--data", dataDir, "--out", outDir, "--cache", cacheDir],
    ],
    {
      encoding: "utf8",
    },
  );
  if (run.status !== 0) throw new Error(`guide ended with ${run.status}: ${run.stderr}`);
  return { seconds: (performance.now() - started) / 1000, peak_MB: Number(run.stdout) };
}

const say = (name: string, { seconds, peak_MB }: ReturnType<typeof oneRun>): void =>
  console.log(`${name.padEnd(12)} ${seconds.toFixed(2).padStart(8)} s ${String(peak_MB).padStart(6)} MB`);

/** Built for the first time, then again with nothing changed. */
function measure(name: string, dataDir: string, work: string): void {
  const [outDir, cacheDir] = [path.join(work, `site ${name}`), path.join(work, `cache ${name}`)];
  say(name, oneRun(dataDir, outDir, cacheDir));
  say("  again", oneRun(dataDir, outDir, cacheDir));
}

const work = await mkdtemp(path.join(tmpdir(), "lake-season-bench-"));
try {
  measure("demo", "demo-data", work);
  for (const size of SIZES) {
    const dataDir = path.join(work, `club-${size}`);
    await writeSyntheticClub(dataDir, size);
    measure(`${size} lakes`, dataDir, work);
  }
} finally {
  await rm(work, { recursive: true, force: true });
}
