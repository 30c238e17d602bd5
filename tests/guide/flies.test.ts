import { beforeAll, describe, expect, test } from "vitest";
import { composeGuide } from "../../build/guide/compose.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { loadClub } from "../../build/load/load-club.ts";
import { loadContent } from "../../build/load/load-content.ts";
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
    reports: loaded.club.reports.map((report) => ({ ...report, catches: [], samples: [] })),
  };
});

function lakeAfter(slug: string, ...reports: readonly Report[]): GuideLake {
  const changed = { ...club, reports: [...club.reports, ...reports] };
  const lake = composeGuide(changed, content, { version: "0.0.0" }).guide?.lakes.find(
    (one) => one.slug === slug,
  );
  if (lake === undefined) throw new Error(`no ${slug}`);
  return lake;
}
const fliesOf = (lake: GuideLake, phase: Phase) =>
  lake.plan.find((plan) => plan.phase === phase)?.flies ?? [];
const order = (lake: GuideLake, phase: Phase) => fliesOf(lake, phase).map(({ pattern }) => pattern);

const TEN_OF_SCUDS = reportOf("hobnail", "2026-05-14", {
  phase: "post-turnover",
  samples: Array.from({ length: 10 }, () => throat({ scud: 12 })),
});

describe("one report of ten samples full of scuds", () => {
  test("puts the scud first on its lake's list, where it was not before", () => {
    const before = order(lakeAfter("hobnail"), "post-turnover");
    const after = order(lakeAfter("hobnail", TEN_OF_SCUDS), "post-turnover");
    expect(before.indexOf("olive-scud")).toBeGreaterThan(0);
    expect(after[0]).toBe("olive-scud");
    expect(after.toSorted()).toEqual(before.toSorted());
  });

  test("shows on the lake: its diet with the evidence, and the reason in the list", () => {
    const lake = lakeAfter("hobnail", TEN_OF_SCUDS);
    const [diet] = lake.diet;
    expect(diet).toMatchObject({ phase: "post-turnover", fish: 10, words: "10 samples here" });
    expect(diet?.foods[0]).toMatchObject({ food: "scud", seen: 1 });
    expect(fliesOf(lake, "post-turnover")[0]?.why).toContain(
      "for scud: 100 % of what 10 fish here had eaten",
    );
  });

  test("leaves the lake's other phases as they were, and moves another lake less", () => {
    expect(order(lakeAfter("hobnail", TEN_OF_SCUDS), "ice-off")).toEqual(
      order(lakeAfter("hobnail"), "ice-off"),
    );
    const scoreOn = (slug: string, ...reports: Report[]) =>
      fliesOf(lakeAfter(slug, ...reports), "post-turnover").find(({ pattern }) => pattern === "olive-scud")
        ?.score ?? 0;
    const here = scoreOn("hobnail", TEN_OF_SCUDS) / scoreOn("hobnail");
    const there = scoreOn("oxbar", TEN_OF_SCUDS) / scoreOn("oxbar");
    expect(there).toBeGreaterThan(1);
    expect(there).toBeLessThan(here);
  });

  test("counts for nothing when it is dated after the as-of date", () => {
    const later = { ...TEN_OF_SCUDS, date: reportOf("hobnail", "2026-05-17", {}).date };
    expect(order(lakeAfter("hobnail", later), "post-turnover")).toEqual(
      order(lakeAfter("hobnail"), "post-turnover"),
    );
  });
});

test("catches: the rate of a pattern in its phase, the lake's own, and the report in words of the club", () => {
  const lake = lakeAfter(
    "hobnail",
    reportOf("hobnail", "2026-05-14", {
      phase: "post-turnover",
      rods: 2,
      hours: 6,
      catches: [
        { pattern: "olive-scud", way: "floating line", fish: 0, rodHours: 4 },
        { pattern: "chironomid-pupa", fish: 6 },
      ],
      samples: [throat({ scud: 2 }), []],
    }),
    reportOf("hobnail", "2025-06-20", { catches: [{ pattern: "olive-scud", fish: 2, rodHours: 4 }] }),
  );
  const rateOf = (slug: string) =>
    fliesOf(lake, "post-turnover").find(({ pattern }) => pattern === slug)?.rate;
  expect(rateOf("chironomid-pupa")).toMatchObject({ fish: 6, rodHours: 8, mean: 0.75 });
  expect(rateOf("olive-scud")).toMatchObject({ fish: 0, rodHours: 4, mean: 0, low: 0 });
  expect(rateOf("micro-leech")).toBeNull();
  expect(lake.catches.season).toMatchObject({ fish: 6, rodHours: 12, mean: 0.5 });
  expect(lake.catches.all).toMatchObject({ fish: 8, rodHours: 16, mean: 0.5 });
  const told = lake.reports.find(({ date }) => date === "2026-05-14");
  expect(told).toMatchObject({
    rodHours: 12,
    catches: [
      { pattern: "olive-scud", name: "Olive scud", way: "floating line", fish: 0, rodHours: 4 },
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
