import { parseArgs } from "node:util";
import { isBad, KillGround, type KillRun, killRuns } from "./kill-runs.ts";

/** `npm run faults -- --runs 200 --seed 1`: kills builds and says what was found; ends with 1 when anything was wrong. */
const AT_ONCE = 2;
const { values } = parseArgs({
  options: { runs: { type: "string", default: "200" }, seed: { type: "string", default: "1" } },
});

const ground = await KillGround.prepare();
const each = Math.ceil(Number(values.runs) / AT_ONCE / 2);
const tell = (run: KillRun): void => {
  if (isBad(run)) console.log(JSON.stringify(run));
};
const runs = (
  await Promise.all(
    Array.from({ length: AT_ONCE }, (_, i) =>
      killRuns(
        ground,
        { commands: each, swaps: each, seed: Number(values.seed) + i, name: `shard-${i}` },
        tell,
      ),
    ),
  )
).flat();
await ground.remove();

const counted = (wanted: (run: KillRun) => boolean): number => runs.filter(wanted).length;
for (const aim of new Set(runs.map((run) => run.aim))) {
  const of = (wanted: (run: KillRun) => boolean): number => counted((run) => run.aim === aim && wanted(run));
  const looks = runs.filter((run) => run.aim === aim).reduce((sum, run) => sum + run.looks, 0);
  const misses = runs.filter((run) => run.aim === aim).reduce((sum, run) => sum + run.misses, 0);
  console.log(
    `${aim}: ${of(() => true)} runs, ${of((run) => run.wasKilled)} killed before the end, ${of((run) => run.left.length > 0)} left something; ` +
      `found old ${of((run) => run.found === "old")}, new ${of((run) => run.found === "new")}, nothing ${of((run) => run.found === "nothing")}, broken ${of((run) => run.found === "broken")}; ` +
      `a reader looked ${looks} times and found none ${misses} times; wrong after the next run ${of((run) => run.wrongAfterNext !== "")}`,
  );
}
const bad = counted(isBad);
console.log(`${runs.length} kill runs, ${bad} bad`);
process.exitCode = bad === 0 ? 0 : 1;
