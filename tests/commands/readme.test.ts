import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { appendFile, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { commandsIn, manualPages, type Page, wordsOf } from "./manual.ts";
import { type Ran, run } from "./run.ts";

const home = process.cwd();
const readme = await readFile("README.md", "utf8");
const pages = await manualPages();

/** Commands that are run elsewhere, each with the place. */
const RUN_ELSEWHERE: Readonly<Record<string, string>> = {
  "npm ci": "before any test",
  "npm test": "this is it",
  "npm run guide": "guide.test.ts",
  "npm start": "below, with its folder",
  "npm pack": "installed.test.ts",
  "npm install": "installed.test.ts, with the package unpacked by hand",
};

let work: string;
async function begin(): Promise<void> {
  work = await mkdtemp(path.join(tmpdir(), "readme-"));
  await writeFile(path.join(work, "ice-off.csv"), "lake,on\nOur First Lake,2015-05-09\n");
  process.chdir(work);
}
async function end(): Promise<void> {
  process.chdir(home);
  await rm(work, { recursive: true, force: true });
}

/** `npm start` runs until it is stopped: it is started as a process of its own, and stopped once it watches the folder. */
async function startAndStop(args: readonly string[]): Promise<Ran> {
  const child = spawn(
    process.execPath,
    [
      "--import",
      import.meta.resolve("tsx"),
      path.join(home, "build/cli.ts"),
      "preview",
      ...args,
      "--no-cache",
    ],
    {
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, TSX_TSCONFIG_PATH: path.join(home, "tsconfig.json") },
    },
  );
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding("utf8").on("data", (text: string) => {
      said += text;
      if (said.includes("stop with Ctrl-C")) child.kill("SIGINT");
    });
  const [code, signal] = (await once(child, "close")) as [number | null, string | null];
  return { exit: signal === "SIGINT" && code === null ? 0 : 3, said, warned: said };
}

/** Runs a command as README and the manual write it. */
async function runAsTold(command: string): Promise<Ran> {
  const [program = "", verb = "", ...rest] = wordsOf(command.replace("DIR", "elsewhere"));
  if (program === "cp") {
    const { status, stderr } = spawnSync(program, [verb, ...rest], { encoding: "utf8" });
    return { exit: status === 0 ? 0 : 3, said: "", warned: stderr };
  }
  expect(program).toBe("npm");
  const [script = "", ...behind] = verb === "run" ? rest : [verb, ...rest];
  const [separator, ...args] = behind;
  expect(separator, `${command}: npm keeps what stands before “--” to itself`).toBe("--");
  if (script === "start") return startAndStop(args);
  return run(script, ...args, ...(args[0] === "report" && !args.includes("--no-ask") ? ["--no-ask"] : []));
}

test("every script that README and the manual name is there", async () => {
  const { scripts } = JSON.parse(await readFile("package.json", "utf8")) as {
    scripts: Record<string, string>;
  };
  for (const text of [readme, ...pages.map((page) => page.text)]) {
    const commands = commandsIn(text);
    expect(commands.length).toBeGreaterThan(0);
    for (const command of commands.filter((line) => line.startsWith("npm "))) {
      const [, verb = "", script = ""] = wordsOf(command);
      if (RUN_ELSEWHERE[command] === undefined || verb === "run")
        expect(Object.keys(scripts), command).toContain(verb === "run" ? script : verb);
    }
  }
});

test("README and the manual lead to each other, and to files that are there", async () => {
  for (const { name } of pages) expect(readme).toContain(`(content/manual/${name})`);
  for (const { name, text } of [{ name: "../../README.md", text: readme }, ...pages])
    for (const [, link = ""] of text.matchAll(/\]\((?!https?:)([^)]+)\)/g))
      await expect(
        readFile(path.resolve("content/manual", path.dirname(name), link)),
        link,
      ).resolves.toBeDefined();
});

test("pages of the manual are no chapters of a guide", async () => {
  const { chapters } = await loadContent();
  const slugs = chapters.map(({ slug }) => `${slug}.md`);
  expect(slugs).toContain("printing.md");
  expect(slugs.filter((slug) => pages.some(({ name }) => name === slug))).toEqual([]);
});

describe("README, in order", () => {
  beforeAll(begin);
  afterAll(end);
  const commands = commandsIn(readme).filter((command) => RUN_ELSEWHERE[command] === undefined);
  const isFirst = (command: string): boolean => command.includes("new -- club");
  test("begins with a club", () => {
    expect(commands.length).toBeGreaterThan(5);
    expect(isFirst(commands[0] ?? "")).toBe(true);
  });
  test.each(commands)("%s", async (command) => {
    const { exit, warned } = await runAsTold(command);
    expect(exit, warned).toBe(0);
  });
});

describe("the manual, each page in a new club", () => {
  beforeEach(begin);
  afterEach(end);

  /** Writes the files, runs the commands and reads the answers that a page shows, in its order. */
  async function follow({ text, blocks }: Page): Promise<void> {
    let last = "";
    for (const [i, { language, about, text: shown }] of blocks.entries()) {
      const [, how, file] = /^(file|add-to|beside)=(\S+)$/.exec(about) ?? [];
      if (language === "sh") {
        for (const command of shown.trim().split("\n")) {
          const { exit, said, warned } = await runAsTold(command);
          const answer = blocks[i + 1]?.language === "text" ? (blocks[i + 1]?.text ?? "") : "";
          expect(exit, `${command}\n${said}\n${warned}`).toBe(/ error /.test(answer) ? 1 : 0);
          last = `${said}\n`;
        }
      } else if (language === "text") expect(last).toContain(shown);
      else {
        expect(["yaml", "csv", "njk"]).toContain(language);
        expect(file, "a block names its file").toBeDefined();
        const folder = how === "beside" ? "." : "my-club";
        const target = path.join(folder, file ?? "");
        await mkdir(path.dirname(target), { recursive: true });
        await (how === "add-to" ? appendFile : writeFile)(target, shown);
      }
    }
    const outsideBlocks = text.replace(/^```[\s\S]*?^```$/gm, "");
    const inBlocks = blocks.map((block) => block.text).join("\n");
    for (const command of commandsIn(outsideBlocks).filter((line) => !inBlocks.includes(line)))
      expect((await runAsTold(command)).exit, command).toBe(0);
  }

  test.each(pages.map((page) => [page.name, page] as const))(
    "%s",
    async (_name, page) => {
      expect(page.text, "a page starts with the commands").toMatch(/^# .+\n\n```sh\n/);
      expect((await run("new", "club", "my-club")).exit).toBe(0);
      await follow(page);
      const { club, problems } = await loadClub("my-club");
      expect(problems).toEqual([]);
      expect(club?.lakes.length).toBeGreaterThan(0);
    },
    120_000,
  );
});
