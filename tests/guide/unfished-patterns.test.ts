import { expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { clubFolder } from "../input/club-folder.ts";

/** What is said of a club with one pattern, fished in these ways in these phases. */
async function saidOf(ways: string, phases: string): Promise<string[]> {
  const dir = await clubFolder({
    "patterns/blob.yaml": `name: Bright Blob\nimitates: daphnia\nsizes: [10]\nphases: [${phases}]\nways: [${ways}]\n`,
  });
  const { club, problems } = await loadClub(dir);
  if (club === undefined) throw new Error(problems.map(formatDiagnostic).join("\n"));
  const composed = composeGuide(club, await loadContent(), { version: "0.0.0" });
  return composed.problems.filter(({ file }) => file.startsWith("patterns/")).map(formatDiagnostic);
}

test("a pattern that none of its ways fishes in its phases is named, with ways that would", async () => {
  const [said = "", ...rest] = await saidOf("buoyant on sinking line", "turnover");
  expect(rest).toEqual([]);
  expect(said).toContain("patterns/blob.yaml:1:1 warning pattern-nowhere “Bright Blob” stands on no lake");
  expect(said).toContain("buoyant on sinking line is not fished in turnover");
  expect(said).toMatch(/write another of its ways, such as [a-z ]+/);
});

test("one way or one phase that fits is enough", async () => {
  expect(await saidOf("indicator still", "best-weeks")).toEqual([]);
  expect(await saidOf("buoyant on sinking line, indicator still", "best-weeks")).toEqual([]);
});
