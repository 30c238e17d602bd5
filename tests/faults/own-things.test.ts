import { existsSync } from "node:fs";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { type Ran, run } from "../commands/run.ts";
import { canMount, onSmallDisk } from "./small-disk.ts";
import { contentsOf, type TinyClubs, tinyClubs } from "./tiny-club.ts";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let clubs: TinyClubs;
/** A guide of the old club, as it was published. */
let published: string;
let ground: string;
const at = (...names: string[]): string => path.join(ground, ...names);

beforeAll(async () => {
  clubs = await tinyClubs();
  published = path.join(clubs.dir, "published");
  expect((await run("guide", "--data", clubs.old, "--out", published)).exit).toBe(0);
});
afterAll(() => rm(clubs.dir, { recursive: true, force: true }));
beforeEach(async () => {
  ground = await mkdtemp(path.join(tmpdir(), "own-"));
  return () => rm(ground, { recursive: true, force: true });
});

/** Files of somebody's own; a name that ends in a slash is an empty folder. */
async function put(dir: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(dir, name);
    await mkdir(name.endsWith("/") ? file : path.dirname(file), { recursive: true });
    if (!name.endsWith("/")) await writeFile(file, text);
  }
}
const withOldGuide = (): Promise<void> => cp(published, at("site"), { recursive: true });
const build = (...more: string[]): Promise<Ran> =>
  run("guide", "--data", clubs.new, "--out", at("site"), ...more);

const OWN = {
  CNAME: "guide.example\n",
  ".git/HEAD": "ref: refs/heads/main\n",
  ".git/refs/tags/": "",
  "lakes/ember/pier.jpg": "a photograph",
  "photographs/ice.jpg": "another one",
};

describe("a build over a guide among somebody's own files", () => {
  test("carries them over, and replaces the guide", async () => {
    await withOldGuide();
    await put(at("site"), OWN);
    await symlink("CNAME", at("site/a-link"));
    const before = await contentsOf(at("site"));
    const { exit, warned } = await build();
    expect([exit, warned]).toEqual([0, ""]);
    const after = await contentsOf(at("site"));
    expect(Object.keys(after)).toEqual(Object.keys(before));
    for (const name of [...Object.keys(OWN).filter((file) => !file.endsWith("/")), "a-link"])
      expect(after[name], name).toBe(before[name]);
    expect(after["index.html"]).toContain("New club");
    expect(await readdir(ground)).toEqual(["site"]);
  });

  test("takes away what the last guide had and the next has not", async () => {
    await cp(clubs.new, at("club"), { recursive: true });
    const second = (await readFile(at("club/lakes/ember.yaml"), "utf8")).replace("Ember Lake", "Second Tarn");
    await put(at("club"), { "lakes/second.yaml": second });
    await run("guide", "--data", at("club"), "--out", at("site"));
    await put(at("site"), { "lakes/second/pier.jpg": "a photograph" });
    await rm(at("club/lakes/second.yaml"));
    expect((await run("guide", "--data", at("club"), "--out", at("site"))).exit).toBe(0);
    expect(await readdir(at("site/lakes/second"))).toEqual(["pier.jpg"]);
    expect(existsSync(at("site/cards/second.pdf"))).toBe(false);
  });

  test("names the one that stands where the guide has a file", async () => {
    await withOldGuide();
    await put(at("site"), { "sitemap.xml": "a map of my own" });
    const before = await contentsOf(at("site"));
    const { exit, warned } = await build("--base-url", "https://guide.example/");
    expect(exit).toBe(3);
    expect(warned).toContain("sitemap.xml");
    expect(await contentsOf(at("site"))).toEqual(before);
    expect(await readdir(ground)).toEqual(["site"]);
  });

  test("of one lake alone leaves them too", async () => {
    await withOldGuide();
    await put(at("site"), OWN);
    const before = await contentsOf(at("site"));
    expect((await run("guide", "--data", clubs.old, "--out", at("site"), "--only", "ember")).exit).toBe(0);
    expect(await contentsOf(at("site"))).toEqual(before);
  });

  test("finds nothing to build when nothing but theirs has changed", async () => {
    await build("--cache", at("results"));
    await put(at("site"), OWN);
    const { said } = await build("--cache", at("results"));
    expect(said).toContain("nothing changed, nothing built");
  });
});

describe("a folder that is not a guide of the program's", () => {
  test.each([
    ["names the program in a guide.json", "guide.json", '{"program":{"name":"lake-season-guide"}}'],
    ["has another list of files", "guide-files.json", '{"files":["index.html"]}'],
    ["has a broken list of files", "guide-files.json", "lake-season-guide"],
  ])("is refused, though it %s", async (_, name, text) => {
    await put(at("site"), { [name]: text, "letters.txt": "mine" });
    const before = await contentsOf(ground);
    const { exit, warned } = await build();
    expect(exit).toBe(3);
    expect(warned).toContain(at("site"));
    expect(await contentsOf(ground)).toEqual(before);
  });

  test.each([".site.next", ".site.last", ".site.trash"])(
    "is left alone beside the output: %s",
    async (name) => {
      await withOldGuide();
      await put(at(name), { "letters.txt": "mine" });
      const { exit, warned } = await build();
      expect(await readFile(at(name, "letters.txt"), "utf8")).toBe("mine");
      expect(exit).toBe(3);
      expect(warned).toContain(name);
      expect((await run("guide", "--data", at("nowhere"), "--out", at("site"))).exit).toBe(1);
      expect(await readFile(at(name, "letters.txt"), "utf8")).toBe("mine");
    },
  );
});

