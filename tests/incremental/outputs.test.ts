import { mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { cacheIn, inMemory } from "../../build/incremental/cache.ts";
import { folderHash } from "../../build/incremental/file-hash.ts";
import { openOutputs } from "../../build/incremental/outputs.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(path.join(tmpdir(), "last-files-"));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));
const inDir = (name: string): string => path.join(dir, name);

const onDisk = () => cacheIn(inDir("results"), { identity: "test" });
/** A process that goes on, and one that begins anew each time. */
const PROCESSES = [
  ["in one process", () => inMemory(onDisk())],
  ["in a process each", onDisk],
] as const;

/** A build of two pages into `next`, put in the place of `out`; tells which of the two were made. */
function build(cache: ReturnType<typeof onDisk>, of: Readonly<Record<string, string>>): string[] {
  const next = inDir("next");
  rmSync(next, { recursive: true, force: true });
  mkdirSync(next);
  const kept = openOutputs(inDir("out"), next, cache);
  const made = Object.entries(of).filter(([address, text]) => {
    if (kept.reuse("page", { text }, [address])) return false;
    writeFileSync(path.join(next, address), text);
    return true;
  });
  expect(kept.keep()).toEqual(folderHash(next));
  rmSync(inDir("out"), { recursive: true, force: true });
  renameSync(next, inDir("out"));
  return made.map(([address]) => address);
}

describe.each(PROCESSES)("%s", (_, open) => {
  test("what is made of the same stays, and a file that was touched is made anew", () => {
    const cache = open();
    const pages = { "a.html": "aaa", "b.html": "bbb" };
    expect(build(cache, pages)).toEqual(["a.html", "b.html"]);
    expect(build(cache, { ...pages, "b.html": "other" })).toEqual(["b.html"]);
    writeFileSync(inDir("out/a.html"), "AAA");
    expect(build(cache, pages)).toEqual(["a.html", "b.html"]);
    expect(readFileSync(inDir("out/a.html"), "utf8")).toBe("aaa");
    rmSync(inDir("out/b.html"));
    expect(build(cache, pages)).toEqual(["b.html"]);
  });

  test("what stays is the very file, and has one name when its old folder is gone", () => {
    const cache = open();
    build(cache, { "a.html": "aaa" });
    const { ino } = statSync(inDir("out/a.html"));
    build(cache, { "a.html": "aaa" });
    expect(statSync(inDir("out/a.html"))).toMatchObject({ ino, nlink: 1 });
  });
});
