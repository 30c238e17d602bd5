import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import {
  appendFile,
  cp,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  symlink,
  utimes,
  writeFile,
} from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { COMPILED } from "../../build/program/program-hash.mjs";

/** A checkout of its own, its libraries linked from here. */
let root: string;
let cache: string;

beforeAll(async () => {
  root = await mkdtemp(path.join(tmpdir(), "checkout-"));
  for (const name of ["build", "templates", "content", "package.json", "package-lock.json", "tsconfig.json"])
    await cp(name, path.join(root, name), {
      recursive: true,
      filter: (file) => file !== path.normalize(COMPILED),
    });
  await mkdir(path.join(root, "node_modules"));
  for (const name of await readdir("node_modules"))
    if (name !== ".cache")
      await symlink(path.resolve("node_modules", name), path.join(root, "node_modules", name));
  cache = path.join(root, "node_modules/.cache/lake-season-guide");
});
afterAll(() => rm(root, { recursive: true, force: true }));

const compiled = async (): Promise<string[]> => (existsSync(cache) ? readdir(cache) : []);
function help() {
  const { PATH } = process.env;
  const run = spawnSync(process.execPath, [path.join(root, "build/bin.mjs"), "--help"], {
    cwd: tmpdir(),
    encoding: "utf8",
    env: { PATH },
  });
  expect(run.stderr).toBe("");
  expect(run.status).toBe(0);
  return run.stdout;
}

test("the first run compiles, the next one runs what was compiled, an edit is compiled anew", async () => {
  expect(help()).toContain("fly club's lake notes");
  const [first = "none", ...others] = await compiled();
  expect(others).toEqual([]);
  const cli = path.join(cache, first, "build/cli.js");
  await appendFile(cli, 'console.log("compiled");\n');
  expect(help()).toContain("compiled");

  const source = path.join(root, "build/commands/command-line.ts");
  await writeFile(source, (await readFile(source, "utf8")).replace("fly club's lake notes", "club's notes"));
  expect(help()).toContain("Turns a club's notes");
  expect(await compiled()).toHaveLength(2);
});

test("what was long not used goes when something is compiled", async () => {
  const old = await compiled();
  for (const name of old) await utimes(path.join(cache, name), 1e9, 1e9);
  await appendFile(path.join(root, "build/cli.ts"), "// edited\n");
  help();
  const left = await compiled();
  expect(left).toHaveLength(1);
  expect(old).not.toContain(left[0]);
});

test("where nothing can be written, and where a source has an error, the sources are run as they are", async () => {
  await rm(cache, { recursive: true });
  await rm(path.dirname(cache), { recursive: true });
  await writeFile(path.dirname(cache), "a file in the way");
  expect(help()).toContain("Turns a club's notes");
  await rm(path.dirname(cache));
  await writeFile(path.join(root, "build/unused-thread.ts"), "const = ;\n");
  expect(help()).toContain("Turns a club's notes");
  expect(await compiled()).toEqual([]);
});
