import { fork } from "node:child_process";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

/**
 * `npm run fuzz -- --cases 20000 --seed 1`: hostile clubs by the thousand, a process a core, each held to 1 GiB of
 * heap; a case that takes 10 s of computing, or is silent for two minutes, is a failure. Prints the counts and every failing
 * batch with its smallest club; ends with 1 when there is any. Run one again with
 * `node --import tsx tests/fuzz/shard.ts --seeds SEED --path PATH`.
 */
const { values } = parseArgs({
  options: { cases: { type: "string", default: "20000" }, seed: { type: "string", default: "1" } },
});
const BATCH = 100;
/** Batches of one process: a new one begins with clean memory. */
const BATCHES_A_PROCESS = 20;
const SILENCE_MS = 120_000;
const SHARD = fileURLToPath(new URL("./shard.ts", import.meta.url));

interface Told {
  readonly event: "began" | "ended" | "batch" | "failed" | "done";
  readonly seed?: number;
  readonly kinds?: readonly string[];
  readonly far?: string;
  readonly end?: string;
  readonly cpu_s?: number;
  readonly cases?: number;
  readonly most_MB?: number;
}

const counts = new Map<string, number>();
const count = (what: string, by = 1): Map<string, number> => counts.set(what, (counts.get(what) ?? 0) + by);
const failures: object[] = [];
let [slowest_s, most_MB, cases] = [0, 0, 0];

function hear(told: Told): void {
  if (told.event === "ended") {
    for (const kind of new Set(told.kinds)) count(`change: ${kind}`);
    count(`${told.far}: ${told.end}`);
    slowest_s = Math.max(slowest_s, told.cpu_s ?? 0);
  } else if (told.event === "batch") {
    cases += told.cases ?? 0;
    if (cases % 1000 < BATCH) console.log(`${cases} cases, ${failures.length} failures`);
  }
  if (told.event === "done") most_MB = Math.max(most_MB, told.most_MB ?? 0);
  else if (told.event === "failed") fail(told);
}

function fail(failure: object): void {
  failures.push(failure);
  console.log(JSON.stringify(failure, null, 2).slice(0, 4000));
}

const runShard = (seeds: readonly number[]): Promise<void> =>
  new Promise((resolve) => {
    const child = fork(SHARD, ["--seeds", seeds.join(","), "--batch", String(BATCH)], {
      execArgv: ["--max-old-space-size=1024", "--import", "tsx"],
    });
    let last: Told | undefined;
    let silence: NodeJS.Timeout | undefined;
    const wait = (): void => {
      clearTimeout(silence);
      silence = setTimeout(() => child.kill("SIGKILL"), SILENCE_MS);
    };
    wait();
    child.on("message", (told: Told) => {
      wait();
      last = told;
      hear(told);
    });
    child.once("exit", (code, signal) => {
      clearTimeout(silence);
      if (code !== 0) fail({ event: "ended early", code, signal, last });
      resolve();
    });
  });

const batches = Array.from(
  { length: Math.ceil(Number(values.cases) / BATCH) },
  (_, i) => Number(values.seed) * 100_000 + i,
);
const shards = Array.from({ length: Math.ceil(batches.length / BATCHES_A_PROCESS) }, (_, i) =>
  batches.slice(i * BATCHES_A_PROCESS, (i + 1) * BATCHES_A_PROCESS),
).values();
const worker = async (): Promise<void> => {
  for (const shard of shards) await runShard(shard);
};
await Promise.all(Array.from({ length: availableParallelism() }, worker));

for (const [what, n] of [...counts].sort()) console.log(`${what}: ${n}`);
console.log(
  `${cases} cases, ${failures.length} failures; slowest ${slowest_s.toFixed(1)} s of computing, most memory ${most_MB} MB`,
);
process.exitCode = failures.length === 0 ? 0 : 1;
