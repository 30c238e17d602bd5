import { spawnSync } from "node:child_process";
import { afterAll, beforeAll, expect, test } from "vitest";
import { isBad, KillGround, type KillRun, killRuns } from "./kill-runs.ts";

const canExchange = process.platform === "linux" && spawnSync("perl", ["-e", "1"]).status === 0;

let ground: KillGround;
let runs: KillRun[];
beforeAll(async () => {
  ground = await KillGround.prepare();
  runs = await killRuns(ground, { commands: 4, swaps: 8, seed: 20260516, name: "test" });
}, 900_000);
afterAll(() => ground.remove());

test("some builds were killed in the midst of their work", () => {
  expect(runs.filter(({ left }) => left.length > 0).length).toBeGreaterThan(4);
});

test.skipIf(!canExchange)(
  "killed at any moment, the old or the new guide is there, whole; the next run clears the rest",
  () => {
    expect(runs.filter(isBad)).toEqual([]);
  },
);

test("where folders cannot be exchanged, what is there is whole, and the next run puts back what is not", () => {
  expect(runs.filter(({ found, wrongAfterNext }) => found === "broken" || wrongAfterNext !== "")).toEqual([]);
});