describe("data and output that contain each other are refused, both unharmed:", () => {
  test.each([
    ["the club within the guide", "site/club", "site"],
    ["the guide within the club", "club", "club/site"],
    ["one folder for both", "club", "club"],
    ["a link into the club", "club", "link/site"],
  ])("%s", async (_, data, out) => {
    if (data === "site/club") await withOldGuide();
    await cp(clubs.new, at(data), { recursive: true });
    await symlink(at(data), at("link"));
    const before = await contentsOf(ground);
    for (const command of ["guide", "preview"]) {
      const { exit, warned } = await run(command, "--data", at(data), "--out", at(out), "--no-cache");
      expect(exit).toBe(2);
      expect(warned).toMatch(/club.*--out/s);
    }
    expect(await contentsOf(ground)).toEqual(before);
  });
});

describe("--zip", () => {
  test("replaces an archive of ours, and leaves nothing beside it", async () => {
    expect((await build("--zip", at("guide.zip"))).exit).toBe(0);
    const first = await readFile(at("guide.zip"));
    await run("guide", "--data", clubs.old, "--out", at("site"), "--zip", at("guide.zip"));
    expect((await readFile(at("guide.zip"))).equals(first)).toBe(false);
    expect((await readdir(ground)).sort()).toEqual(["guide.zip", "site"]);
  });

  test.each([
    ["a letter", strToU8("mine")],
    ["an archive of somebody's own", zipSync({ "letters.txt": strToU8("mine") })],
  ])("refuses %s before it builds", async (_, bytes) => {
    await writeFile(at("guide.zip"), bytes);
    const { exit, warned } = await build("--zip", at("guide.zip"));
    expect(exit).toBe(2);
    expect(warned).toContain(at("guide.zip"));
    expect(await readFile(at("guide.zip"))).toEqual(Buffer.from(bytes));
    expect(existsSync(at("site"))).toBe(false);
  });

  test.each(["club.yaml", "new.zip", "pages/new.zip"])("refuses a place in the club: %s", async (name) => {
    const before = await contentsOf(clubs.new);
    const { exit, warned } = await build("--zip", path.join(clubs.new, name));
    expect(exit).toBe(2);
    expect(warned).toContain(name);
    expect(await contentsOf(clubs.new)).toEqual(before);
  });

  test.skipIf(!canMount())("leaves the old archive on a disk that is full", async () => {
    await build("--zip", at("guide.zip"));
    const old = await readFile(at("guide.zip"));
    await onSmallDisk(`size=${Math.ceil(old.length / 1024) + 80}k`, async (disk) => {
      const zip = path.join(disk, "guide.zip");
      await writeFile(zip, old);
      const { exit } = await run("guide", "--data", clubs.old, "--out", at("site"), "--zip", zip);
      expect(exit).toBe(3);
      expect((await readFile(zip)).equals(old)).toBe(true);
      expect(await readdir(disk)).toEqual(["guide.zip"]);
    });
  });
});

describe("--cache", () => {
  test.each(["guide", "check"])("refuses a folder with somebody's own files: %s", async (command) => {
    await put(at("results"), { "letters.txt": "mine" });
    const out = command === "guide" ? ["--out", at("site")] : [];
    const { exit, warned } = await run(command, "--data", clubs.new, ...out, "--cache", at("results"));
    expect(exit).toBe(2);
    expect(warned).toContain("letters.txt");
    expect(await readdir(at("results"))).toEqual(["letters.txt"]);
  });

  test("refuses a place in the club", async () => {
    const { exit } = await build("--cache", path.join(clubs.new, "results"));
    expect(exit).toBe(2);
    expect(await readdir(clubs.new)).not.toContain("results");
  });
});

describe("new club with a path", () => {
  test("makes that folder", async () => {
    const { exit, warned } = await run("new", "club", at("north", "Tarn Anglers"));
    expect(exit).toBe(0);
    expect(await readFile(at("north", "Tarn Anglers", "club.yaml"), "utf8")).toMatch(
      /^name: "?Tarn Anglers/m,
    );
    expect(warned).toContain(at("north", "Tarn Anglers"));
  });

  test("says why not, where something is there", async () => {
    await put(at("full"), { "letters.txt": "mine" });
    const { exit, warned } = await run("new", "club", at("full"));
    expect(exit).toBe(2);
    expect(warned).toContain(at("full"));
    expect(await readdir(at("full"))).toEqual(["letters.txt"]);
  });
});
