import { once } from "node:events";
import { mkdir, symlink, truncate, writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { openMemoizeLast } from "../../build/incremental/cache.ts";
import { type LoadOptions, loadClub } from "../../build/input/load-club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { CLUB_YAML, clubFolder, folderOf, LAKE_YAML } from "./club-folder.ts";

const said = async (dir: string): Promise<string[]> => (await loadClub(dir)).problems.map(formatDiagnostic);

test("a file of 50 MB is refused by its size", async () => {
  const dir = await clubFolder();
  const file = path.join(dir, "lakes/huge.yaml");
  await writeFile(file, LAKE_YAML);
  await truncate(file, 50_000_000);
  expect(await said(dir)).toEqual([
    "lakes/huge.yaml:1:1 error file-too-large the file has 50 MB; a club file may have 2 MB\n" +
      "    keep photos and other data out of the club folder, and split a long text",
  ]);
});

test("a link that leads out of the club folder is not followed", async () => {
  const outside = await folderOf({ "secret.yaml": LAKE_YAML, "pages/secret.md": "# Secret\n" });
  const dir = await clubFolder();
  await symlink(path.join(outside, "secret.yaml"), path.join(dir, "lakes/secret.yaml"));
  await symlink(path.join(outside, "pages"), path.join(dir, "pages"));
  await symlink("..", path.join(dir, "trips"));
  const { club, problems } = await loadClub(dir);
  const message =
    "error outside-folder this is a link that leads out of the club folder\n" +
    "    copy what it leads to into the club folder instead";
  expect(problems.map(formatDiagnostic)).toEqual([
    `lakes/secret.yaml:1:1 ${message}`,
    `pages:1:1 ${message}`,
    `trips:1:1 ${message}`,
  ]);
  expect(club).toBeUndefined();
});

test("a folder whose name begins like the club folder's is outside it", async () => {
  const dir = await folderOf({
    "club/club.yaml": CLUB_YAML,
    "club/lakes/ember.yaml": LAKE_YAML,
    "club-2/x.yaml": LAKE_YAML,
  });
  await symlink(path.join(dir, "club-2/x.yaml"), path.join(dir, "club/lakes/x.yaml"));
  expect(await said(path.join(dir, "club"))).toEqual([
    expect.stringContaining("lakes/x.yaml:1:1 error outside-folder"),
  ]);
});

test("a link inside the club folder is followed", async () => {
  const dir = await clubFolder();
  await symlink("ember.yaml", path.join(dir, "lakes/heron.yaml"));
  expect((await loadClub(dir)).club?.lakes.map(({ slug }) => slug)).toEqual(["ember", "heron"]);
});

test("a link that leads nowhere or round in a circle is an error", async () => {
  const dir = await clubFolder();
  await symlink("nowhere.yaml", path.join(dir, "lakes/gone.yaml"));
  await symlink("circle.yaml", path.join(dir, "lakes/circle.yaml"));
  expect(await said(dir)).toEqual([
    expect.stringContaining("lakes/circle.yaml:1:1 error unreadable"),
    expect.stringContaining("lakes/gone.yaml:1:1 error unreadable"),
  ]);
});

test("what is no plain file is refused", async () => {
  const dir = await clubFolder();
  await mkdir(path.join(dir, "lakes/folder.yaml"));
  const server = createServer().listen(path.join(dir, "lakes/socket.yaml"));
  onTestFinished(() => {
    server.close();
  });
  await once(server, "listening");
  expect(await said(dir)).toEqual([
    expect.stringContaining("lakes/folder.yaml:1:1 error not-a-file"),
    expect.stringContaining("lakes/socket.yaml:1:1 error not-a-file"),
  ]);
});

test("a file where a folder belongs is named", async () => {
  const dir = await clubFolder({ reports: "- { lake: ember }\n" });
  expect(await said(dir)).toEqual([
    "reports:1:1 error not-a-folder this is a file; a folder belongs here\n    move the file away and make a folder “reports”",
  ]);
});

test("the club folder itself may not be a file", async () => {
  const dir = await clubFolder();
  expect(await said(path.join(dir, "club.yaml"))).toEqual([
    expect.stringContaining(".:1:1 error not-a-folder"),
  ]);
});

test("text that is not UTF-8 is refused", async () => {
  const latin1 = Buffer.from("name: S\u00e9lune\nposition: { lat: 41, lon: -106 }\n", "latin1");
  const utf16 = Buffer.from(`\ufeff${LAKE_YAML}`, "utf16le");
  const dir = await clubFolder({ "lakes/selune.yaml": latin1, "lakes/wide.yaml": utf16 });
  const message =
    "error not-utf8 the file is not saved as UTF-8 text\n    save it again in your editor with the encoding UTF-8";
  expect(await said(dir)).toEqual([`lakes/selune.yaml:1:1 ${message}`, `lakes/wide.yaml:1:1 ${message}`]);
});

test("characters that cannot be printed are refused where they stand", async () => {
  const dir = await clubFolder({ "lakes/ember.yaml": `${LAKE_YAML}summary: a\u0000b\n` });
  expect(await said(dir)).toEqual([
    expect.stringContaining("lakes/ember.yaml:3:11 error yaml-bad-character"),
  ]);
});

test("a byte order mark and Windows line ends change neither what is read nor where it stands", async () => {
  const text = `\ufeff${LAKE_YAML}elevation: 2580\nwater: clear\ndepth: { max: 10 ft, mean: 12 ft }\n`;
  const dir = await clubFolder({ "lakes/ember.yaml": text.replaceAll("\n", "\r\n") });
  expect(await said(dir)).toEqual([
    expect.stringContaining("lakes/ember.yaml:3:12 error missing-unit"),
    expect.stringContaining("lakes/ember.yaml:5:28 error mean-above-max"),
  ]);
});

test("problems come in reading order, club.yaml first", async () => {
  const dir = await clubFolder({
    "club.yaml": `${CLUB_YAML}zeal: 1\n`,
    "lakes/ember.yaml": "zz: 1\nname: Ember Lake\nposition: { lon: -106.291, lat: 141 }\nelevation: 2580\n",
    "lakes/aa.yaml": "name: 1\nposition: { lat: 41, lon: -106 }\n",
  });
  const places = (await loadClub(dir)).problems.map(({ file, line, column }) => `${file}:${line}:${column}`);
  expect(places).toEqual([
    "club.yaml:6:1",
    "lakes/aa.yaml:1:7",
    "lakes/ember.yaml:1:1",
    "lakes/ember.yaml:3:33",
    "lakes/ember.yaml:4:12",
  ]);
});

test("a file that stands as it stood is not read again; one that could not be read is", async () => {
  const dir = await clubFolder();
  const lake = path.join(dir, "lakes/tarn.yaml");
  // No mark changes: only what was read well may be kept under it.
  const memory: LoadOptions = { memoizeLast: openMemoizeLast(), fileStamp: () => "as it was" };
  const read = async () => {
    const { club, problems } = await loadClub(dir, memory);
    return { codes: problems.map(({ code }) => code), names: club?.lakes.map(({ name }) => name) };
  };
  await writeFile(lake, Buffer.from([0xff, 0xfe, 0xfd]));
  expect((await read()).codes).not.toEqual([]);
  await writeFile(lake, LAKE_YAML.replace(/^name: .*$/m, "name: Tarn"));
  expect(await read()).toEqual({ codes: [], names: expect.arrayContaining(["Tarn"]) });
  const other = path.join(dir, "lakes/pool.yaml");
  await writeFile(other, LAKE_YAML.replace(/^name: .*$/m, "name: Pool"));
  expect((await read()).names).toContain("Pool");
  await writeFile(other, LAKE_YAML.replace(/^name: .*$/m, "name: Mere"));
  expect((await read()).names).toContain("Pool");
});
