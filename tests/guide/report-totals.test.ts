import { expect, test } from "vitest";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import {
  caughtByPattern,
  lakeSeasons,
  listReports,
  reportSeasons,
} from "../../build/guide/report-seasons.ts";
import { reportSentences } from "../../build/guide/report-words.ts";
import { day } from "../lake-fixture.ts";
import { demoGuide } from "../site/demo-guide.ts";

type Report = GuideLake["reports"][number];

const report = (date: string, change: Partial<Report> = {}): Report => ({
  date: day(date),
  seen: [],
  water_C: null,
  clarity_m: null,
  deep: null,
  looks: null,
  oxygen_mgL: null,
  rodHours: null,
  catches: [],
  samples: [],
  notes: null,
  ...change,
});
const caught = (fish: number, rodHours: number | null, way: Report["catches"][number]["way"] = null) => ({
  pattern: "scud",
  name: "Scud",
  way,
  fish,
  rodHours,
});
const north = (...reports: Report[]) => ({
  slug: "ember",
  name: "Ember",
  position: { lat: 41, lon: -106 },
  reports,
});

test("a visit without a fish counts with its hours; a report that tells no catch counts as a report only", () => {
  const lake = north(
    report("2026-05-01", { rodHours: 6, catches: [caught(3, 6)] }),
    report("2026-05-02", { rodHours: 4, catches: [caught(0, 4)] }),
    report("2026-05-03", { seen: ["ice off"] }),
    report("2026-05-04", { catches: [caught(2, null)] }),
  );
  expect(lakeSeasons(lake)).toMatchObject([
    { season: 2026, reports: 4, told: 3, fish: 5, rate: { fish: 3, rodHours: 10, mean: 0.3 } },
  ]);
  // Garwood (1936), 95 % limits of a Poisson count of 3: 0.619 and 8.767.
  const rate = lakeSeasons(lake)[0]?.rate;
  expect(rate?.low).toBeCloseTo(0.0619, 4);
  expect(rate?.high).toBeCloseTo(0.8767, 4);
});

test("nothing told is no rate, not a rate of nothing", () => {
  expect(lakeSeasons(north(report("2026-05-01")))).toEqual([
    { season: 2026, reports: 1, told: 0, fish: 0, rate: null },
  ]);
});

test("seasons come newest first, by each lake's own hemisphere", () => {
  const south = { ...north(report("2026-02-01"), report("2026-08-01")), position: { lat: -41, lon: 172 } };
  expect(lakeSeasons(south).map(({ season }) => season)).toEqual([2026, 2025]);
  expect(
    reportSeasons([north(report("2026-02-01")), south]).map(({ season, reports }) => [season, reports]),
  ).toEqual([
    [2026, 2],
    [2025, 1],
  ]);
});

test("a pattern fished in two ways has two rows, most fish first", () => {
  const rows = caughtByPattern([
    report("2026-05-01", { catches: [caught(1, 2, "trolled"), caught(2, 2, "floating line")] }),
    report("2026-05-02", { catches: [caught(0, 4, "trolled")] }),
  ]);
  expect(rows).toMatchObject([
    { way: "floating line", fish: 2, rate: { rodHours: 2 } },
    { way: "trolled", fish: 1, rate: { fish: 1, rodHours: 6 } },
  ]);
});

test("foods count fish, not items; an empty throat is told apart", () => {
  const [season] = reportSeasons([
    north(
      report("2026-05-01", {
        samples: [
          [
            { food: "daphnia", count: 200, mass_g: null },
            { food: "scud", count: 1, mass_g: null },
          ],
          [{ food: "scud", count: 2, mass_g: null }],
          [{ food: "leech", count: 0, mass_g: null }],
          [],
        ],
      }),
    ),
  ]);
  expect(season?.lakes[0]).toMatchObject({
    foods: [
      { food: "scud", fish: 2 },
      { food: "daphnia", fish: 1 },
    ],
    fed: 2,
    empty: 2,
  });
});

test("reports of one lake and day are told apart, newest first", () => {
  const lake = north(report("2026-05-01"), report("2026-05-03"), report("2026-05-01"));
  expect(listReports([lake]).map(({ id }) => id)).toEqual([
    "ember-2026-05-03",
    "ember-2026-05-01",
    "ember-2026-05-01-2",
  ]);
});

test("words say what was told and no more", () => {
  expect(reportSentences(report("2026-05-01"), "metric")).toEqual([]);
  expect(reportSentences(report("2026-05-01", { seen: ["ice off", "turnover"] }), "metric")).toEqual([
    "Turnover.",
  ]);
  expect(
    reportSentences(report("2026-05-01", { seen: ["ice part", "ice-off"], samples: [[]] }), "metric"),
  ).toEqual(["Ice part, ice-off.", "1 throat, empty."]);
  expect(
    reportSentences(report("2026-05-01", { rodHours: 1, catches: [caught(0, 1, "trolled")] }), "metric"),
  ).toEqual(["No fish in 1 rod-hour: none on Scud (trolled)."]);
});

test("the demonstration club's seasons add up to what each lake's own rate says", async () => {
  const guide = await demoGuide();
  for (const { catches, reported, reports } of guide.lakes) {
    const fish = reported.seasons.reduce((sum, { rate }) => sum + (rate?.fish ?? 0), 0);
    const rodHours = reported.seasons.reduce((sum, { rate }) => sum + (rate?.rodHours ?? 0), 0);
    expect(fish).toBe(catches.all?.fish ?? 0);
    expect(rodHours).toBeCloseTo(catches.all?.rodHours ?? 0, 5);
    const season = reported.seasons.find((one) => one.season === guide.season);
    expect(season?.rate ?? null).toEqual(catches.season);
    expect(reported.seasons.reduce((sum, one) => sum + one.reports, 0)).toBe(reports.length);
  }
  const all = guide.lakes.flatMap(({ reports }) => reports);
  expect(guide.reportSeasons.reduce((sum, one) => sum + one.reports, 0)).toBe(all.length);
});
