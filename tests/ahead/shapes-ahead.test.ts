import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { reckonShapesAhead } from "../../build/ahead/shapes-ahead.ts";
import { cacheIn } from "../../build/cache/cache.ts";
import { shapesToCompute } from "../../build/guide/lake-inputs.ts";
import { loadClub } from "../../build/input/load-club.ts";
import type { Club } from "../../build/model/club.ts";
import { type ComputedShape, computeShape, SHAPE } from "../../build/water/compose-shape.ts";

let dir: string;
let demo: Club;
beforeAll(async () => {
  dir = await mkdtemp(path.join(tmpdir(), "ahead-"));
  const { club } = await loadClub("demo-data");
  if (club === undefined) throw new Error("the demo club cannot be read");
  demo = club;
});
afterAll(() => rm(dir, { recursive: true, force: true }));

/** The demo's lakes over and over, each time a little deeper, so that no two are reckoned alike. */
const large = (): Club => ({
  ...demo,
  lakes: Array.from({ length: 6 }, (_, time) =>
    demo.lakes.map((lake) => ({ ...lake, maxDepth_m: (lake.maxDepth_m ?? 20) + time / 10 })),
  ).flat(),
});

test("many shapes are reckoned ahead, and each is what it is when it is reckoned in its turn", async () => {
  const cache = cacheIn(path.join(dir, "many"), { identity: "test" });
  const told: (readonly [number, number])[] = [];
  await reckonShapesAhead(large(), cache, (done, total) => told.push([done, total]));
  const wanted = shapesToCompute(large());
  expect(told.at(-1)).toEqual([wanted.length, wanted.length]);
  for (const needs of wanted.filter((_, i) => i % 7 === 0)) {
    const kept = cache.remember(SHAPE, needs, (): ComputedShape => {
      throw new Error("not reckoned ahead");
    });
    expect(kept).toEqual(computeShape(needs));
  }
});

test("few are left to their turn", async () => {
  const cache = cacheIn(path.join(dir, "few"), { identity: "test" });
  await reckonShapesAhead(demo, cache, () => {
    throw new Error("reckoned ahead");
  });
  expect(shapesToCompute(demo).some((needs) => cache.has(SHAPE, needs))).toBe(false);
});
