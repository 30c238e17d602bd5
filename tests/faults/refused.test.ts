import { chmod, cp, mkdir, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { run } from "../commands/run.ts";
import { startGuide } from "./child.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

/** Whole builds in processes of their own, on machines that may be busy. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** Root may write everywhere: as root, the command runs as this user, who owns nothing ("nobody" of Linux and others). */
const NOBODY = 65534;
const isRoot = process.getuid?.() === 0;

let clubs: TinyClubs;
beforeAll(async () => {
  clubs = await tinyClubs();
  await chmod(clubs.dir, 0o755);
});
afterAll(() => rm(clubs.dir, { recursive: true, force: true }));

test.skipIf(process.platform === "win32")(
  "3: a folder that may not be written: the old guide stays, the message says why",
  async () => {
    const place = path.join(clubs.dir, "place");
    const out = path.join(place, "site");
    await mkdir(place);
    expect((await run("guide", "--data", clubs.old, "--out", out)).exit).toBe(0);
    const before = await contentsOf(out);
    await chmod(place, 0o555);
    const { exit, text } = await startGuide(clubs.new, out, isRoot ? { uid: NOBODY } : {}).ended;
    await chmod(place, 0o755);
    expect(text).toMatch(
      /^cannot write .*site: you may not write there: EACCES.* What was published before is as it was\.$/m,
    );
    expect(exit).toBe(3);
    expect(await contentsOf(out)).toEqual(before);
  },
);

test("3: a folder within a file", async () => {
  await writeFile(path.join(clubs.dir, "a-file"), "");
  const out = path.join(clubs.dir, "a-file", "site");
  const { exit, warned } = await run("guide", "--data", clubs.old, "--out", out);
  expect([exit, warned]).toEqual([3, expect.stringMatching(/^cannot write /)]);
});

test("1: an error in the data, over what a killed run left: the last guide is put back", async () => {
  const place = path.join(clubs.dir, "left");
  await mkdir(place);
  expect((await run("guide", "--data", clubs.old, "--out", path.join(place, ".site.last"))).exit).toBe(0);
  const before = await contentsOf(path.join(place, ".site.last"));
  await cp(path.join(place, ".site.last"), path.join(place, ".site.next"), { recursive: true });
  const { exit } = await run(
    "guide",
    "--data",
    path.join(place, "nowhere"),
    "--out",
    path.join(place, "site"),
  );
  expect(exit).toBe(1);
  expect(await contentsOf(place)).toEqual(
    Object.fromEntries([
      ["site", ""],
      ...Object.entries(before).map(([file, text]) => [path.join("site", file), text]),
    ]),
  );
});
