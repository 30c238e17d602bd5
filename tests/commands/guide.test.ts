import { cp, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { writeSyntheticClub } from "../bench/synthetic-club.ts";
import { type Ran, run } from "./run.ts";

/** The demo holds one doubtful report on purpose, and one that speaks against it; they must be named, and nothing else. */
/** An early “ice off” of one lake is doubted, and its later “ice on” is pointed out. */
const onlyTheIntendedDoubt = expect.stringMatching(
  /^reports\/2026\.yaml:\d+:\d+ warning report-doubted Gannister Lake[^\n]*\n[^\n]*\nreports\/2026\.yaml:\d+:\d+ warning ice-back Gannister Lake[^\n]*\n[^\n]*$/,
);

let work: string;
let out: string;
/** What the first build said. */
let first: Ran;
/** A club of one lake, for what does not depend on the club. */
let little: string;
const inWork = (name: string): string => path.join(work, name);
const readGuide = async (dir: string): Promise<Guide> =>
  JSON.parse(await readFile(path.join(dir, "guide.json"), "utf8")) as Guide;

async function filesOf(dir: string): Promise<Map<string, Buffer>> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => path.join(parentPath, name));
  return new Map(
    await Promise.all(
      files.sort().map(async (file) => [path.relative(dir, file), await readFile(file)] as const),
    ),
  );
}

/** Files that only one of two folders holds, or that differ. */
const unlike = (one: Map<string, Buffer>, other: Map<string, Buffer>): string[] =>
  [...new Set([...one.keys(), ...other.keys()])].filter((file) => {
    const bytes = one.get(file);
    return bytes === undefined || !other.get(file)?.equals(bytes);
  });

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "guide-"));
  out = inWork("site");
  little = inWork("little");
  await writeSyntheticClub(little, 1);
  first = await run("guide", "--data", "demo-data", "--out", out);
  expect(first).toMatchObject({ exit: 0, warned: onlyTheIntendedDoubt });
});
afterAll(() => rm(work, { recursive: true, force: true }));

describe("the demo guide", () => {
  test("every file of the contract is there", async () => {
    const guide = await readGuide(out);
    const files = await filesOf(out);
    const promised = [
      "index.html",
      "guide.json",
      ...["guide", "club", "lake", "pattern", "reports", "trip", "rigs"].map(
        (kind) => `schema/${kind}.schema.json`,
      ),
      ...guide.lakes.flatMap(({ slug }) => [
        `lakes/${slug}/index.html`,
        `lakes/${slug}/season.ics`,
        `cards/${slug}.pdf`,
      ]),
      ...guide.patterns.map(({ slug }) => `patterns/${slug}/index.html`),
      ...guide.trips.map(({ slug }) => `trips/${slug}/index.html`),
      "cards/sheets-a4.pdf",
      "cards/sheets-letter.pdf",
      "cards/rig-a6.pdf",
      "cards/rig-5x3.pdf",
    ];
    expect(promised.filter((file) => !files.has(file))).toEqual([]);
  });

  test("it says what was made, where, how long it took and what to do next", async () => {
    const files = [...(await filesOf(out)).keys()];
    const { lakes } = await readGuide(out);
    const [what, ...next] = first.said.split("\n");
    const count = (ending: string): number => files.filter((file) => file.endsWith(ending)).length;
    expect(what).toContain(
      `${lakes.length} lakes, ${count(".html")} pages, ${count(".pdf")} card files in ${out} (1.2 s)`,
    );
    expect(next.map((line) => line.split(":")[0])).toEqual(["Open", "Print", "Share"]);
    for (const file of ["index.html", "cards/sheets-a4.pdf"]) {
      expect(files).toContain(file);
      expect(next.join("\n")).toContain(`${out}/${file}`);
    }
  });

  test("two builds are byte-identical", async () => {
    await run("guide", "--data", "demo-data", "--out", inWork("again"));
    expect(unlike(await filesOf(out), await filesOf(inWork("again")))).toEqual([]);
  });

  test("--cache names where results are kept; built from them, the guide is the same to the byte", async () => {
    await run("guide", "--data", little, "--out", inWork("uncached"));
    for (const again of ["first", "second"])
      await run("guide", "--data", little, "--out", inWork(again), "--cache", inWork("results"));
    expect((await readdir(inWork("results"))).length).toBeGreaterThan(0);
    const files = await filesOf(inWork("uncached"));
    expect(unlike(files, await filesOf(inWork("first")))).toEqual([]);
    expect(unlike(files, await filesOf(inWork("second")))).toEqual([]);
  });

  test("a cache that cannot be written is no error", async () => {
    await writeFile(inWork("no-folder"), "");
    const cached = await run(
      ...["guide", "--data", little, "--out", inWork("no-cache"), "--cache", inWork("no-folder")],
    );
    expect(cached.exit).toBe(0);
  });

  test("guide.json follows its published schema (Ajv, an independent validator)", async () => {
    const ajv = addFormats.default(new Ajv2020.default({ strict: true, allErrors: true }));
    const schema = JSON.parse(await readFile(path.join(out, "schema/guide.schema.json"), "utf8")) as object;
    const validate = ajv.compile(schema);
    const guide = (await readGuide(out)) as unknown as Record<string, unknown>;
    expect(validate(guide), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...guide, asOf: "16 May" })).toBe(false);
    expect(validate({ ...guide, unheardOf: 1 })).toBe(false);
  });

  test("the chances of every lake sum to 1 on every day", async () => {
    for (const { slug, daily } of (await readGuide(out)).lakes)
      for (const { date, iced, iceOff, turnover, postTurnover, laterWeeks } of daily)
        expect(
          Math.abs(iced + iceOff + turnover + postTurnover + laterWeeks - 1),
          `${slug} ${date}`,
        ).toBeLessThan(1e-9);
  });

  test("an unlisted trip has its page, and guide.json does not give it away", async () => {
    const files = await filesOf(out);
    expect(files.has("trips/over-the-pass/index.html")).toBe(true);
    expect(files.get("guide.json")?.toString()).not.toContain("over-the-pass");
  });

  test("spreads are in order, and phases follow each other", async () => {
    for (const { slug, iceOff, phases } of (await readGuide(out)).lakes) {
      for (const { p10, p50, p90 } of [iceOff, ...phases.flatMap(({ from, to }) => [from, to])])
        expect([p10, p50, p90], slug).toEqual([p10, p50, p90].sort());
      const middles = phases.flatMap(({ from, to }) => [from.p50, to.p50]);
      expect(middles, slug).toEqual([...middles].sort());
    }
  });
});

