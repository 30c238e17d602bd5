import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { growthExponent } from "./bench-report.ts";
import { openStageWatch } from "./stage-watch.ts";
import { writeSyntheticClub } from "./synthetic-club.ts";

describe("a club made up to be measured", () => {
  let work: string;
  beforeAll(async () => {
    work = await mkdtemp(path.join(tmpdir(), "bench-"));
    for (const name of ["one", "two"]) await writeSyntheticClub(path.join(work, name), 6);
    await writeSyntheticClub(path.join(work, "other"), 6, 2);
  });
  afterAll(() => rm(work, { recursive: true, force: true }));

  test("is in order, and every lake has a shape, records and reports to work on", async () => {
    const { club, problems } = await loadClub(path.join(work, "one"));
    expect(problems).toEqual([]);
    expect(club?.lakes).toHaveLength(6);
    for (const lake of club?.lakes ?? []) {
      expect(lake.shape?.contours.length, lake.slug).toBeGreaterThan(0);
      expect(lake.iceOff.length, lake.slug).toBeGreaterThan(4);
      expect(club?.reports.some((report) => report.lake === lake.slug)).toBe(true);
    }
    expect(club?.reports.some(({ catches }) => catches.length > 0)).toBe(true);
    expect(club?.trips).toHaveLength(1);
  });

  test("is the same for the same seed, and another for another", async () => {
    const textOf = async (name: string): Promise<string[]> => {
      const files = (await readdir(path.join(work, name), { recursive: true })).sort();
      const isFile = (file: string): boolean => /\.[a-z]+$/.test(file);
      return Promise.all(files.filter(isFile).map((file) => readFile(path.join(work, name, file), "utf8")));
    };
    expect(await textOf("two")).toEqual(await textOf("one"));
    expect(await textOf("other")).not.toEqual(await textOf("one"));
  });
});

// A power law y = c x^k is a straight line of slope k in the logarithms.
test.each([0.5, 1, 2])("what grows as the power %f of size has that exponent", (power) => {
  const points = [10, 100, 1000].map((size) => [size, 0.3 * size ** power] as const);
  expect(growthExponent(points)).toBeCloseTo(power, 12);
});

test("a single size says nothing about growth", () => {
  expect(growthExponent([[10, 3]])).toBeUndefined();
});

test("each stage is measured from its beginning to the next one's", () => {
  const { progress, close } = openStageWatch();
  progress("load", 0, 0);
  progress("pages", 0, 3);
  progress("pages", 3, 3);
  expect(close().map(({ stage, made }) => [stage, made])).toEqual([
    ["start", 0],
    ["load", 0],
    ["pages", 3],
  ]);
});
