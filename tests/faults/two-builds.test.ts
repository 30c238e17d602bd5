import { spawn } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { hostname, tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from "vitest";
import { OutputHeld, takeLock } from "../../build/publish/output-lock.ts";
import { publish } from "../../build/publish/publish.ts";
import { startGuide } from "./child.ts";
import { contentsOf, tinyClubs } from "./tiny-club.ts";

/** Whole builds in processes of their own, on machines that may be busy. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let dir: string;
let lock: string;
beforeEach(async () => {
  dir = await mkdtemp(path.join(tmpdir(), "lock-"));
  lock = path.join(dir, ".site.lock");
});
afterEach(() => rm(dir, { recursive: true, force: true }));

const writeGuide = async (staging: string): Promise<boolean> => {
  await writeFile(path.join(staging, "guide.json"), "{}");
  return true;
};

describe("two builds into one folder", () => {
  test("of the real command both end well, and one of them is published whole", async () => {
    const clubs = await tinyClubs();
    onTestFinished(() => rm(clubs.dir, { recursive: true, force: true }));
    const alone = [];
    for (const data of [clubs.old, clubs.new]) {
      const out = path.join(clubs.dir, "alone");
      expect((await startGuide(data, out).ended).exit).toBe(0);
      alone.push(await contentsOf(out));
    }
    const out = path.join(dir, "site");
    const ended = await Promise.all([clubs.old, clubs.new].map((data) => startGuide(data, out).ended));
    expect(ended.map(({ exit }) => exit)).toEqual([0, 0]);
    expect(alone).toContainEqual(await contentsOf(out));
    expect(await readdir(dir)).toEqual(["site"]);
  });

  test("the second waits, and never meets the first one's files", async () => {
    let inside = 0;
    const write = async (staging: string): Promise<boolean> => {
      inside++;
      expect(inside).toBe(1);
      await writeGuide(staging);
      await new Promise((resolve) => setTimeout(resolve, 150));
      inside--;
      return true;
    };
    const out = path.join(dir, "site");
    await Promise.all([publish(out, write), publish(out, write), publish(out, write)]);
    expect(await readdir(dir)).toEqual(["site"]);
  });

  test("the second gives up with words that say who is at work", async () => {
    const held = await takeLock(lock, 0);
    await expect(publish(path.join(dir, "site"), writeGuide, { patience_ms: 150 })).rejects.toThrow(
      `another build is writing it: process ${process.pid}. Run the command again when that has ended.`,
    );
    held.release();
    expect(await readdir(dir)).toEqual([]);
  });

  test("a build whose lock was taken away publishes nothing", async () => {
    const write = async (staging: string): Promise<boolean> => {
      await writeFile(lock, "somebody else");
      return writeGuide(staging);
    };
    await expect(publish(path.join(dir, "site"), write)).rejects.toThrow(/took .* over/);
    expect(await readdir(dir)).toEqual([".site.lock"]);
  });
});

describe("a lock left behind", () => {
  const holder = async (change: object): Promise<void> => {
    const mine = await takeLock(lock, 0);
    const text = await readFile(lock, "utf8");
    mine.release();
    await writeFile(lock, JSON.stringify({ ...(JSON.parse(text) as object), ...change }));
  };
  const endedProcess = async (): Promise<number> => {
    const child = spawn(process.execPath, ["-e", ""]);
    await new Promise((resolve) => child.once("exit", resolve));
    return child.pid ?? 0;
  };

  test("by a process that has ended is taken over", async () => {
    await holder({ pid: await endedProcess() });
    (await takeLock(lock, 0)).release();
    expect(await readdir(dir)).toEqual([]);
  });

  test.skipIf(process.platform !== "linux")(
    "by a process whose number another one has now is taken over",
    async () => {
      await holder({ birth: "another boot 1" });
      (await takeLock(lock, 0)).release();
    },
  );

  test.each(["", '{"pid":12', "[]", "null"])(
    "cut off while it was written (%j) is taken over",
    async (text) => {
      await writeFile(lock, text);
      (await takeLock(lock, 0)).release();
      expect(await readdir(dir)).toEqual([]);
    },
  );

  test("on another machine is kept, and the message says what to do", async () => {
    await holder({ host: `not-${hostname()}` });
    await expect(takeLock(lock, 0)).rejects.toThrow(OutputHeld);
    await expect(takeLock(lock, 0)).rejects.toThrow(`delete ${lock}`);
  });

  test("and found by several at once goes to one at a time", async () => {
    await holder({ pid: await endedProcess() });
    let holding = 0;
    await Promise.all(
      Array.from({ length: 8 }, async () => {
        const mine = await takeLock(lock, 20_000);
        holding++;
        expect(holding).toBe(1);
        await new Promise((resolve) => setTimeout(resolve, 20));
        holding--;
        mine.release();
      }),
    );
  });

  test("a folder at its place is a system error, not an endless wait", async () => {
    await mkdir(lock);
    await expect(takeLock(lock, 0)).rejects.toThrow();
  });
});
