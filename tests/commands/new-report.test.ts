import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { load } from "js-yaml";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { clubFolder } from "../input/club-folder.ts";
import { run, runAsked } from "./run.ts";

const PATTERN = "name: Pale scud\nimitates: scud\nsizes: [12]\nphases: [ice-off]\nways: [indicator still]\n";
const folder = (files: Readonly<Record<string, string>> = {}) =>
  clubFolder({ "patterns/pale-scud.yaml": PATTERN, ...files });
const reports = (dir: string) => readFile(path.join(dir, "reports/2026.yaml"), "utf8");

describe("a report to fill in", () => {
  test("begins the season's file, dated by the guide's day, and is valid at once", async () => {
    const dir = await folder();
    const { exit, said } = await run("new", "report", "Ember", "Lake", "--data", dir);
    expect(exit).toBe(0);
    expect(said).toBe(path.join(dir, "reports/2026.yaml"));
    expect(load(await reports(dir))).toEqual([{ lake: "ember", date: "2026-05-16" }]);
    expect(await run("check", "--data", dir)).toMatchObject({ exit: 0, said: `${dir}: no problems` });
  });

  test("every key in it may be used as it is shown", async () => {
    const dir = await folder();
    await run("new", "report", "ember", "--data", dir);
    const opened = (await reports(dir)).replace(/^ {2}# ([a-z]+: )/gm, "  $1");
    await writeFile(path.join(dir, "reports/2026.yaml"), opened);
    expect(Object.keys((load(opened) as object[])[0] ?? {})).toEqual([
      "lake",
      "date",
      "ice",
      "phase",
      "water",
      "clarity",
      "deep",
      "looks",
      "oxygen",
      "rods",
      "hours",
      "caught",
      "samples",
      "notes",
    ]);
    expect((await run("check", "--data", dir)).said).toMatch(/: no problems$/);
  });

  test("without a day in club.yaml it is dated today, or else in the season's spring", async () => {
    const club = (season: number) =>
      `name: Test Club\nseason: ${season}\ntimezone: America/Denver\nunits: imperial\n`;
    const dir = await folder({ "club.yaml": club(2026) });
    await run("new", "report", "ember", "--data", dir);
    expect(load(await reports(dir))).toEqual([{ lake: "ember", date: "2026-05-20" }]);
    const later = await folder({ "club.yaml": club(2027) });
    await run("new", "report", "ember", "--data", later);
    expect(await readFile(path.join(later, "reports/2027.yaml"), "utf8")).toContain("date: 2027-05-01");
  });

  test.each([
    ["a row", "# Mine.\n- { lake: ember, date: 2026-05-01 } # first\n"],
    ["a row without a line end", "- lake: ember\n  date: 2026-05-01"],
    ["rows set in", "  - lake: ember\n    date: 2026-05-01\n    notes: |\n      Two\n\n      lines\n"],
    ["Windows line ends", "- lake: ember\r\n  date: 2026-05-01\r\n"],
    ["notes only", "# Nothing yet.\n"],
  ])("is put behind %s, which stays as it is", async (_, before) => {
    const dir = await folder({ "reports/2026.yaml": before });
    expect((await run("new", "report", "ember", "--data", dir)).exit).toBe(0);
    const after = await reports(dir);
    expect(after.startsWith(before)).toBe(true);
    expect((load(after) as object[]).at(-1)).toEqual({ lake: "ember", date: "2026-05-16" });
    expect(after.includes("\r\n")).toBe(before.includes("\r\n"));
    expect(after.replaceAll("\r\n", "").includes("\r")).toBe(false);
    expect((await run("check", "--data", dir)).said).toMatch(/: no problems$/);
  });

  test.each([
    ["in brackets", "[{ lake: ember, date: 2026-05-01 }]\n"],
    ["that is broken", "- { lake: ember\n"],
    ["of another kind", "lake: ember\n"],
  ])("is not put behind a list %s", async (_, before) => {
    const dir = await folder({ "reports/2026.yaml": before });
    const { exit, warned } = await run("new", "report", "ember", "--data", dir);
    expect(exit).toBe(2);
    expect(warned).toContain("- lake: ember");
    expect(await reports(dir)).toBe(before);
  });

  test("needs a lake of the club, unless there is but one", async () => {
    const two = await folder({ "lakes/tarn.yaml": "name: Tarn\nposition: { lat: 41, lon: -106 }\n" });
    expect(await run("new", "report", "--data", two)).toMatchObject({
      exit: 2,
      warned: "Name the lake. lakes: Ember Lake, Tarn",
    });
    expect(await run("new", "report", "Embr Lake", "--data", two)).toMatchObject({
      exit: 2,
      warned: "there is no lake “Embr Lake”: did you mean “Ember Lake”?",
    });
    expect((await run("new", "report", "--data", await folder())).exit).toBe(0);
  });

  test("needs a club", async () => {
    const { exit, warned } = await run("new", "report", "ember", "--data", "/nowhere/at/all");
    expect(exit).toBe(2);
    expect(warned).toContain("there is no folder");
  });
});

describe("asked at a terminal", () => {
  const ANSWERS = [
    "",
    "off",
    "",
    "44 degF",
    "",
    "",
    "",
    "",
    "2",
    "3 h",
    "pale scud 4 in 3 h",
    "scud 12; empty",
    'Wind: "cold" #1',
  ];

  test("the answers become a row behind the others", async () => {
    const before = "- { lake: ember, date: 2026-05-01 }\n";
    const dir = await folder({ "reports/2026.yaml": before });
    const { exit } = await runAsked(ANSWERS, "new", "report", "ember", "--data", dir);
    expect(exit).toBe(0);
    const after = await reports(dir);
    expect(after.startsWith(before)).toBe(true);
    expect((load(after) as object[]).at(-1)).toEqual({
      lake: "ember",
      date: "2026-05-16",
      ice: "off",
      water: "44 degF",
      rods: 2,
      hours: "3 h",
      caught: [{ pattern: "pale-scud", fish: 4, hours: "3 h" }],
      samples: [{ scud: 12 }, {}],
      notes: 'Wind: "cold" #1',
    });
    expect((await run("check", "--data", dir)).said).toMatch(/: no problems$/);
  });

  test("what cannot be read is asked again, with a word why", async () => {
    const { exit, warned } = await runAsked(
      [
        "Embr",
        "Ember Lake",
        "yesterday",
        "2025-05-12",
        "2026-05-12",
        "thawed",
        "off",
        "",
        "44",
        "44 degF",
        "",
        "",
        "",
        "",
        "two",
        "2",
        "30 h",
        "3 h",
        "pale-scud 4 in 9 h",
        "pale-scud 4",
        "scuds 3",
        "",
        "",
      ],
      "new",
      "report",
      "--data",
      await folder({ "lakes/tarn.yaml": "name: Tarn\nposition: { lat: 41, lon: -106 }\n" }),
    );
    expect(exit).toBe(0);
    for (const word of [
      "there is no lake “Embr”",
      "“yesterday” is not a day",
      "2025-05-12 belongs to season 2025",
      "“thawed” is not one of the choices",
      "44 has no unit",
      "“two” is not a whole number",
      "30 h is more than 24 h",
      "pale-scud was fished 9 rod-hours",
      "there is no food “scuds”",
    ])
      expect(warned).toContain(word);
  });

  test("when the answers end too soon nothing is written", async () => {
    const dir = await folder();
    const { exit, warned } = await runAsked(["2026-05-12", "off"], "new", "report", "ember", "--data", dir);
    expect(exit).toBe(2);
    expect(warned).toMatch(/Nothing was written\.$/);
    await expect(reports(dir)).rejects.toThrow("ENOENT");
  });

  test("with --no-ask nobody is asked", async () => {
    const dir = await folder();
    expect((await runAsked(["2026-05-12"], "new", "report", "ember", "--no-ask", "--data", dir)).exit).toBe(
      0,
    );
    expect(await reports(dir)).toContain("# water: 44 degF");
  });
});

describe("the demo club", () => {
  let work: string;
  beforeEach(async () => {
    work = await mkdtemp(path.join(tmpdir(), "new-report-"));
  });
  afterEach(() => rm(work, { recursive: true, force: true }));

  test("takes one more report", async () => {
    await cp("demo-data", work, { recursive: true });
    const before = await reports(work);
    expect((await run("new", "report", "Tallow Pond", "--data", work)).exit).toBe(0);
    expect((await reports(work)).startsWith(before)).toBe(true);
    expect((await run("check", "--data", work)).said).toMatch(/: 2 warnings$/);
  });
});
