import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from "vitest";
import { openPreview } from "../../build/commands/preview.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { type Cache, cacheIn, inMemory } from "../../build/incremental/cache.ts";
import type { Stage } from "../../build/model/progress.ts";
import { readGuide } from "../../build/pipeline.ts";
import { writeSmallClub } from "../incremental/edited-club.ts";

let work: string;
const inWork = (name: string): string => path.join(work, name);
beforeEach(async () => {
  work = await mkdtemp(path.join(tmpdir(), "preview-"));
  await writeSmallClub(inWork("club"), ["gannister", "chalkhen", "hobnail"]);
});
afterEach(() => rm(work, { recursive: true, force: true }));

async function edit(file: string, change: (text: string) => string): Promise<void> {
  const whole = inWork(`club/${file}`);
  await writeFile(whole, change(await readFile(whole, "utf8")));
}
const note =
  (words: string) =>
  (text: string): string =>
    `# A line above all others\n${text.trimEnd()}\n  ${words}\n`;

const requestFor = () => ({
  dataDir: inWork("club"),
  outDir: inWork("site"),
  version: "1",
  cache: inWork("results"),
  preview: true,
});

/** What was computed, kind by kind, and not remembered. */
function watched(): { cache: Cache; computed: string[] } {
  const computed: string[] = [];
  const disk = cacheIn(inWork("results"), { identity: "test" });
  return {
    computed,
    cache: {
      ...disk,
      memoize: (kind, needs, compute) =>
        disk.memoize(kind, needs, (given) => {
          computed.push(kind);
          return compute(given);
        }),
    },
  };
}

/** A preview, what it showed, and what it printed. */
function open() {
  const shown: Guide[] = [];
  const said: string[] = [];
  const warned: string[] = [];
  const stages: Stage[] = [];
  const preview = openPreview(
    requestFor(),
    {
      say: (line) => said.push(line),
      warn: (line) => warned.push(line),
      today: () => {
        throw new Error("a preview asks for no day");
      },
      now_ms: () => 0,
      progress: (stage) => stages.push(stage),
    },
    inMemory(cacheIn(inWork("results"), { identity: "test" })),
    (guide) => shown.push(guide),
  );
  onTestFinished(() => preview.close());
  return { preview, shown, said, warned, stages };
}
const published = (file: string): Promise<string> => readFile(inWork(`site/${file}`), "utf8");

describe("an edit of a lake's note", () => {
  const read = async ({ cache }: { cache: Cache }): Promise<Guide> => {
    const { guide } = await readGuide(requestFor(), cache, () => {});
    if (guide === undefined) throw new Error("no guide");
    return guide;
  };

  test("has nothing costly computed again, not even in a new process", async () => {
    const first = watched();
    await read(first);
    expect(first.computed).toEqual(expect.arrayContaining(["season forecast", "where to go when"]));
    await edit("lakes/hobnail.yaml", note("Seen again."));
    const next = watched();
    await read(next);
    expect(next.computed).toEqual([]);
  });

  test("leaves all other lakes the very same in a process that goes on", async () => {
    const memory = { cache: inMemory(watched().cache) };
    const first = await read(memory);
    await edit("lakes/hobnail.yaml", note("Seen again."));
    const next = await read(memory);
    const known = new Set(first.lakes);
    expect(next.lakes.filter((lake) => !known.has(lake)).map(({ slug }) => slug)).toEqual(["hobnail"]);
    expect(next.lakes.find(({ slug }) => slug === "hobnail")?.notes).toContain("Seen again.");
  });
});

describe("a preview", () => {
  test("shows first, then writes, and says both", async () => {
    const { preview, shown, said, warned } = open();
    await edit("lakes/hobnail.yaml", note("Seen again."));
    await preview.edited();
    expect(shown).toHaveLength(1);
    expect(said).toEqual([expect.stringMatching(/^Pages are up to date in the browser.*follows …$/)]);
    await expect(published("index.html")).rejects.toThrow("ENOENT");
    await preview.written();
    expect(said.at(-1)).toMatch(/^Written to .*: \d+ pages, \d+ card files/);
    expect(await published("lakes/hobnail/index.html")).toContain("Seen again.");
    expect(warned.join()).not.toContain("error");
  });

  test("writes the last of several edits, and of those it overtook nothing", async () => {
    const { preview, shown, said } = open();
    await preview.edited();
    for (const words of ["First.", "Second.", "Third."]) {
      await edit("lakes/hobnail.yaml", note(words));
      await preview.edited();
    }
    await preview.written();
    expect(shown).toHaveLength(4);
    expect(said.filter((line) => line.startsWith("Written"))).toHaveLength(1);
    expect(await published("lakes/hobnail/index.html")).toContain("Third.");
  });

  test("breaks off what it is writing when the next edit comes", async () => {
    const { preview, said, warned, stages } = open();
    await preview.edited();
    await vi.waitFor(() => expect(stages).toContain("cards"), { timeout: 30_000 });
    await edit("lakes/hobnail.yaml", note("Later."));
    await preview.edited();
    await preview.written();
    expect(said.filter((line) => line.startsWith("Written"))).toHaveLength(1);
    expect(stages.filter((stage) => stage === "publish")).toHaveLength(1);
    expect(warned.join()).not.toMatch(/abort|failed/i);
    expect(await published("lakes/hobnail/index.html")).toContain("Later.");
  });

  test("breaks it off for an edit with errors too, and then says rightly that nothing was written", async () => {
    const { preview, said, warned, stages } = open();
    await preview.edited();
    await vi.waitFor(() => expect(stages).toContain("cards"), { timeout: 30_000 });
    await edit("club.yaml", (text) => text.replace("imperial", "furlongs"));
    await preview.edited();
    await preview.written();
    expect(warned.at(-1)).toContain("nothing written");
    expect(said.join()).not.toContain("Written");
    await expect(published("index.html")).rejects.toThrow("ENOENT");
  });

  test("shows and writes nothing of data with errors, and goes on when they are mended", async () => {
    const { preview, shown, said, warned } = open();
    await preview.edited();
    await preview.written();
    const before = await published("index.html");
    await edit("club.yaml", (text) => text.replace("imperial", "furlongs"));
    await preview.edited();
    await preview.written();
    expect(shown).toHaveLength(1);
    expect(warned.at(-1)).toMatch(/^1 error.*nothing written, .*site is as it was\.$/);
    expect(await published("index.html")).toBe(before);
    await edit("club.yaml", (text) => text.replace("furlongs", "metric"));
    await preview.edited();
    await preview.written();
    expect(shown.at(-1)?.club.units).toBe("metric");
    expect(said.filter((line) => line.startsWith("Written"))).toHaveLength(2);
  });

  test("says of a card that does not fit why nothing is written", async () => {
    const { preview, warned } = open();
    await edit("lakes/hobnail.yaml", (text) => text.replace(/^name: .*$/m, `name: ${"Long ".repeat(40)}`));
    await preview.edited();
    await preview.written();
    expect(warned.join("\n")).toMatch(/lakes\/hobnail\.yaml.* error card-/);
    expect(warned.at(-1)).toContain("nothing written");
  });
});
