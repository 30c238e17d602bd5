import { readdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { planIceOffImport } from "../../build/edit/import-ice-off.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { CLUB_YAML, clubFolder, type Files, LAKE_YAML } from "../input/club-folder.ts";
import { run } from "./run.ts";

const HARE = "name: Hare Tarn\nposition: { lat: 41.3, lon: -106.3 }\n";
const ROWS = "iceOff:\n  - { season: 2016, on: 2016-05-01 } # seen by all of us\n";

/** A club of two lakes with a table beside the club folder's files that it does not read. */
async function clubWith(
  table: string | Uint8Array,
  files: Files = {},
): Promise<{ data: string; table: string }> {
  const data = await clubFolder({ "lakes/hare.yaml": HARE, ...files, ".table.csv": table });
  return { data, table: path.join(data, ".table.csv") };
}
const importInto = ({ data, table }: { data: string; table: string }, ...more: string[]) =>
  run("import", table, "--data", data, ...more);
const lakeText = (data: string, slug = "ember") => readFile(path.join(data, `lakes/${slug}.yaml`), "utf8");

/** Every record of a lake, as its season and days. */
async function recordsOf(data: string, slug = "ember"): Promise<object[]> {
  const { club, problems } = await loadClub(data);
  // Lakes of both halves of the earth lie far apart.
  expect(problems.filter(({ code }) => code !== "far-from-time-zone")).toEqual([]);
  const lake = club?.lakes.find((one) => one.slug === slug) ?? expect.fail();
  return lake.iceOff.map(({ where: _, ...days }) => days);
}

describe("rows are added, and what was there stays letter by letter", () => {
  test.each<[string, string, string]>([
    ["no list", LAKE_YAML, `${LAKE_YAML}iceOff:\n  - { season: 2017, on: 2017-05-09 }\n`],
    [
      "no line end at the end, behind a text of several lines",
      `${LAKE_YAML}notes: |\n  Deep.`,
      `${LAKE_YAML}notes: |\n  Deep.\niceOff:\n  - { season: 2017, on: 2017-05-09 }\n`,
    ],
    [
      "a list, a comment, and more keys",
      `${LAKE_YAML}${ROWS}# Cloudy days:\nturnoverRule: none\n`,
      `${LAKE_YAML}${ROWS}  - { season: 2017, on: 2017-05-09 }\n# Cloudy days:\nturnoverRule: none\n`,
    ],
    [
      "Windows line ends, dashes at the margin, a row of several lines",
      `${LAKE_YAML}iceOff:\n- season: 2016\n  on: 2016-05-01\nwater: clear\n`.replaceAll("\n", "\r\n"),
      `${LAKE_YAML}iceOff:\n- season: 2016\n  on: 2016-05-01\n- { season: 2017, on: 2017-05-09 }\nwater: clear\n`.replaceAll(
        "\n",
        "\r\n",
      ),
    ],
    [
      "a row in braces over two lines",
      `${LAKE_YAML}iceOff:\n    - { season: 2016,\n        on: 2016-05-01\n      }\nwater: clear\n`,
      `${LAKE_YAML}iceOff:\n    - { season: 2016,\n        on: 2016-05-01\n      }\n    - { season: 2017, on: 2017-05-09 }\nwater: clear\n`,
    ],
    [
      "an empty list in brackets, which go",
      `${LAKE_YAML}iceOff: [] # none yet\nwater: clear\n`,
      `${LAKE_YAML}iceOff: # none yet\n  - { season: 2017, on: 2017-05-09 }\nwater: clear\n`,
    ],
    [
      "a byte order mark",
      `\ufeff${LAKE_YAML}${ROWS}`,
      `\ufeff${LAKE_YAML}${ROWS}  - { season: 2017, on: 2017-05-09 }\n`,
    ],
  ])("%s", async (_, before, after) => {
    const club = await clubWith("lake,on\nEmber Lake,2017-05-09\n", { "lakes/ember.yaml": before });
    const { exit, said, warned } = await importInto(club);
    expect({ exit, warned }).toEqual({ exit: 0, warned: "" });
    expect(said).toContain("lakes/ember.yaml: - { season: 2017, on: 2017-05-09 }");
    expect(await lakeText(club.data)).toBe(after);
    expect(await recordsOf(club.data)).toContainEqual({ season: 2017, on: "2017-05-09" });
    expect(await readdir(path.join(club.data, "lakes"))).toEqual(["ember.yaml", "hare.yaml"]);
  });
});

test("lakes by name or file name, days as the club's form writes them, intervals, seasons south of the equator", async () => {
  const club = await clubWith(
    "Lake;Season;On;After;By\nember;2018;5/9/2018;;\nHARE  TARN;;;5/1/2019;2019-05-08\nhare;;;;5/3/2018\nSouth Tarn;;1/10/2019;;\n",
    {
      "club.yaml": `${CLUB_YAML}reportForm: { dates: month/day/year, columns: { lake: Lake, date: Day } }\n`,
      "lakes/south.yaml": "name: South Tarn\nposition: { lat: -41.3, lon: 170 }\n",
    },
  );
  expect(await importInto(club)).toMatchObject({ exit: 0, warned: "" });
  expect(await recordsOf(club.data)).toEqual([{ season: 2018, on: "2018-05-09" }]);
  expect(await recordsOf(club.data, "hare")).toEqual([
    { season: 2018, by: "2018-05-03" },
    { season: 2019, after: "2019-05-01", by: "2019-05-08" },
  ]);
  expect(await recordsOf(club.data, "south")).toEqual([{ season: 2018, on: "2019-01-10" }]);
});

test("what is there already is counted and left out, also the second time and within the table", async () => {
  const club = await clubWith("lake,on\nember,2016-05-01\nember,2017-05-09\nEmber Lake,2017-05-09\n", {
    "lakes/ember.yaml": LAKE_YAML + ROWS,
  });
  expect((await importInto(club)).said).toMatch(/\n1 row of 1 lake added \(2 there already\)$/);
  const once = await lakeText(club.data);
  expect((await importInto(club)).said).toBe("0 rows of 0 lakes added (3 there already)");
  expect(await lakeText(club.data)).toBe(once);
});

test("a dry run says the same and writes nothing", async () => {
  const club = await clubWith("lake,on\nember,2017-05-09\n");
  const { exit, said } = await importInto(club, "--dry-run");
  expect(exit).toBe(0);
  expect(said).toBe(
    "lakes/ember.yaml: - { season: 2017, on: 2017-05-09 }\n1 row of 1 lake would be added; nothing was written (0 there already)",
  );
  expect(await lakeText(club.data)).toBe(LAKE_YAML);
});

describe("one row wrong, and nothing is written", () => {
  const GOOD = "hare,,2017-05-12,,\n";
  test.each<[string, string, string, Files?]>([
    ["unknown lake", "Embr Lake,,2017-05-09,,", ".table.csv:3:1 error unknown-lake"],
    ["not a day", "ember,,9 May,,", ".table.csv:3:8 error not-a-date"],
    ["no such day", "ember,,2017-02-30,,", ".table.csv:3:8 error no-such-day"],
    ["no lake", ",,2017-05-09,,", ".table.csv:3:1 error empty-value"],
    ["no date", "ember,2017,,,", ".table.csv:3:7 error no-ice-off-date"],
    ["both ways", "ember,,2017-05-09,2017-05-01,", ".table.csv:3:19 error on-and-interval"],
    ["by before after", "ember,,,2017-05-09,2017-05-01", ".table.csv:3:20 error by-before-after"],
    ["another season", "ember,2016,2017-05-09,,", ".table.csv:3:12 error wrong-season"],
    ["a season to come", "ember,,2027-05-09,,", ".table.csv:3:7 error future-season"],
    ["an autumn day", "ember,,2017-11-09,,", ".table.csv:3:8 error ice-off-out-of-season"],
    ["a season that is a word", "ember,last,2017-05-09,,", ".table.csv:3:7 error wrong-type"],
    ["another day in the table", "hare,,2017-05-13,,", "on 2017-05-12 in"],
    [
      "another day in the lake's file",
      "ember,,2016-05-02,,",
      "season 2016 is there already: on 2016-05-01 in lakes/ember.yaml, line 4",
      { "lakes/ember.yaml": LAKE_YAML + ROWS },
    ],
    [
      "rows in brackets",
      "ember,,2017-05-09,,",
      "lakes/ember.yaml:3:9 error list-in-brackets",
      { "lakes/ember.yaml": `${LAKE_YAML}iceOff: [{ season: 2016, on: 2016-05-01 }]\n` },
    ],
    [
      "a lake in braces",
      "ember,,2017-05-09,,",
      "lakes/ember.yaml:1:1 error cannot-add-rows",
      { "lakes/ember.yaml": "{ name: Ember Lake, position: { lat: 41.3, lon: -106.3 } }\n" },
    ],
    [
      "a lake whose own rows are wrong",
      "ember,,2017-05-09,,",
      "lakes/ember.yaml:4:5 error missing-key",
      { "lakes/ember.yaml": `${LAKE_YAML}iceOff:\n  - { on: 2016-05-01 }\n` },
    ],
  ])("%s", async (_, row, told, files = {}) => {
    const club = await clubWith(`lake,season,on,after,by\n${GOOD}${row}\n`, files);
    const before = await lakeText(club.data);
    const { exit, said, warned } = await importInto(club);
    expect(warned).toContain(told);
    expect(warned).toContain("Nothing was written");
    expect({ exit, said }).toEqual({ exit: 1, said: "" });
    expect(await lakeText(club.data)).toBe(before);
    expect(await lakeText(club.data, "hare")).toBe(HARE);
    const table = { file: "table.csv", slug: "", text: await readFile(club.table, "utf8") };
    expect((await planIceOffImport(club.data, table)).lakes).toEqual([]);
  });

  test.each<[string, string | Uint8Array, number, string]>([
    ["no column of dates", "lake,season\nember,2017\n", 1, ".table.csv:1:1 error missing-column"],
    ["no column of lakes", "tarn,on\nember,2017-05-09\n", 1, ".table.csv:1:1 error missing-column"],
    ["no text", new Uint8Array([0x6c, 0xe9]), 2, "UTF-8"],
  ])("a table with %s", async (_, table, code, told) => {
    const { exit, warned } = await importInto(await clubWith(table));
    expect(warned).toContain(told);
    expect(exit).toBe(code);
  });

  test.each([
    ["another way to write a day", "ember,5/9/2017", "2:7 error not-a-date"],
    ["no such lake", "nowhere,2017-05-09", "2:1 error unknown-lake"],
    ["no day", "ember,", "2:1 error no-ice-off-date"],
  ])("%s is told alone: nobody is asked for the season, too", async (_, row, told) => {
    const { warned } = await importInto(await clubWith(`lake,on\n${row}\n`));
    expect(warned).toContain(`.table.csv:${told}`);
    expect(warned.match(/ error /g)).toHaveLength(1);
  });

  test("no table, no club", async () => {
    const club = await clubWith("lake,on\nember,2017-05-09\n");
    expect((await run("import", path.join(club.data, "none.csv"), "--data", club.data)).exit).toBe(2);
    expect((await run("import", club.table, "--data", path.join(club.data, "none"))).exit).toBe(1);
  });
});

test("files edited since they were read are all left as they are", async () => {
  const { replaceFiles } = await import("../../build/edit/write-files.ts");
  const { data } = await clubWith("");
  const [ember, hare] = ["ember", "hare"].map((slug) => path.join(data, `lakes/${slug}.yaml`));
  await writeFile(hare ?? "", "mine\n");
  const all = [
    { file: ember ?? "", before: LAKE_YAML, after: "new" },
    { file: hare ?? "", before: HARE, after: "new" },
  ];
  await expect(replaceFiles(all)).rejects.toThrow("edited meanwhile");
  expect(await lakeText(data)).toBe(LAKE_YAML);
  expect(await lakeText(data, "hare")).toBe("mine\n");
  expect(await readdir(path.join(data, "lakes"))).toEqual(["ember.yaml", "hare.yaml"]);
});
