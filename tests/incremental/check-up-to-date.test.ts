import { appendFile, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { findProblems } from "../../build/commands/find-problems.ts";
import { cacheIn } from "../../build/incremental/cache.ts";
import { upToDateProblems } from "../../build/incremental/up-to-date.ts";
import type { Diagnostic } from "../../build/model/diagnostic.ts";
import { unmemoized } from "../../build/model/memoize.ts";
import { run } from "../commands/run.ts";
import { edits, makeEdit, writeSmallClub } from "./edited-club.ts";

let work: string;
let data: string;
beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "last-check-"));
  data = path.join(work, "club");
  await writeSmallClub(data);
});
afterAll(() => rm(work, { recursive: true, force: true }));

const problem = (code: string): Diagnostic => ({
  file: "club.yaml",
  line: 1,
  column: 1,
  severity: "warning",
  code,
  message: "m",
  hint: "h",
});

test("problems are looked for once, and again after an edit, by another version, or without a folder", async () => {
  const cache = cacheIn(path.join(work, "once"), { identity: "test" });
  let looked = 0;
  const look = (version = "1", dir = data) =>
    upToDateProblems(dir, version, cache, async () => {
      looked += 1;
      return [problem(`look-${looked}`)];
    });
  expect(await look()).toEqual([problem("look-1")]);
  expect(await look()).toEqual([problem("look-1")]);
  expect(await look("2")).toEqual([problem("look-2")]);
  await appendFile(path.join(data, "club.yaml"), "#\n");
  expect(await look()).toEqual([problem("look-3")]);
  expect(await look()).toEqual([problem("look-3")]);
  expect(await look("1", path.join(work, "none"))).toEqual([problem("look-4")]);
  expect(await look("1", path.join(work, "none"))).toEqual([problem("look-5")]);
});

test("what was found while the folder was edited is not kept", async () => {
  const cache = cacheIn(path.join(work, "meanwhile"), { identity: "test" });
  const club = path.join(data, "club.yaml");
  const before = await readFile(club);
  const edited = await upToDateProblems(data, "1", cache, async () => {
    await appendFile(club, "#\n");
    return [problem("old")];
  });
  expect(edited).toEqual([problem("old")]);
  await writeFile(club, before);
  expect(await upToDateProblems(data, "1", cache, async () => [problem("new")])).toEqual([problem("new")]);
});

/** An edit by which a card overflows, so that what is remembered of cards is more than nothing. */
const LONG_HAZARD = {
  says: "hazards too many for a card",
  file: "lakes/gannister.yaml",
  change: (text: string) =>
    text.replace(
      /^hazards:\n/m,
      `hazards:\n${"  - Ice falls from the cliff on the far side all morning.\n".repeat(40)}`,
    ),
};

test("a check with kept results finds what one without them does, edit after edit and back", async () => {
  const { memoize } = cacheIn(path.join(work, "edits"), { identity: "test" });
  const agree = async () => {
    const bare = await findProblems(data, "1", unmemoized);
    expect(await findProblems(data, "1", memoize)).toEqual(bare);
    expect(await findProblems(data, "1", memoize)).toEqual(bare);
    return bare;
  };
  await agree();
  const undo = await makeEdit(data, LONG_HAZARD);
  expect(await agree()).toContainEqual(expect.objectContaining({ code: "card-overflow" }));
  await undo();
  await fc.assert(
    fc.asyncProperty(edits, async (edit) => {
      const undoIt = await makeEdit(data, edit);
      try {
        await agree();
      } finally {
        await undoIt();
      }
    }),
    { numRuns: 4 },
  );
}, 120_000);

test("the command says the same again, and its exit code with it", async () => {
  const undo = await makeEdit(data, { says: "", file: "club.yaml", change: (text) => `${text}nam: x\n` });
  const kept = () => run("check", "--data", data, "--cache", path.join(work, "command"));
  const first = await kept();
  expect(first).toEqual(await run("check", "--data", data));
  expect(first.exit).toBe(1);
  expect(await kept()).toEqual(first);
  await undo();
  expect((await kept()).exit).toBe(0);
});
