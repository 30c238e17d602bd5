import { parseArgs } from "node:util";
import fc from "fast-check";
import { clubs } from "./cases.ts";
import { runCase } from "./one-case.ts";

/**
 * One batch of hostile clubs after the other, in a process of its own, whose parent is told of every case. A batch's
 * seed gives the same clubs again; with `--path` the shrunk one alone.
 */
const { values } = parseArgs({
  options: {
    seeds: { type: "string", default: "1" },
    batch: { type: "string", default: "100" },
    path: { type: "string" },
  },
});
const MOST_CPU_S = 10;

const tell = (message: object): void => {
  if (process.send !== undefined) process.send(message);
  else if (!("kinds" in message)) console.log(JSON.stringify(message, null, 2));
};

for (const seed of values.seeds.split(",").map(Number)) {
  const property = fc.asyncProperty(clubs(true), async (club) => {
    const kinds = club.changes.map(({ kind }) => kind);
    tell({ event: "began", seed, kinds });
    const before = process.cpuUsage();
    const { end, faults } = await runCase(club);
    const { user, system } = process.cpuUsage(before);
    const cpu_s = (user + system) / 1e6;
    tell({ event: "ended", seed, kinds, far: club.far, end, cpu_s });
    const all = [...faults, ...(cpu_s > MOST_CPU_S ? [`took ${cpu_s.toFixed(1)} s of computing`] : [])];
    if (all.length > 0) throw new Error(all.slice(0, 5).join("\n"));
  });
  const result = await fc.check(property, {
    seed,
    numRuns: Number(values.batch),
    ...(values.path === undefined ? {} : { path: values.path }),
  });
  tell({ event: "batch", seed, cases: result.numRuns });
  if (result.failed)
    tell({
      event: "failed",
      seed,
      path: result.counterexamplePath,
      club: result.counterexample?.[0],
      fault: result.errorInstance instanceof Error ? result.errorInstance.message : "",
    });
}
tell({ event: "done", most_MB: Math.round(process.resourceUsage().maxRSS / 1024) });
process.disconnect?.();
