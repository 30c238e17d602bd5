import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { cacheIn } from "../../build/incremental/cache.ts";
import { type GuideRequest, upToDateGuide, watchGuideInputs } from "../../build/incremental/up-to-date.ts";
import { parseCalendarDate } from "../../build/model/calendar.ts";
import { makeGuide } from "../../build/pipeline.ts";
import { run } from "../commands/run.ts";
import { writeSmallClub } from "./edited-club.ts";

let work: string;
/** As built; each test works on a copy. */
let built: string;
let here: string;
let question: GuideRequest;

beforeAll(async () => {
  work = mkdtempSync(path.join(tmpdir(), "standing-"));
  built = path.join(work, "built");
  await writeSmallClub(path.join(built, "club"));
  const { guide } = await makeGuide({
    dataDir: path.join(built, "club"),
    outDir: path.join(built, "site"),
    version: "1",
    cache: path.join(built, "results"),
  });
  expect(guide).toBeDefined();
});
afterAll(() => rmSync(work, { recursive: true, force: true }));
beforeEach(() => {
  here = mkdtempSync(path.join(work, "copy-"));
  cpSync(built, here, { recursive: true });
  question = {
    dataDir: path.join(here, "club"),
    outDir: path.join(here, "site"),
    version: "1",
    cache: path.join(here, "results"),
  };
});

const inClub = (file: string): string => path.join(here, "club", file);
const inSite = (file: string): string => path.join(here, "site", file);
const LAKE = "lakes/gannister.yaml";
const PAGE = "lakes/gannister/index.html";

describe("a guide that stands as it should", () => {
  test.each<[string, () => void]>([
    ["untouched", () => {}],
    ["files that are only newer", () => utimesSync(inClub(LAKE), 4e9, 4e9)],
    [
      "a hidden folder in the club's, such as a version history",
      () => {
        mkdirSync(inClub(".history"));
        writeFileSync(inClub(".history/1"), "x");
      },
    ],
  ])("%s", (_, change) => {
    change();
    expect(upToDateGuide(question)).toMatchObject({ club: "Small club", asOf: "2026-05-16", lakes: 6 });
  });
});

describe("is built anew after", () => {
  const asOf = parseCalendarDate("2026-05-17");
  test.each<[string, () => void]>([
    ["a byte more in a lake's file", () => appendFileSync(inClub(LAKE), "#")],
    ["a file more in the club folder", () => writeFileSync(inClub("lakes/new.yaml"), "")],
    ["a folder more in the club folder", () => mkdirSync(inClub("pages"))],
    ["a file less in the club folder", () => rmSync(inClub("lakes/peatkettle.csv"))],
    ["a lake of another name", () => renameSync(inClub(LAKE), inClub("lakes/gannet.yaml"))],
    [
      "a club file replaced by a link to the same text",
      () => {
        renameSync(inClub(LAKE), path.join(here, "elsewhere.yaml"));
        symlinkSync(path.join(here, "elsewhere.yaml"), inClub(LAKE));
      },
    ],
    ["a page edited", () => appendFileSync(inSite(PAGE), " ")],
    ["a page lost", () => rmSync(inSite(PAGE))],
    ["a card cut short", () => writeFileSync(inSite("cards/gannister.pdf"), "%PDF-")],
    ["the whole output lost", () => rmSync(path.join(here, "site"), { recursive: true })],
    ["a killed run", () => mkdirSync(path.join(here, ".site.next"))],
    ["every kept result lost", () => rmSync(path.join(here, "results"), { recursive: true })],
    [
      "every kept result damaged",
      () => {
        for (const name of readdirSync(path.join(here, "results")))
          appendFileSync(path.join(here, "results", name), "x");
      },
    ],
    ["another version", () => Object.assign(question, { version: "2" })],
    ["another day", () => Object.assign(question, { asOf })],
    ["another address", () => Object.assign(question, { baseUrl: "https://club.example/" })],
    ["one lake asked for", () => Object.assign(question, { only: "gannister" })],
    ["no cache", () => Object.assign(question, { cache: false })],
    ["a club folder that is not there", () => Object.assign(question, { dataDir: path.join(here, "none") })],
  ])("%s", (_, change) => {
    expect(upToDateGuide(question)).toBeDefined();
    change();
    expect(upToDateGuide(question)).toBeUndefined();
  });

  test("not for a file that is the host's own among the pages", () => {
    writeFileSync(inSite(".nojekyll"), "");
    expect(upToDateGuide(question)).toBeDefined();
  });

  test("an edit of the club folder while it was being built", () => {
    const said = {
      club: "x",
      asOf: parseCalendarDate("2026-05-16") ?? expect.fail(),
      lakes: 6,
      pages: 9,
      cards: 4,
      problems: [],
    };
    const cache = cacheIn(path.join(here, "own"), { identity: "test" });
    appendFileSync(inClub(LAKE), "#");
    const note = watchGuideInputs(question, cache);
    appendFileSync(inClub(LAKE), "#");
    note([], said);
    expect(() => readdirSync(path.join(here, "own"))).toThrow("ENOENT");
    watchGuideInputs(question, cache)([], said);
    expect(readdirSync(path.join(here, "own"))).toHaveLength(1);
  });
});

test("the command says so, leaves every file alone, and mends what was touched", async () => {
  const guide = () =>
    run(
      ...["guide", "--data", path.join(here, "club"), "--out", path.join(here, "site")],
      ...["--cache", path.join(here, "results")],
    );
  // The copies above were made by version 1, the command builds its own.
  expect((await guide()).said).not.toContain("nothing built");
  const page = readFileSync(inSite(PAGE));
  const { ino } = statSync(inSite(PAGE));
  const second = await guide();
  expect(second).toMatchObject({ exit: 0, said: expect.stringContaining("6 lakes") });
  expect(second.said).toContain("nothing changed, nothing built");
  expect(statSync(inSite(PAGE)).ino).toBe(ino);
  writeFileSync(inSite(PAGE), "touched");
  const mended = await guide();
  expect(mended.said).not.toContain("nothing built");
  expect(mended.warned).toBe(second.warned);
  expect(readFileSync(inSite(PAGE)).equals(page)).toBe(true);
}, 180_000);
