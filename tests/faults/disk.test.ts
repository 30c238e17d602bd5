import { cp, mkdir, readdir, rm } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { run } from "../commands/run.ts";
import { canMount, makeReadOnly, onSmallDisk } from "./small-disk.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

/** Whole builds in processes of their own, on machines that may be busy. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** Without the right to mount there is no small disk to fill. */
const isSkipped = !canMount();
if (isSkipped) console.warn("disk-full tests skipped: mounting a small file system needs root on Linux");

let clubs: TinyClubs;
let old: Record<string, string>;
/** What the guide takes on a disk of pages of 4 kB. */
let size_kB: number;

beforeAll(async () => {
  clubs = await tinyClubs();
  expect((await run("guide", "--data", clubs.old, "--out", path.join(clubs.dir, "site"))).exit).toBe(0);
  old = await contentsOf(path.join(clubs.dir, "site"));
  size_kB = Object.values(old).reduce((sum, text) => sum + 4 * Math.ceil(text.length / 4096), 0);
});
afterAll(() => rm(clubs.dir, { recursive: true, force: true }));

async function buildOver(disk: string) {
  const out = path.join(disk, "site");
  const ran = await run("guide", "--data", clubs.new, "--out", out);
  return {
    ...ran,
    found: await contentsOf(out),
    left: (await readdir(disk)).filter((name) => name !== "site"),
  };
}
const withOldGuide = async (disk: string): Promise<void> =>
  cp(path.join(clubs.dir, "site"), path.join(disk, "site"), { recursive: true });

describe.skipIf(isSkipped)("a disk that fills", () => {
  // From no room at all to room for nearly the whole next guide, so that it fills in pages, data and cards.
  test.each([0.005, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97])("when %d of the next guide fits", async (share) => {
    await onSmallDisk(`size=${Math.ceil(size_kB * (1 + share)) + 4}k`, async (disk) => {
      await withOldGuide(disk);
      const { exit, warned, found, left } = await buildOver(disk);
      expect(warned).toMatch(/^cannot write .*site: the disk is full: ENOSPC/m);
      expect(exit).toBe(3);
      expect(found).toEqual(old);
      expect(left).toEqual([]);
    });
  });

  test("when no more files can be made", async () => {
    await onSmallDisk("size=8m,nr_inodes=90", async (disk) => {
      await withOldGuide(disk);
      const { exit, warned, found, left } = await buildOver(disk);
      expect([exit, warned]).toEqual([3, expect.stringContaining("the disk is full")]);
      expect(found).toEqual(old);
      expect(left).toEqual([]);
    });
  });

  test("with room enough the next guide is published", async () => {
    await onSmallDisk(`size=${size_kB * 3}k`, async (disk) => {
      await withOldGuide(disk);
      const { exit, found, left } = await buildOver(disk);
      expect([exit, left]).toEqual([0, []]);
      expect(found).not.toEqual(old);
    });
  });
});

describe.skipIf(isSkipped)("a disk that can only be read", () => {
  test("the old guide stays, and the message says why", async () => {
    await onSmallDisk("size=8m", async (disk) => {
      await withOldGuide(disk);
      await mkdir(path.join(disk, ".site.next"));
      makeReadOnly(disk);
      const { exit, warned, found } = await buildOver(disk);
      expect(exit).toBe(3);
      expect(warned).toMatch(/^cannot write .*site: that disk can only be read: EROFS/);
      expect(found).toEqual(old);
    });
  });
});
