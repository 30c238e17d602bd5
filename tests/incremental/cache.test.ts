import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { cacheIn } from "../../build/incremental/cache.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(path.join(tmpdir(), "results-"));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const entries = (): string[] => readdirSync(dir).filter((name) => name.endsWith(".result"));
const identity = "this program";

/** Asks for the double of a number; tells whether it had to be computed. */
function ask(of: number, kind = "double", options: Parameters<typeof cacheIn>[1] = { identity }) {
  let hasComputed = false;
  const cache = cacheIn(dir, options);
  const result = cache.memoize(kind, { of }, (needs) => {
    hasComputed = true;
    return { doubled: needs.of * 2 };
  });
  cache.close();
  return { doubled: result.doubled, hasComputed };
}

describe("what is remembered", () => {
  test("the same question is answered without computing, another is not", () => {
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: false });
    expect(ask(5)).toEqual({ doubled: 10, hasComputed: true });
    expect(ask(4, "twice")).toEqual({ doubled: 8, hasComputed: true });
    expect(ask(4, "double", { identity: "the next program" })).toEqual({ doubled: 8, hasComputed: true });
  });

  test("plain data comes back the same to the last bit", () => {
    let of = 0;
    fc.assert(
      fc.property(fc.jsonValue(), fc.double(), (json, number) => {
        of++;
        const value = { json, number, missing: undefined, bytes: Float64Array.of(number) };
        const { memoize } = cacheIn(dir, { identity });
        memoize("any", { of }, () => value);
        const kept = memoize("any", { of }, (): typeof value => {
          throw new Error("computed again");
        });
        expect(kept).toStrictEqual(value);
      }),
      { numRuns: 60 },
    );
  });

  test("what compute throws is thrown, and nothing is kept", () => {
    const { memoize } = cacheIn(dir, { identity });
    const fail = () => {
      throw new RangeError("no such lake");
    };
    expect(() => memoize("x", {}, fail)).toThrow("no such lake");
    expect(entries()).toEqual([]);
  });
});

describe("an entry is never trusted", () => {
  const onlyEntry = (): string => path.join(dir, entries()[0] ?? "none");

  test("cut anywhere, or any bit of it flipped: made anew, and whole again afterwards", () => {
    ask(4);
    const whole = readFileSync(onlyEntry());
    const damage = fc.oneof(
      fc.nat(whole.length - 1).map((length) => whole.subarray(0, length)),
      fc.tuple(fc.nat(whole.length - 1), fc.nat(7)).map(([byte, bit]) => {
        const flipped = Buffer.from(whole);
        flipped[byte] = (flipped[byte] ?? 0) ^ (1 << bit);
        return flipped;
      }),
      fc.uint8Array({ minLength: 1 }).map((more) => Buffer.concat([whole, more])),
      fc.uint8Array().map((bytes) => Buffer.from(bytes)),
    );
    fc.assert(
      fc.property(damage, (bytes) => {
        writeFileSync(onlyEntry(), bytes);
        expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
        expect(readFileSync(onlyEntry()).equals(whole)).toBe(true);
      }),
    );
  });

  test("another question's entry under this one's name", () => {
    ask(4);
    const four = entries();
    ask(5);
    const five = entries().find((name) => !four.includes(name)) ?? "none";
    writeFileSync(path.join(dir, five), readFileSync(path.join(dir, four[0] ?? "none")));
    expect(ask(5)).toEqual({ doubled: 10, hasComputed: true });
  });

  test("a folder in its place", () => {
    ask(4);
    const file = onlyEntry();
    rmSync(file);
    mkdirSync(file);
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
  });
});

describe("where nothing can be kept", () => {
  test.each([
    ["a file where the folder should be", "file"],
    ["a file on the way to it", "file/in/here"],
  ])("%s: computed, and no error", (_, place) => {
    const parent = dir;
    writeFileSync(path.join(parent, "file"), "");
    dir = path.join(parent, place);
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    dir = parent;
  });

  test.skipIf(process.getuid?.() === 0)("a folder without leave to write", () => {
    chmodSync(dir, 0o500);
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    expect(ask(4)).toEqual({ doubled: 8, hasComputed: true });
    chmodSync(dir, 0o700);
  });
});

describe("its bounds", () => {
  const used = (name: string, seconds: number): void => utimesSync(path.join(dir, name), seconds, seconds);

  test("the least lately used goes first, and what was just asked for stays", () => {
    ask(1);
    const [one = "none"] = entries();
    const { size } = statSync(path.join(dir, one));
    ask(2);
    const two = entries().find((name) => name !== one) ?? "none";
    used(one, 1000);
    used(two, 2000);
    expect(ask(1).hasComputed).toBe(false);
    expect(ask(3, "double", { identity, most_bytes: 2 * size }).hasComputed).toBe(true);
    expect(entries()).toHaveLength(2);
    expect(entries()).toContain(one);
    expect(entries()).not.toContain(two);
  });

  test("whatever is asked, no more is kept than it may hold", () => {
    ask(0);
    const size = statSync(path.join(dir, entries()[0] ?? "none")).size;
    fc.assert(
      fc.property(fc.array(fc.nat(30), { maxLength: 12 }), fc.integer({ min: 1, max: 5 }), (asked, most) => {
        for (const of of asked)
          expect(ask(of, "double", { identity, most_bytes: most * size }).doubled).toBe(2 * of);
        if (ask(1000 + asked.length, "double", { identity, most_bytes: most * size }).hasComputed)
          expect(entries().length).toBeLessThanOrEqual(most);
      }),
      { numRuns: 30 },
    );
  });

  test("somebody's own files in the folder are left alone; what a killed run left goes after an hour", () => {
    writeFileSync(path.join(dir, "notes.txt"), "x".repeat(10_000));
    const half = (digit: string): string => `${digit.repeat(64)}.00000000-0000-0000-0000-000000000000.part`;
    writeFileSync(path.join(dir, half("a")), "");
    used(half("a"), 1000);
    writeFileSync(path.join(dir, half("b")), "");
    ask(4, "double", { identity, most_bytes: 0 });
    expect(entries()).toEqual([]);
    expect(existsSync(path.join(dir, "notes.txt"))).toBe(true);
    expect(existsSync(path.join(dir, half("a")))).toBe(false);
    expect(existsSync(path.join(dir, half("b")))).toBe(true);
  });
});
