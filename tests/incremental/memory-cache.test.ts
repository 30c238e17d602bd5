import { mkdirSync, mkdtempSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { cacheIn, inMemory, openMemoizeLast } from "../../build/incremental/cache.ts";
import { fileHash, openFileHash } from "../../build/incremental/file-hash.ts";
import { fileStamp } from "../../build/incremental/file-stamp.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(path.join(tmpdir(), "memory-"));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));
const inDir = (name: string): string => path.join(dir, name);

/** Writes a file, and sets its time to so many seconds ago. */
function written(name: string, text: string, ago_s: number): string {
  const file = inDir(name);
  writeFileSync(file, text);
  const time = Date.now() / 1000 - ago_s;
  utimesSync(file, time, time);
  return file;
}
/** Past the steps in which file systems tell time. */
const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 2700));

describe("made again", () => {
  test("only when a part is another one, and by its name", () => {
    const memoizeLast = openMemoizeLast();
    const lake = { name: "Ember" };
    const make = (name: string, ...from: unknown[]) => memoizeLast(name, from, () => ({ from }));
    const first = make("a", lake, 1, "x");
    expect(make("a", lake, 1, "x")).toBe(first);
    expect(make("b", lake, 1, "x")).not.toBe(first);
    expect(make("a", { ...lake }, 1, "x")).not.toBe(first);
    const longer = make("a", lake, 1, "x", undefined);
    expect(make("a", lake, 1, "x")).not.toBe(longer);
  });

  test("what throws is not kept", () => {
    const memoizeLast = openMemoizeLast();
    const fail = () => {
      throw new RangeError("no lake");
    };
    expect(() => memoizeLast("a", [], fail)).toThrow("no lake");
    expect(memoizeLast("a", [], () => 1)).toBe(1);
  });
});

describe("a cache in memory", () => {
  const open = () => inMemory(cacheIn(inDir("results"), { identity: "test" }));

  test("hands out the very same object for the same needs, and another for others", () => {
    const { memoize } = open();
    const twice = (of: number) =>
      memoize("double", { of, lakes: [{ of }] }, (needs) => ({ two: 2 * needs.of }));
    expect(twice(4)).toEqual({ two: 8 });
    expect(twice(4)).toBe(twice(4));
    expect(twice(5)).toEqual({ two: 10 });
    expect(memoize("triple", { of: 4, lakes: [{ of: 4 }] }, () => ({ two: 12 }))).toEqual({ two: 12 });
  });

  test("remembers what another process found", () => {
    open().memoize("double", { of: 4 }, () => ({ two: 8 }));
    const found = open().memoize("double", { of: 4 }, (): { two: number } => {
      throw new Error("computed again");
    });
    expect(found).toEqual({ two: 8 });
  });

  test("forgets what two runs did not ask for", () => {
    const cache = open();
    const ask = () => cache.memoize("double", { of: 4 }, () => ({ two: 8 }));
    const first = ask();
    cache.close();
    expect(ask()).toBe(first);
    cache.close();
    cache.close();
    expect(ask()).not.toBe(first);
    expect(ask()).toEqual(first);
  });
});

describe("a file's mark", () => {
  test("stays while the file does, and is another after each change, be it of the same size and time", async () => {
    const file = written("a.yaml", "one", 60);
    expect(fileStamp(file)).toBeUndefined();
    await settled();
    const mark = fileStamp(file);
    expect(mark).toBeDefined();
    expect(fileStamp(file)).toBe(mark);
    const { atime, mtime } = statSync(file);
    writeFileSync(file, "two");
    utimesSync(file, atime, mtime);
    expect(fileStamp(file)).toBeUndefined();
    await settled();
    expect(fileStamp(file)).toBeDefined();
    expect(fileStamp(file)).not.toBe(mark);
  });

  test("is not given to what is no plain file", async () => {
    written("a.yaml", "one", 60);
    mkdirSync(inDir("folder"));
    symlinkSync(inDir("a.yaml"), inDir("link.yaml"));
    await settled();
    expect(fileStamp(inDir("folder"))).toBeUndefined();
    expect(fileStamp(inDir("link.yaml"))).toBeUndefined();
    expect(fileStamp(inDir("none"))).toBeUndefined();
  });
});

describe("hashes", () => {
  test("are those of the bytes as they are, whatever was hashed before", () => {
    const hashes = openFileHash((file) => String(statSync(file).mtimeMs));
    const file = written("a.yaml", "one", 60);
    const one = hashes(file);
    expect(one).toBe(fileHash(file));
    written("a.yaml", "two", 30);
    expect(hashes(file)).toBe(fileHash(file));
    expect(hashes(file)).not.toBe(one);
  });

  test("are not taken for known where a file has no mark", () => {
    const hashes = openFileHash(() => undefined);
    const file = written("a.yaml", "one", 60);
    hashes(file);
    written("a.yaml", "two", 60);
    expect(hashes(file)).toBe(fileHash(file));
  });

  test("with the same mark the file is not read", () => {
    const hashes = openFileHash(() => "as it was");
    const file = written("a.yaml", "one", 60);
    const one = hashes(file);
    rmSync(file);
    expect(hashes(file)).toBe(one);
  });
});