describe("exit codes, and the old output", () => {
  test("--as-of speaks from another day", async () => {
    await run("guide", "--data", little, "--out", inWork("early"), "--as-of", "2026-04-20");
    expect((await readGuide(inWork("early"))).asOf).toBe("2026-04-20");
  });

  test("--base-url reaches the guide", async () => {
    await run(
      "guide",
      "--data",
      little,
      "--out",
      inWork("online"),
      "--base-url",
      "https://club.example/guide",
    );
    expect((await readGuide(inWork("online"))).baseUrl).toBe("https://club.example/guide/");
  });

  test("1: an error in the data writes nothing", async () => {
    const data = inWork("broken");
    await cp(little, data, { recursive: true });
    await writeFile(
      path.join(data, "lakes/broken.yaml"),
      "name: Broken\nposition: { lat: 141, lon: -106 }\n",
    );
    const before = await filesOf(out);
    const { exit, warned } = await run("guide", "--data", data, "--out", out);
    expect(exit).toBe(1);
    expect(warned).toMatch(/^lakes\/broken\.yaml:2:\d+ error /);
    expect(unlike(await filesOf(out), before)).toEqual([]);
  });

  test("1: a text too long for its card names card and field, and writes nothing", async () => {
    const data = inWork("long");
    await cp(little, data, { recursive: true });
    const lake = (await readdir(path.join(data, "lakes"))).find((name) => name.endsWith(".yaml")) ?? "";
    const file = path.join(data, "lakes", lake);
    await writeFile(
      file,
      (await readFile(file, "utf8")).replace(/^name: .*/m, `name: ${"Longwater ".repeat(12)}`),
    );
    const { exit, warned } = await run("guide", "--data", data, "--out", inWork("never"));
    expect(exit).toBe(1);
    expect(warned).toMatch(new RegExp(`lakes/${lake}:1:1 error card-overflow .*name`));
    await expect(readdir(inWork("never"))).rejects.toThrow("ENOENT");
  });

  test.each([
    ["an unknown option", ["guide", "--colour"]],
    ["a day that is none", ["guide", "--as-of", "2026-02-30"]],
    ["an address that is none", ["guide", "--base-url", "club"]],
    ["an unknown command", ["bake"]],
    ["an unknown kind", ["new", "boat", "Nell"]],
    ["a format that is none", ["check", "--format", "xml"]],
  ])("2: %s", async (_, args) => {
    expect((await run(...args)).exit).toBe(2);
  });

  test("2: --only with a lake that is none names the lakes", async () => {
    const { exit, warned } = await run("guide", "--data", little, "--out", out, "--only", "nowhere");
    expect(exit).toBe(2);
    const lake = (await readdir(path.join(little, "lakes"))).find((name) => name.endsWith(".yaml"));
    expect(warned).toContain(path.basename(lake ?? "", ".yaml"));
  });

  test("3: an output that cannot be written", async () => {
    await writeFile(inWork("a-file"), "");
    const { exit, warned } = await run("guide", "--data", little, "--out", inWork("a-file/site"));
    expect(exit).toBe(3);
    expect(warned).toContain("cannot write");
  });

  test("--only makes one lake anew and keeps the rest", async () => {
    const partly = inWork("partly");
    await cp(out, partly, { recursive: true });
    const [first, second] = (await readGuide(out)).lakes;
    await writeFile(path.join(partly, `cards/${first?.slug}.pdf`), "stale");
    await writeFile(path.join(partly, `cards/${second?.slug}.pdf`), "kept");
    expect(
      (await run("guide", "--data", "demo-data", "--out", partly, "--only", first?.slug ?? "")).exit,
    ).toBe(0);
    const files = await filesOf(partly);
    expect(files.get(`cards/${first?.slug}.pdf`)?.subarray(0, 5).toString()).toBe("%PDF-");
    expect(files.get(`cards/${second?.slug}.pdf`)?.toString()).toBe("kept");
  });
});
