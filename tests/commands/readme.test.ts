import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { run } from "./run.ts";

/** Commands that README tells: lines set in, and code between backticks. */
const readme = await readFile("README.md", "utf8");
const told = [...readme.matchAll(/^ {4}(npm .+)$|`(npm (?:run|start|ci|test)[^`]*)`/gm)]
  .flatMap(([, line = "", code = ""]) => (line || code).split("&&"))
  .map((command) => command.trim());
const commands = [...new Set(told)];
const wordsOf = (command: string): string[] =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
const ofClub = commands.filter((command) => command.includes("my-club") && !command.startsWith("npm start"));
/** A club is begun before something is done with it. */
const inOrder = [...ofClub].sort(
  (a, b) => Number(b.includes("new -- club")) - Number(a.includes("new -- club")),
);

const home = process.cwd();
let work: string;
beforeAll(async () => {
  work = await mkdtemp(path.join(tmpdir(), "readme-"));
  await cp("demo-data", path.join(work, "demo-data"), { recursive: true });
  await writeFile(path.join(work, "ice-off.csv"), "lake,on\nOur First Lake,2015-05-09\n");
  process.chdir(work);
});
afterAll(async () => {
  process.chdir(home);
  await rm(work, { recursive: true, force: true });
});

test("every script that README names is there", async () => {
  const { scripts } = JSON.parse(await readFile(path.join(home, "package.json"), "utf8")) as {
    scripts: Record<string, string>;
  };
  expect(commands.length).toBeGreaterThan(5);
  for (const command of commands) {
    const [, verb = "", script = ""] = wordsOf(command);
    if (verb !== "ci") expect(Object.keys(scripts), command).toContain(verb === "run" ? script : verb);
  }
});

test.each(inOrder)("%s", async (command) => {
  const [, , script = "", separator, ...args] = wordsOf(command.replace("DIR", "elsewhere"));
  expect(separator).toBe("--");
  const withoutQuestions = args[0] === "report" && !args.includes("--no-ask") ? ["--no-ask"] : [];
  const { exit, warned } = await run(script, ...args, ...withoutQuestions);
  expect(exit, warned).toBe(0);
});
