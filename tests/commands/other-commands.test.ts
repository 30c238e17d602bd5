import { cp, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Diagnostic } from "../../build/model/diagnostic.ts";
import { type Ran, run } from "./run.ts";

let work: string;
beforeEach(async () => {
  work = await mkdtemp(path.join(tmpdir(), "commands-"));
});
afterEach(() => rm(work, { recursive: true, force: true }));

describe("check", () => {
  test("the demo club's doubtful report is a warning, and no error", async () => {
    const { exit, said } = await run("check", "--data", "demo-data");
    expect(exit).toBe(0);
    expect(said).toMatch(
      / warning report-doubted Gannister Lake.*\n.*\n.* warning ice-back Gannister Lake.*\n.*\ndemo-data: 2 warnings$/,
    );
  });

  test("as JSON, each problem has every field of the contract", async () => {
    const data = path.join(work, "club");
    await cp("demo-data", data, { recursive: true });
    await writeFile(
      path.join(data, "reports/2026.yaml"),
      "- { lake: nowhere, date: 2026-05-01, ice: off }\n",
    );
    const { exit, said } = await run("check", "--data", data, "--format", "json");
    const problems = JSON.parse(said) as Diagnostic[];
    expect(exit).toBe(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toEqual({
      file: "reports/2026.yaml",
      line: 1,
      column: expect.any(Number),
      severity: "error",
      code: expect.stringMatching(/^[a-z-]+$/),
      message: expect.stringContaining("nowhere"),
      hint: expect.any(String),
    });
  });

  test("a lake whose card would be another card's file is told so", async () => {
    const data = path.join(work, "club");
    await cp("demo-data", data, { recursive: true });
    await cp(path.join(data, "lakes/quern.yaml"), path.join(data, "lakes/rig-a6.yaml"));
    const { exit, said } = await run("check", "--data", data);
    expect(exit).toBe(1);
    expect(said).toContain("lakes/rig-a6.yaml:1:1 error card-name-taken");
  });

  test.each([
    ["check", "npm run check -- --data my-club"],
    ["guide", "npm run guide -- --data my-club"],
    ["preview", "npm start -- --data my-club"],
  ])("%s with a folder and no --data is told what to write", async (command, instead) => {
    const { exit, warned } = await run(command, "my-club");
    expect(exit).toBe(2);
    expect(warned).toContain(instead);
  });

  test("a folder that is not there is an error, not a crash", async () => {
    expect((await run("check", "--data", path.join(work, "none"))).exit).toBe(1);
  });
});

describe("new", () => {
  let clubRun: Ran;
  /** Begins the club “Club” in the work folder; its folder. */
  async function newClub(exit = 0): Promise<string> {
    const here = process.cwd();
    process.chdir(work);
    try {
      clubRun = await run("new", "club", "Club");
    } finally {
      process.chdir(here);
    }
    expect(clubRun.exit).toBe(exit);
    return path.join(work, "club");
  }

  test("a new club builds at once", async () => {
    const data = await newClub();
    expect((await run("check", "--data", data)).exit).toBe(0);
    expect((await run("guide", "--data", data, "--out", path.join(work, "site"))).exit).toBe(0);
  });

  test.each([
    ["lake", "Long Tarn"],
    ["pattern", "Tan Scud"],
    ["trip", "Late May"],
    ["report", "Our First Lake", "--no-ask"],
  ])("with a new %s in it, the club is still in order", async (...words) => {
    const data = await newClub();
    expect((await run("new", ...words, "--data", data)).exit).toBe(0);
    expect(await run("check", "--data", data)).toMatchObject({ exit: 0, said: `${data}: no problems` });
  });

  test("the schemas lie in the club folder, before anything is built, and are brought up to date", async () => {
    const data = await newClub();
    const schema = path.join(data, ".schema/lake.schema.json");
    const first = await readFile(schema, "utf8");
    expect(JSON.parse(first)).toMatchObject({ title: "Lake", properties: { iceOff: expect.anything() } });
    await writeFile(schema, "{}");
    await run("new", "lake", "Long Tarn", "--data", data);
    expect(await readFile(schema, "utf8")).toBe(first);
  });

  test("a new club says what to do next; a folder that is there is left alone", async () => {
    const data = await newClub();
    expect(clubRun.warned).toContain("npm run guide -- --data club");
    expect(clubRun.warned).toContain(`${path.join("club", "lakes", "our-first-lake.yaml")}`);
    await writeFile(path.join(data, "club.yaml"), "mine");
    await newClub(2);
    expect(await readFile(path.join(data, "club.yaml"), "utf8")).toBe("mine");
  });

  test.each(["lake", "trip"])("without a club a new %s is refused, and nothing is written", async (kind) => {
    const data = path.join(work, "none");
    const { exit, warned } = await run("new", kind, "Long Tarn", "--data", data);
    expect(exit).toBe(2);
    expect(warned).toContain("npm run new -- club NAME");
    await expect(readdir(data)).rejects.toThrow();
  });

  test.each(["lake", "pattern", "trip"])(
    "a new %s is a file of its own, never written over",
    async (kind) => {
      const data = path.join(work, "club");
      await cp("demo-data", data, { recursive: true });
      const { exit, said } = await run("new", kind, "Long", "Tarn", "--data", data);
      expect(exit).toBe(0);
      expect(said).toBe(path.join(data, `${kind}s`, "long-tarn.yaml"));
      expect(await readFile(said, "utf8")).toContain("name:");
      await writeFile(said, "mine");
      expect((await run("new", kind, "Long Tarn", "--data", data)).exit).toBe(2);
      expect(await readFile(said, "utf8")).toBe("mine");
    },
  );

  test("without a name it says how one is given", async () => {
    const { exit, warned } = await run("new", "lake", "--data", work);
    expect(exit).toBe(2);
    expect(warned).toBe('Give it a name: npm run new -- lake "A name"');
  });

  test("a name without letters is refused", async () => {
    expect((await run("new", "lake", "???", "--data", work)).exit).toBe(2);
  });
});

describe("backtest", () => {
  test("as JSON, the rows of the contract", async () => {
    const { exit, said } = await run("backtest", "--data", "demo-data", "--format", "json");
    expect(exit).toBe(0);
    for (const row of JSON.parse(said) as unknown[])
      expect(row).toMatchObject({
        moment: expect.any(String),
        reporting: expect.any(String),
        n: expect.any(Number),
        seasons: expect.any(Number),
        baseline: { mae: expect.any(Number), crps: expect.any(Number) },
        model: {
          mae: expect.any(Number),
          crps: expect.any(Number),
          cover50: expect.any(Number),
          cover80: expect.any(Number),
        },
      });
  });

  test("as text, a table for each way of reporting", async () => {
    const { exit, said } = await run("backtest", "--data", "demo-data", "--past-only");
    expect(exit).toBe(0);
    expect(said.match(/^(perfect|dates4|delay4|offonly): /gm)).toHaveLength(4);
  });

  test("errors in the data are told", async () => {
    expect((await run("backtest", "--data", path.join(work, "none"))).exit).toBe(1);
  });
});
