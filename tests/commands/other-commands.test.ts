import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Diagnostic } from "../../build/model/diagnostic.ts";
import { run } from "./run.ts";

let work: string;
beforeEach(async () => {
  work = await mkdtemp(path.join(tmpdir(), "commands-"));
});
afterEach(() => rm(work, { recursive: true, force: true }));

describe("check", () => {
  test("the demo club's doubtful report is a warning, and no error", async () => {
    const { exit, said } = await run("check", "--data", "demo-data");
    expect(exit).toBe(0);
    expect(said).toMatch(/ warning report-doubted Gannister Lake.*\n.*\ndemo-data: 1 warning$/);
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

  test("a folder that is not there is an error, not a crash", async () => {
    expect((await run("check", "--data", path.join(work, "none"))).exit).toBe(1);
  });
});

describe("new", () => {
  test("a new club builds at once", async () => {
    const data = path.join(work, "club");
    const here = process.cwd();
    process.chdir(work);
    try {
      expect((await run("new", "club", "Club")).exit).toBe(0);
    } finally {
      process.chdir(here);
    }
    expect((await run("check", "--data", data)).exit).toBe(0);
    expect((await run("guide", "--data", data, "--out", path.join(work, "site"))).exit).toBe(0);
  });

  test.each(["lake", "pattern", "trip"])(
    "a new %s is a file of its own, never written over",
    async (kind) => {
      const data = path.join(work, "club");
      await cp("demo-data", data, { recursive: true });
      const { exit, said } = await run("new", kind, "Long", "Tarn", "--data", data);
      expect(exit).toBe(0);
      expect(said).toBe(path.join(data, `${kind}s`, "long-tarn.yaml"));
      await writeFile(said, "mine");
      expect((await run("new", kind, "Long Tarn", "--data", data)).exit).toBe(2);
      expect(await readFile(said, "utf8")).toBe("mine");
    },
  );

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
        n: expect.any(Number),
        baseline: { mae: expect.any(Number), crps: expect.any(Number) },
        model: {
          mae: expect.any(Number),
          crps: expect.any(Number),
          cover50: expect.any(Number),
          cover80: expect.any(Number),
        },
      });
  });

  test("errors in the data are told", async () => {
    expect((await run("backtest", "--data", path.join(work, "none"))).exit).toBe(1);
  });
});
