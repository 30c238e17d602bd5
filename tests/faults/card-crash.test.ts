import { readdir, rm } from "node:fs/promises";
import path from "node:path";
import PDFDocument from "pdfkit";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { run } from "../commands/run.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

/** Whole builds in processes of their own, on machines that may be busy. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let clubs: TinyClubs;
beforeAll(async () => {
  clubs = await tinyClubs();
});
afterAll(() => rm(clubs.dir, { recursive: true, force: true }));

test("3: a card that breaks the program is named, and the old guide stays", async () => {
  const out = path.join(clubs.dir, "place/site");
  expect((await run("guide", "--data", clubs.old, "--out", out)).exit).toBe(0);
  const before = await contentsOf(out);
  vi.spyOn(PDFDocument.prototype, "addPage").mockImplementation(() => {
    throw new TypeError("the ink is dry");
  });
  const { exit, warned } = await run("guide", "--data", clubs.new, "--out", out);
  expect(exit).toBe(3);
  expect(warned).toMatch(/^The program failed: cards\/ember\.pdf cannot be made: the ink is dry$/m);
  expect(warned).toContain(`Nothing written, ${out} is as it was.`);
  expect(warned).toMatch(/TypeError: the ink is dry\n\s+at /);
  expect(await contentsOf(out)).toEqual(before);
  expect(await readdir(path.dirname(out))).toEqual(["site"]);
});
