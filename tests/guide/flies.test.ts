import { beforeAll, describe, expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { loadClub } from "../../build/input/load-club.ts";
import { loadContent } from "../../build/input/load-content.ts";
import type { Club, Report } from "../../build/model/club.ts";
import type { StandingContent } from "../../build/model/content.ts";
import type { Phase } from "../../build/model/phase.ts";
import { throat } from "../flies/fly-fixture.ts";
import { reportOf } from "../season/club.ts";

let club: Club;
let content: StandingContent;
beforeAll(async () => {
  content = await loadContent();
  const loaded = await loadClub("demo-data", {});
  if (loaded.club === undefined) throw new Error("demo-data cannot be read");
  club = {
    ...loaded.club,
    // The shores take most of the time and say nothing about flies.
    lakes: loaded.club.lakes.map(({ shape: _, ...lake }) => lake),
    reports: loaded.club.reports.map((report) => ({ ...report, catches: [], samples: [] })),
  };
  before = lakesAfter(club);
  after = lakesAfter(club, TEN_OF_SCUDS);
});

type Lakes = ReadonlyMap<string, GuideLake>;
function lakesAfter(from: Club, ...reports: readonly Report[]): Lakes {
  const { guide } = composeGuide({ ...from, reports: [...from.reports, ...reports] }, content, {
    version: "0.0.0",
  });
  return new Map(guide?.lakes.map((lake) => [lake.slug, lake]));
}
function lakeOf(lakes: Lakes, slug: string): GuideLake {
  const lake = lakes.get(slug);
  if (lake === undefined) throw new Error(`no ${slug}`);
  return lake;
}
/** One lake of a club that has no other. */
const lakeAfter = (slug: string, ...reports: readonly Report[]): GuideLake =>
  lakeOf(
    lakesAfter({ ...club, lakes: club.lakes.filter((lake) => lake.slug === slug), trips: [] }, ...reports),
    slug,
  );
const fliesOf = (lake: GuideLake, phase: Phase) =>
  lake.plan.find((plan) => plan.phase === phase)?.flies ?? [];
const order = (lakes: Lakes, slug: string, phase: Phase) =>
  fliesOf(lakeOf(lakes, slug), phase).map(({ pattern }) => pattern);

/** The demonstration club's guide without anything caught, and with the report below. */
let before: Lakes;
let after: Lakes;

const TEN_OF_SCUDS = reportOf("chalkhen", "2026-05-14", {
  phase: "post-turnover",
  samples: Array.from({ length: 10 }, () => throat({ scud: 12 })),
});

describe("one report of ten samples full of scuds", () => {
  test("puts the scud first on its lake's list, where it was not before", () => {
    const [was, is] = [before, after].map((lakes) => order(lakes, "chalkhen", "post-turnover"));
    expect(was?.indexOf("pale-scud")).toBeGreaterThan(0);
    expect(is?.[0]).toBe("pale-scud");
    expect(is?.toSorted()).toEqual(was?.toSorted());
  });

  test("shows on the lake: its diet with the evidence, and the reason in the list", () => {
    const lake = lakeOf(after, "chalkhen");
    const [diet] = lake.diet;
    expect(diet).toMatchObject({ phase: "post-turnover", fish: 10, words: "10 samples here" });
    expect(diet?.foods[0]).toMatchObject({ food: "scud", seen: 1 });
    expect(fliesOf(lake, "post-turnover")[0]?.why).toContain(
      "for scud: 100 % of what 10 fish here had eaten",
    );
  });

  test("leaves the lake's other phases as they were, and moves another lake less", () => {
    expect(order(after, "chalkhen", "ice-off")).toEqual(order(before, "chalkhen", "ice-off"));
    const moved = (slug: string): number => {
      const [was, is] = [before, after].map(
        (lakes) =>
          fliesOf(lakeOf(lakes, slug), "post-turnover").find(({ pattern }) => pattern === "pale-scud")
            ?.score ?? 0,
      );
      return (is ?? 0) / (was ?? 0);
    };
    expect(moved("quern")).toBeGreaterThan(1);
    expect(moved("quern")).toBeLessThan(moved("chalkhen"));
  });

  test("counts for nothing when it is dated after the as-of date", () => {
    const tomorrow = { ...TEN_OF_SCUDS, date: reportOf("chalkhen", "2026-05-17", {}).date };
    const flies = fliesOf(lakeAfter("chalkhen", tomorrow), "post-turnover");
    expect(flies.map(({ pattern }) => pattern)).toEqual(order(before, "chalkhen", "post-turnover"));
  });
});

test("catches: the rate of a pattern in its phase, the lake's own, and the report in words of the club", () => {
  const lake = lakeAfter(
    "chalkhen",
    reportOf("chalkhen", "2026-05-14", {
      phase: "post-turnover",
      rods: 2,
      hours: 6,
      catches: [
        { pattern: "pale-scud", way: "floating line", fish: 0, rodHours: 4 },
        { pattern: "chironomid-pupa", fish: 6 },
      ],
      samples: [throat({ scud: 2 }), []],
    }),
    reportOf("chalkhen", "2025-06-20", { catches: [{ pattern: "pale-scud", fish: 2, rodHours: 4 }] }),
  );
  const rateOf = (slug: string) =>
    fliesOf(lake, "post-turnover").find(({ pattern }) => pattern === slug)?.rate;
  expect(rateOf("chironomid-pupa")).toMatchObject({ fish: 6, rodHours: 8, mean: 0.75 });
  expect(rateOf("pale-scud")).toMatchObject({ fish: 0, rodHours: 4, mean: 0, low: 0 });
  expect(rateOf("micro-leech")).toBeNull();
  expect(lake.catches.season).toMatchObject({ fish: 6, rodHours: 12, mean: 0.5 });
  expect(lake.catches.all).toMatchObject({ fish: 8, rodHours: 16, mean: 0.5 });
  const told = lake.reports.find(({ date }) => date === "2026-05-14");
  expect(told).toMatchObject({
    rodHours: 12,
    catches: [
      { pattern: "pale-scud", name: "Pale scud", way: "floating line", fish: 0, rodHours: 4 },
      { pattern: "chironomid-pupa", name: "Chironomid pupa", way: null, fish: 6, rodHours: 8 },
    ],
    samples: [[{ food: "scud", count: 2, mass_g: null }], []],
  });
});

test("a report that names no phase belongs to the likeliest one of its day, and to none under the ice", () => {
  const fished = { samples: [throat({ scud: 2 })] };
  const phases = (seen: Partial<Report>) =>
    lakeAfter("oxbar", reportOf("oxbar", "2026-04-19", { ...fished, ...seen })).diet.map(
      ({ phase }) => phase,
    );
  // Oxbar was seen open, in its ice-off, the day before.
  expect(phases({})).toEqual(["ice-off"]);
  expect(phases({ ice: "on" })).toEqual([]);
});
