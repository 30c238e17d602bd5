import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";

/**
 * One folder a mistake: `club/` is what a club might write, `expected.txt` what it should read, written by hand.
 * The file names of a case are part of it; a case without `club/` is the folder that is not there.
 */
const CASES = path.join("tests", "input", "cases");
const names = readdirSync(CASES).sort();

test.each(names)("a club that wrote %s reads what to write instead", async (name) => {
  const { club, problems } = await loadClub(path.posix.join("tests/input/cases", name, "club"));
  const expected = readFileSync(path.join(CASES, name, "expected.txt"), "utf8").trimEnd();
  expect(problems.map(formatDiagnostic).join("\n")).toBe(expected);
  expect(club === undefined).toBe(problems.some(({ severity }) => severity === "error"));
});

test("only the case of the missing folder has no folder", () => {
  const without = names.filter((name) => !existsSync(path.join(CASES, name, "club")));
  expect(without).toEqual(["missing-folder"]);
});
