import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";

let club: string;
beforeEach(async () => {
  club = await mkdtemp(path.join(tmpdir(), "sizes-"));
});
afterEach(() => rm(club, { recursive: true, force: true }));

const CLUB = "name: A club\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Denver\nunits: metric\n";
const LAKE = "name: Ember Lake\nposition: { lat: 41.312, lon: -106.291 }\nelevation: 2580 m\n";

async function problemsWith(files: Readonly<Record<string, string>>): Promise<string[]> {
  for (const [name, text] of Object.entries({ "club.yaml": CLUB, "lakes/ember.yaml": LAKE, ...files })) {
    await mkdir(path.dirname(path.join(club, name)), { recursive: true });
    await writeFile(path.join(club, name), text);
  }
  const { problems } = await loadClub(club);
  return problems.map((problem) => formatDiagnostic(problem).split("\n")[0] ?? "");
}

const ring = (corners: number): string => {
  const at = (i: number): string => {
    const turn = (2 * Math.PI * (i % corners)) / corners;
    return `[${-106.291 + 0.01 * Math.cos(turn)},${41.312 + 0.01 * Math.sin(turn)}]`;
  };
  return `[${Array.from({ length: corners + 1 }, (_, i) => at(i)).join(",")}]`;
};
const shoreline = (...rings: readonly string[]): string =>
  `{"type":"Feature","properties":{"kind":"shoreline"},"geometry":{"type":"Polygon","coordinates":[${rings.join(",")}]}}`;

describe("one located problem for what is far too much:", () => {
  test.each([
    [
      "brackets 5,000 deep",
      "lakes/ember.geojson",
      `${"[".repeat(5000)}${"]".repeat(5000)}`,
      "1:101 error json-too-deep",
    ],
    [
      "a shore of 200,000 positions",
      "lakes/ember.geojson",
      shoreline(ring(200_000)),
      "1:96 error too-many-positions",
    ],
    [
      "500,000 soundings",
      "lakes/ember.csv",
      `lat,lon,depth (m)\n${"41.312,-106.291,3\n".repeat(500_000)}`,
      "100002:1 error too-many-soundings",
    ],
    [
      "80,000 hazards",
      "lakes/ember.yaml",
      `${LAKE}hazards:\n${"  - Stump\n".repeat(80_000)}`,
      "5:3 error list-too-long",
    ],
    ["150,000 reports", "reports/2026.yaml", "- {}\n".repeat(150_000), "30001:3 error too-many-reports"],
  ])("%s", async (_, file, text, said) => {
    const problems = await problemsWith({ [file]: text });
    expect(problems).toEqual([expect.stringContaining(`${file}:${said}`)]);
  });
});

test("150,000 problems of one kind are counted after the first hundred", async () => {
  const feature = '{"type":"Feature","properties":{},"geometry":null}';
  const features = Array.from({ length: 150_000 }, () => feature).join(",\n");
  const problems = await problemsWith({
    "lakes/ember.geojson": `{"type":"FeatureCollection","features":[\n${features}]}`,
  });
  expect(problems).toHaveLength(102);
  expect(problems.at(-1)).toContain("feature-without-geometry here and in 149899 more places");
});

test("an island with its lake's own shoreline is told so, drawn either way round", async () => {
  const lake = ring(12);
  const back = `[${lake.slice(2, -2).split("],[").reverse().join("],[").replace(/^/, "[").replace(/$/, "]")}]`;
  for (const island of [lake, back])
    expect(await problemsWith({ "lakes/ember.geojson": shoreline(lake, island) })).toEqual([
      expect.stringMatching(/island-outside this island is the whole lake/),
    ]);
});

test.each(["con", "aux", "nul", "com1", "lpt9"])(
  "a lake file named %s cannot lie on Windows",
  async (name) => {
    const problems = await problemsWith({ [`lakes/${name}.yaml`]: LAKE });
    expect(problems).toContainEqual(expect.stringContaining(`lakes/${name}.yaml:1:1 error bad-file-name`));
  },
);

test("a picture in a lake's notes is not shown, and that is said at the notes", async () => {
  const problems = await problemsWith({ "lakes/ember.yaml": `${LAKE}notes: "![a pier](pier.jpg)"\n` });
  expect(problems).toEqual([expect.stringContaining("lakes/ember.yaml:4:8 warning page-picture")]);
});
