import { writeFile } from "node:fs/promises";
import path from "node:path";
import { parseArgs } from "node:util";
import { isBad, KillGround, type KillRun, killRuns } from "./kill-runs.ts";
import { editUnderPreview } from "./preview-edits.ts";
import { openPreviewGround } from "./preview-ground.ts";
import { fuzzPreview } from "./preview-requests.ts";

/**
 * `npm run faults -- --runs 200 --requests 20000 --edits 500 --seed 1`: kills builds, sends a preview what no browser
 * sends, edits a club under it, and says what was found; ends with 1 when anything was wrong. 0 leaves a part out.
 */
const AT_ONCE = 2;
const { values } = parseArgs({
  options: {
    runs: { type: "string", default: "200" },
    requests: { type: "string", default: "20000" },
    edits: { type: "string", default: "500" },
    seed: { type: "string", default: "1" },
  },
});
const seed = Number(values.seed);
/** A server that keeps something of every request grows by more in 10,000 of them. */
const MOST_GROWTH_MB = 32;

async function requestsAreHarmless(): Promise<boolean> {
  const secret = "only for those who keep it";
  const ground = await openPreviewGround();
  await writeFile(path.join(ground.dir, "site-private.txt"), secret);
  await writeFile(path.join(ground.out, "CNAME"), secret);
  const { sent, answered, leaks, endedAfter, memory_MB } = await fuzzPreview(
    ground,
    Number(values.requests),
    seed,
    secret,
  );
  console.log(
    `${sent} requests and frames, ${answered} answered, ${leaks} with what is no part of the guide; ` +
      `${endedAfter === undefined ? "the preview goes on" : `the preview ended within ${endedAfter}: ${ground.child.text()}`}; ` +
      `memory after each quarter ${memory_MB.map(Math.round).join(", ")} MB`,
  );
  await ground.close();
  // The heap grows to its working size first.
  const [, half_MB = 0, , end_MB = 0] = memory_MB;
  const isFlat = !(end_MB - half_MB > MOST_GROWTH_MB);
  return endedAfter === undefined && leaks === 0 && isFlat;
}

async function editsAreSeen(): Promise<boolean> {
  const ground = await openPreviewGround();
  const { made, missed, unlike } = await editUnderPreview(ground, Number(values.edits), seed, 20_000);
  console.log(
    `${made} edits, ${missed.length} missed, ${unlike.length} files unlike a clean build at the end`,
  );
  for (const line of [...missed, ...unlike]) console.log(`  ${line}`);
  await ground.close();
  return missed.length + unlike.length === 0;
}

const isPreviewGood =
  (values.requests === "0" || (await requestsAreHarmless())) &&
  (values.edits === "0" || (await editsAreSeen()));

const ground = await KillGround.prepare();
const each = Math.ceil(Number(values.runs) / AT_ONCE / 2);
const tell = (run: KillRun): void => {
  if (isBad(run)) console.log(JSON.stringify(run));
};
const runs = (
  await Promise.all(
    Array.from({ length: AT_ONCE }, (_, i) =>
      killRuns(ground, { commands: each, swaps: each, seed: seed + i, name: `shard-${i}` }, tell),
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
process.exitCode = bad === 0 && isPreviewGood ? 0 : 1;
