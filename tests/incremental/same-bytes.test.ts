import { existsSync } from "node:fs";
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, onTestFinished, test } from "vitest";
import type { Effects } from "../../build/commands/effects.ts";
import { openPreview } from "../../build/commands/preview.ts";
import { composeGuide } from "../../build/guide/compose.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { cacheIn, inMemory } from "../../build/incremental/cache.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { makeGuide } from "../../build/pipeline.ts";
import { openLiveFiles } from "../../build/site/live-files.ts";
import { edits, makeEdit, writeSmallClub } from "./edited-club.ts";

function never(): never {
  throw new Error("nobody asks for this");
}

let work: string;
const inWork = (name: string): string => path.join(work, name);
beforeEach(async () => {
  work = await mkdtemp(path.join(tmpdir(), "same-bytes-"));
  await writeSmallClub(inWork("club"));
});
afterEach(() => rm(work, { recursive: true, force: true }));

async function bytesIn(dir: string): Promise<Record<string, string>> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  return Object.fromEntries(
    await Promise.all(
      files.map(async ({ parentPath, name }) => {
        const file = path.join(parentPath, name);
        return [path.relative(dir, file), (await readFile(file)).toString("latin1")] as const;
      }),
    ),
  );
}

/** Flips a bit in some of the files of a folder, cuts others short, loses a few. */
async function damage(dir: string, seed: number): Promise<void> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => path.join(parentPath, name))
    // A folder without its data, or without the list of its files, is not a guide, and is refused.
    .filter((file) => !["guide.json", "guide-files.json"].includes(path.relative(dir, file)))
    .sort();
  for (const [i, file] of files.entries()) {
    const dice = (seed + i * 7) % 8;
    const bytes = await readFile(file);
    const place = (seed * 7919) % Math.max(1, bytes.length);
    if (dice === 0) bytes[place] = (bytes[place] ?? 0) ^ 16;
    if (dice < 2) await writeFile(file, dice === 0 ? bytes : bytes.subarray(0, place));
    if (dice === 2) await rm(file);
  }
}

describe("with results of earlier builds and without, the same", () => {
  test("guide, over a row of edits, some of the kept results damaged", async () => {
    const content = await loadContent();
    let computed = 0;
    let answered = 0;
    await fc.assert(
      fc.asyncProperty(edits, fc.option(fc.nat()), async (edit, harm) => {
        const undo = await makeEdit(inWork("club"), edit);
        const { club } = await loadClub(inWork("club"));
        // An edit that breaks the club is taken back, so that the next ones are tried.
        if (club === undefined) return undo();
        const { memoize, close } = cacheIn(inWork("results"), { identity: "test" });
        if (harm !== null && computed > 0) await damage(inWork("results"), harm);
        const kept = composeGuide(club, content, {
          version: "1",
          memoize: (kind, needs, compute) => {
            answered++;
            return memoize(kind, needs, (given) => {
              computed++;
              return compute(given);
            });
          },
        });
        close();
        expect(kept).toStrictEqual(composeGuide(club, content, { version: "1" }));
      }),
      { numRuns: 6 },
    );
    // Else nothing was remembered, and nothing was tried.
    expect(computed).toBeLessThan(answered * 0.75);
  }, 180_000);

  test("output folder, byte for byte, over edits of the last one, some of its files or kept results damaged", async () => {
    const harms = fc.record({ kept: fc.option(fc.nat()), results: fc.option(fc.nat(), { freq: 1 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(edits, { minLength: 1, maxLength: 2 }), harms, async (changes, harm) => {
        for (const folder of ["kept", "results"] as const) {
          const seed = harm[folder];
          if (seed !== null && existsSync(inWork(folder))) await damage(inWork(folder), seed);
        }
        for (const edit of changes) {
          const undo = await makeEdit(inWork("club"), edit);
          if ((await loadClub(inWork("club"))).club === undefined) await undo();
        }
        const request = { dataDir: inWork("club"), version: "1" };
        const kept = await makeGuide({ ...request, outDir: inWork("kept"), cache: inWork("results") });
        const clean = await makeGuide({ ...request, outDir: inWork("clean"), cache: false });
        expect(kept).toStrictEqual(clean);
        expect(clean.guide).toBeDefined();
        expect(await bytesIn(inWork("kept"))).toStrictEqual(await bytesIn(inWork("clean")));
      }),
      { numRuns: 2 },
    );
    expect((await readdir(inWork("results"))).length).toBeGreaterThan(0);
  }, 400_000);

  test("what a preview that goes on shows and writes, over a row of edits, some interrupting it, some of its files damaged", async () => {
    const request = { dataDir: inWork("club"), version: "1", preview: true };
    const cache = inMemory(cacheIn(inWork("results"), { identity: "test" }));
    const told: string[] = [];
    const effects: Effects = {
      say: () => {},
      warn: (line) => told.push(line),
      today: () => never(),
      now_ms: () => 0,
    };
    let shown: Guide | undefined;
    const kept = { ...request, outDir: inWork("kept"), cache: inWork("results") };
    const preview = openPreview(kept, effects, cache, (guide) => {
      shown = guide;
    });
    onTestFinished(() => preview.close());
    const changes = fc.record({ edit: edits, isHasty: fc.boolean(), harm: fc.option(fc.nat(), { freq: 1 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(changes, { minLength: 3, maxLength: 4 }), async (row) => {
        for (const { edit, isHasty, harm } of row) {
          const undo = await makeEdit(inWork("club"), edit);
          if ((await loadClub(inWork("club"))).club === undefined) await undo();
          await preview.edited();
          if (!isHasty) await preview.written();
          if (harm !== null && !isHasty) await damage(inWork("kept"), harm);
        }
        told.length = 0;
        await preview.edited();
        const clean = await makeGuide({ ...request, outDir: inWork("clean"), cache: false });
        expect(shown).toStrictEqual(clean.guide);
        expect(told).toEqual(clean.problems.map(formatDiagnostic));
        const bytes = await bytesIn(inWork("clean"));
        const textAt = (await openLiveFiles(inWork("club")))(clean.guide ?? never());
        for (const [address, text] of Object.entries(bytes)) {
          const live = textAt(address);
          if (address.endsWith(".html")) expect(live).toBeDefined();
          if (live !== undefined) expect(Buffer.from(live).toString("latin1")).toBe(text);
        }
        await preview.written();
        expect(await bytesIn(inWork("kept"))).toStrictEqual(bytes);
      }),
      { numRuns: 1 },
    );
  }, 400_000);

  test("two builds at once share what they keep", async () => {
    const build = (out: string, cache: string | false) =>
      makeGuide({ dataDir: inWork("club"), outDir: inWork(out), version: "1", cache });
    await Promise.all([build("one", inWork("results")), build("other", inWork("results"))]);
    await build("clean", false);
    const clean = await bytesIn(inWork("clean"));
    expect(await bytesIn(inWork("one"))).toStrictEqual(clean);
    expect(await bytesIn(inWork("other"))).toStrictEqual(clean);
  }, 180_000);
});
