import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { shapesToCompute } from "../../build/guide/lake-inputs.ts";
import { cacheIn } from "../../build/incremental/cache.ts";
import { precomputeShapes } from "../../build/incremental/precompute-shapes.ts";
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

/** The demo's lakes over and over, each time a little deeper, so that no two are computed alike. */
const large = (): Club => ({
  ...demo,
  lakes: Array.from({ length: 6 }, (_, time) =>
    demo.lakes.map((lake) => ({ ...lake, maxDepth_m: (lake.maxDepth_m ?? 20) + time / 10 })),
  ).flat(),
});

test("many shapes are precomputed, and each is what it is when it is computed in its turn", async () => {
  const cache = cacheIn(path.join(dir, "many"), { identity: "test" });
  const told: (readonly [number, number])[] = [];
  await precomputeShapes(large(), cache, (done, total) => told.push([done, total]));
  const wanted = shapesToCompute(large());
  expect(told.at(-1)).toEqual([wanted.length, wanted.length]);
  for (const needs of wanted.filter((_, i) => i % 7 === 0)) {
    const kept = cache.memoize(SHAPE, needs, (): ComputedShape => {
      throw new Error("not precomputed");
    });
    expect(kept).toEqual(computeShape(needs));
  }
});

test("few are left to their turn", async () => {
  const cache = cacheIn(path.join(dir, "few"), { identity: "test" });
  await precomputeShapes(demo, cache, () => {
    throw new Error("precomputed");
  });
  expect(shapesToCompute(demo).some((needs) => cache.has(SHAPE, needs))).toBe(false);
});
