import { spawnSync } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

/** A folder with the program's own scripts, and a club that is the usual one; npm itself starts them, as a reader would. */
let work: string;
const { PATH, HOME } = process.env;
const npm = (...words: readonly string[]) => {
  const run = spawnSync("npm", words, { cwd: work, encoding: "utf8", env: { PATH, HOME } });
  return { status: run.status, said: run.stdout, warned: run.stderr };
};
const USUAL = "demo-data";

beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "lost-"));
  for (const name of ["build", "templates", "content", "package.json", "tsconfig.json"])
    await cp(name, path.join(work, name), { recursive: true });
  await symlink(path.resolve("node_modules"), path.join(work, "node_modules"));
  await mkdir(path.join(work, USUAL, "lakes"), { recursive: true });
  await cp("demo-data/club.yaml", path.join(work, USUAL, "club.yaml"));
  await cp("demo-data/lakes/quern.yaml", path.join(work, USUAL, "lakes/quern.yaml"));
  await writeFile(path.join(work, "ice-off.csv"), "lake,on\nquern,2021-05-06\n");
}, 60_000);
afterAll(() => rm(work, { recursive: true, force: true }));

const begun = async (): Promise<string[]> => (await readdir(path.join(work, USUAL, "lakes"))).sort();

test.each([
  ["run new lake X --data my-club", "npm run new -- lake X --data my-club"],
  ["run new lake X --data=my-club", "npm run new -- lake X --data my-club"],
  ["run new lake Long_Tarn --no-ask", "npm run new -- lake Long_Tarn --no-ask"],
  ["run check --data my-club", "npm run check -- --data my-club"],
  ["run guide --out somewhere", "npm run guide -- --out somewhere"],
  ["run guide --as-of 2026-05-16", "npm run guide -- --as-of 2026-05-16"],
  ["run guide --base-url=https://club.example/", "npm run guide -- --base-url https://club.example/"],
  ["run guide --zip g.zip", "npm run guide -- --zip g.zip"],
  ["run guide --data=my-club --out=y", "npm run guide -- --data my-club --out y"],
  ["run guide --data my-club --out y", "npm run guide -- --data … --out …"],
  ["run guide --data", "npm run guide -- --data …"],
  ["run import ice-off.csv --dry-run", "npm run import -- ice-off.csv --dry-run"],
  ["run backtest --data my-club", "npm run backtest -- --data my-club"],
  ["start --data my-club", "npm start -- --data my-club"],
])("npm %s writes nothing and says what to write", async (line, instead) => {
  const before = await readFile(path.join(work, USUAL, "lakes/quern.yaml"), "utf8");
  const { status, warned } = npm(...line.split(" "));
  expect(warned).toContain(`Write: ${instead}\n`);
  expect(status).toBe(2);
  expect(await begun()).toEqual(["quern.yaml"]);
  expect(await readFile(path.join(work, USUAL, "lakes/quern.yaml"), "utf8")).toBe(before);
  expect((await readdir(work)).includes("site")).toBe(false);
});

test("behind two dashes alone the options reach the program", () => {
  expect(npm("run", "check", "--", "--data", USUAL, "--no-cache").said).toContain(`${USUAL}: no problems`);
});

test("an option of another command is none of this one's business", () => {
  expect(npm("run", "check", "--dry-run").said).toContain(`${USUAL}: no problems`);
});
