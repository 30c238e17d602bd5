import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readdir, readFile, rename, rm, symlink } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

/**
 * The program as it is packed for installing, in a folder of its own. Its libraries are linked from here instead of being
 * fetched: that npm can fetch them is shown by `npm ci`, not by this test.
 */
let work: string;
let program: string;
let own: string;

const { PATH } = process.env;

function command(name: string, ...args: readonly string[]) {
  const run = spawnSync(name, args, { cwd: work, encoding: "utf8", env: { PATH } });
  return { status: run.status, said: run.stdout, warned: run.stderr };
}
const installed = (...args: readonly string[]) => command(process.execPath, program, ...args);

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "installed-"));
  const packed = spawnSync("npm", ["pack", "--silent", "--pack-destination", work], { encoding: "utf8" });
  expect(packed.status, packed.stderr).toBe(0);
  expect(command("tar", "-xzf", packed.stdout.trim()).status).toBe(0);
  const modules = path.join(work, "node_modules");
  await mkdir(modules);
  await rename(path.join(work, "package"), path.join(modules, "lake-season-guide"));
  for (const name of await readdir("node_modules"))
    if (name !== ".bin") await symlink(path.resolve("node_modules", name), path.join(modules, name));
  own = path.join(modules, "lake-season-guide");
  const { bin } = JSON.parse(await readFile(path.join(own, "package.json"), "utf8")) as {
    bin: Record<string, string>;
  };
  program = path.join(own, bin["lake-season-guide"] ?? "none");
});
afterAll(() => rm(work, { recursive: true, force: true }));

test("installed elsewhere, it begins a club, checks it and builds its guide", async () => {
  const begun = installed("new", "club", "my-club");
  expect(begun).toMatchObject({ status: 0 });
  expect(begun.warned).toContain("npx lake-season-guide guide --data my-club");
  expect(begun.warned).not.toContain("npm run");
  expect(installed("check")).toMatchObject({ status: 0, said: "my-club: no problems\n" });
  const built = installed("guide", "--no-cache");
  expect(built, built.warned).toMatchObject({ status: 0 });
  const pages = await readFile(path.join(work, "site/lakes/our-first-lake/index.html"), "utf8");
  expect(pages).toContain("Our First Lake");
  for (const file of ["index.html", "assets/site.css", "cards/our-first-lake.pdf", "guide.json"])
    expect(existsSync(path.join(work, "site", file)), file).toBe(true);
});

test("it came compiled: nothing is compiled where it is installed", async () => {
  expect(await readdir(path.join(own, "build/compiled"))).toHaveLength(1);
  expect(installed("--help").status).toBe(0);
  expect(existsSync(path.join(own, "node_modules"))).toBe(false);
  expect(existsSync("build/compiled")).toBe(false);
});

test("its exit code is the command's", () => {
  expect(installed("check", "--data", "nowhere").status).toBe(1);
  expect(installed("no-such-command").status).toBe(2);
});
