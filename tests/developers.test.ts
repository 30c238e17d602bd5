import { execFile } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { describe, expect, onTestFinished, test } from "vitest";

const text = readFileSync("DEVELOPERS.md", "utf8");
const quoted = [...text.matchAll(/`([^`\n]+)`/g)].map(([, words = ""]) => words);
const run = promisify(execFile);

describe("the developers' notes are true", () => {
  test("every file and folder they name exists", () => {
    const named = quoted.filter((words) =>
      /^(build|templates|tests|content|demo-data|\.ci)\/[\w./-]*$/.test(words),
    );
    expect(named.length).toBeGreaterThan(40);
    expect(named.filter((file) => !/NAME/.test(file) && !existsSync(file))).toEqual([]);
  });

  test("every script they name is one", () => {
    const { scripts } = JSON.parse(readFileSync("package.json", "utf8")) as {
      scripts: Record<string, string>;
    };
    const named = quoted.flatMap((words) => /^npm run ([\w-]+)/.exec(words)?.[1] ?? []);
    expect(named.length).toBeGreaterThan(8);
    expect(named.filter((name) => !Object.hasOwn(scripts, name))).toEqual([]);
  });

  test("every room has its row in the map", () => {
    const map = text.slice(text.indexOf("## The map"), text.indexOf("## The arrows"));
    const rooms = readdirSync("build", { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(rooms.filter(({ name }) => !map.includes(`\`build/${name}/\``)).map(({ name }) => name)).toEqual(
      [],
    );
  });

  test("a lake field is added as the recipe says: one file, and guide.json and both schemas have it", async () => {
    const [, snippet = "", name = ""] =
      /`(field\(quantity\("length", \{ … \}\)\.optional\(\), \{ as: "(\w+)" \}\))`/.exec(text) ?? [];
    const copy = await mkdtemp(path.join(tmpdir(), "recipe-"));
    onTestFinished(() => rm(copy, { recursive: true }));
    for (const part of ["build", "templates", "content", "package.json", "tsconfig.json"])
      await cp(part, path.join(copy, part), { recursive: true });
    await symlink(path.resolve("node_modules"), path.join(copy, "node_modules"));
    const file = path.join(copy, "build/model/fields/lake-fields.ts");
    const fields = await readFile(file, "utf8");
    const limits = '{ description: "Depth of the shelf.", example: "8 ft", least: "0 m", most: "50 m" }';
    const anchor = "export const lakeSchema = z\n  .strictObject({\n";
    expect(fields).toContain(anchor);
    await writeFile(
      file,
      fields.replace(anchor, `${anchor}    shelf: ${snippet.replace("{ … }", limits)},\n`),
    );
    await mkdir(path.join(copy, "club/lakes"), { recursive: true });
    await writeFile(
      path.join(copy, "club/club.yaml"),
      "name: Recipe Club\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Denver\nunits: imperial\n",
    );
    await writeFile(
      path.join(copy, "club/lakes/one.yaml"),
      "name: One Lake\nposition: { lat: 41.3, lon: -106.3 }\nshelf: 2.5 m\niceOff: [{ season: 2025, on: 2025-05-10 }]\n",
    );
    await run(
      process.execPath,
      ["--import", "tsx", "build/cli.ts", "guide", "--data", "club", "--no-cache"],
      { cwd: copy },
    );
    const read = (address: string): Promise<string> => readFile(path.join(copy, "site", address), "utf8");
    const guide = JSON.parse(await read("guide.json")) as { lakes: Record<string, unknown>[] };
    expect(guide.lakes[0]?.[name]).toBe(2.5);
    expect(await read("schema/guide.schema.json")).toContain(`"${name}"`);
    expect(await read("schema/lake.schema.json")).toContain("Depth of the shelf.");
  }, 120_000);
});
