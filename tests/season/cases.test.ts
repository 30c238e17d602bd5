import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { forecastSeason } from "../../build/season/season.ts";

/** One folder a warning: `club/` is what a club might write, `expected.txt` what it should read, written by hand. */
const CASES = path.join("tests", "season", "cases");

test.each(readdirSync(CASES).sort())("a club with %s reads what to look at", async (name) => {
  const { club, problems } = await loadClub(path.posix.join("tests/season/cases", name, "club"));
  expect(problems).toEqual([]);
  if (club === undefined) throw new Error("no club");
  const expected = readFileSync(path.join(CASES, name, "expected.txt"), "utf8").trimEnd();
  expect(forecastSeason(club).doubts.map(formatDiagnostic).join("\n")).toBe(expected);
});

test("reports of lakes still iced beside the openings take the warning away", async () => {
  const { club } = await loadClub("tests/season/cases/openings-only/club");
  const [first] = club?.reports ?? [];
  if (club === undefined || first === undefined) throw new Error("no reports");
  const iced = { ...first, lake: "elder", ice: "on" as const };
  expect(forecastSeason({ ...club, reports: [...club.reports, iced] }).doubts).toEqual([]);
});
