import { readdirSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { load } from "js-yaml";
import { describe, expect, test } from "vitest";
import {
  editorSchemas,
  SCAFFOLD_KINDS,
  type ScaffoldClub,
  type ScaffoldKind,
  scaffold,
} from "../../build/edit/scaffold.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { type CalendarDate, seasonOf } from "../../build/model/calendar.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { clubFolder, type Files, folderOf } from "../input/club-folder.ts";

const CLUB: ScaffoldClub = { season: 2026, side: "north", lakes: ["ember"] };
const asFiles = (kind: ScaffoldKind, name: string, club = CLUB): Files =>
  Object.fromEntries(scaffold(kind, name, club).map((file) => [file.path, file.text]));

/** The text with its commented-out keys in use. */
function opened(text: string): string {
  let inside = false;
  const lines = text.split("\n").map((line) => {
    if (/^# ([a-z]\w*:|- )/.test(line)) inside = true;
    else if (!/^# {2,}/.test(line)) inside = false;
    return inside ? line.slice(2) : line;
  });
  return lines.join("\n");
}

describe("what is written to begin with can be built at once", () => {
  test("a club", async () => {
    const dir = await folderOf(asFiles("club", "Test Club"));
    expect(readdirSync(dir)).toEqual(["test-club"]);
    const { club, problems } = await loadClub(path.join(dir, "test-club"));
    expect(problems).toEqual([]);
    expect(club?.name).toBe("Test Club");
    expect(club?.lakes).toHaveLength(1);
    expect(club?.patterns).toHaveLength(1);
    expect(club?.trips).toHaveLength(1);
    expect(club?.reports).toHaveLength(1);
  });

  test("a workflow that publishes that club's folder, with its address", () => {
    const text = asFiles("club", "Test Club")["test-club/.github/workflows/publish.yml"];
    const workflow = load(String(text)) as { jobs: { publish: { steps: { run?: string }[] } } };
    const runs = workflow.jobs.publish.steps.flatMap(({ run }) => run ?? []);
    expect(runs).toEqual([
      "npm ci",
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the host's own way to fill in a value
      'npm run guide -- --data test-club --base-url "${{ steps.pages.outputs.base_url }}/"',
    ]);
  });

  test.each(["lake", "pattern"] as const)("a %s in a club that is there", async (kind) => {
    const { problems, club } = await loadClub(await clubFolder(asFiles(kind, "Long Tarn")));
    expect(problems).toEqual([]);
    const names = [...(club?.lakes ?? []), ...(club?.patterns ?? [])].map(({ name }) => name);
    expect(names).toContain("Long Tarn");
  });

  test("a trip: it names the club's first lake until somebody chooses", async () => {
    const { problems, club } = await loadClub(await clubFolder(asFiles("trip", "Late May")));
    expect(problems).toEqual([]);
    expect(club?.trips[0]?.lakes).toEqual(["ember"]);
  });

  test("a trip of a club without a lake names none, which means all there will be", async () => {
    const files = asFiles("trip", "Late May", { ...CLUB, lakes: [] });
    const { problems, club } = await loadClub(await clubFolder(files));
    expect(problems).toEqual([]);
    expect(club?.trips[0]?.lakes).toEqual([]);
  });

  test.each([
    ["north", 2028, "2028-05-28"],
    ["south", 2027, "2027-11-26"],
  ] as const)("a trip of a club in the %s is in its season %i", (side, season, from) => {
    const [text] = Object.values(asFiles("trip", "T", { season, side, lakes: [] }));
    expect(text).toContain(`\nfrom: ${from}\n`);
    for (const line of String(text).match(/^(?:from|to): .*$/gm) ?? [])
      expect(seasonOf(line.split(": ")[1] as CalendarDate, side)).toBe(season);
  });

  test("a club of another year speaks of that year alone", async () => {
    const files = asFiles("club", "Later", { ...CLUB, season: 2031 });
    const { club, problems } = await loadClub(path.join(await folderOf(files), "later"));
    expect(problems).toEqual([]);
    expect(club?.season).toBe(2031);
    expect(
      JSON.stringify(files)
        .match(/\b20\d\d\b/g)
        ?.filter((year) => !/^20(29|30|31)$/.test(year)),
    ).toEqual([]);
  });

  test("every file tells the editor where its schema lies, and there it lies", () => {
    const schemas = new Set(editorSchemas().map((file) => `club/${file.path}`));
    for (const { path: file, text } of scaffold("club", "Club", CLUB)) {
      if (file.includes("/.")) continue; // what is hidden is no club data
      const said = /^# yaml-language-server: \$schema=(.+)$/m.exec(text)?.[1] ?? "none";
      expect(schemas, file).toContain(path.posix.join(path.posix.dirname(file), said));
    }
  });

  test("so can all that stands in notes, once its # is removed", async () => {
    const files = scaffold("club", "Test Club", CLUB).map(({ path: file, text }) => [file, opened(text)]);
    const dir = path.join(await folderOf(Object.fromEntries(files)), "test-club");
    const { club, problems } = await loadClub(dir);
    expect(problems.map(formatDiagnostic)).toEqual([]);
    expect(club?.lakes[0]?.iceOff).toHaveLength(2);
    expect(club?.rigs.leaders[0]?.where.file).toBe("rigs.yaml");
  });
});

describe("names become file names", () => {
  test.each([
    ["Long Tarn", "long-tarn"],
    ["  Étang du Nord ", "etang-du-nord"],
    ["../../etc/passwd", "etc-passwd"],
    ["O'Brien's #2", "o-brien-s-2"],
    ["CON", "con"],
    ["a".repeat(300), "a".repeat(80)],
  ])("“%s” is %s", (name, slug) => {
    expect(scaffold("lake", name, CLUB).map((file) => file.path)).toEqual([`lakes/${slug}.yaml`]);
  });

  test.each(["", "   ", "湖", "--", "../..", "\u0000"])("“%s” gives none", (name) => {
    for (const kind of SCAFFOLD_KINDS) expect(scaffold(kind, name, CLUB)).toEqual([]);
  });

  test("whatever the name, the file stays in its folder and the name arrives as it was", async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: "grapheme" }), async (noise) => {
        const name = `Tarn ${noise}`.trim();
        const [file] = scaffold("lake", name, CLUB);
        expect(file?.path).toMatch(/^lakes\/[a-z0-9]+(-[a-z0-9]+)*\.yaml$/);
        const { club, problems } = await loadClub(
          await folderOf({ ...asFiles("club", "C"), [`c/${file?.path}`]: file?.text ?? "" }).then((dir) =>
            path.join(dir, "c"),
          ),
        );
        expect(problems).toEqual([]);
        expect(club?.lakes.map((lake) => lake.name)).toContain(name);
      }),
      { numRuns: 40, examples: [[': "north" # 2'], ["\\ \u0007 'x'"]] },
    );
  });
});
