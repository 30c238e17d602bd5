import { describe, expect, test } from "vitest";
import { daysBetween, seasonDay } from "../../build/model/calendar.ts";
import type { Report } from "../../build/model/club.ts";
import { chanceBy } from "../../build/season/after-ice/states.ts";
import { hemisphereOfLakes } from "../../build/season/records.ts";
import { clubSeason } from "../../build/season/region-season.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { clubOf, day, FOUR_LAKES, reportOf, SEASON, type SeasonClub, withRow } from "./club.ts";

const AS_OF = "2026-04-24";
/** Lakes that nobody looks at unasked: no silence, so that reports alone speak. */
const UNWATCHED = FOUR_LAKES.map((lake) => ({ ...lake, watched: "no" as const }));
const REPORTS = [
  reportOf("alder", "2026-04-12", { ice: "on" }, 1),
  reportOf("alder", "2026-04-20", { ice: "off" }, 2),
  reportOf("birch", "2026-04-23", { ice: "on" }, 3),
  reportOf("cedar", "2026-04-24", { ice: "on" }, 4),
];

/** Mean ice-off day of each lake, from its day-by-day chances. */
function meanDays(club: SeasonClub): ReadonlyMap<string, number> {
  const hemisphere = hemisphereOfLakes(club.lakes);
  return new Map(
    clubSeason(club, hemisphere).regions.flatMap(({ lakes }) =>
      lakes.map(({ lake, spring, span }) => [
        lake.slug,
        spring.iceOff.reduce((sum, chance, i) => sum + chance * (span.from + i), 0),
      ]),
    ),
  );
}

describe("movedBy", () => {
  const forecast = forecastSeason(clubOf(AS_OF, REPORTS, UNWATCHED));
  const all = meanDays(clubOf(AS_OF, REPORTS, UNWATCHED));

  test.each(["alder", "birch", "cedar", "dogwood"])(
    "%s: each shift is the one found by leaving that lake's reports out",
    (slug) => {
      const moved = forecast.lakes.get(slug)?.evidence.movedBy ?? [];
      expect(moved.length).toBeGreaterThan(0);
      for (const { lake, days, reports } of moved) {
        const others = REPORTS.filter((report) => report.lake !== lake);
        expect(reports).toBe(REPORTS.length - others.length);
        const rest = meanDays(clubOf(AS_OF, others, UNWATCHED));
        expect(Math.abs((all.get(slug) ?? 0) - (rest.get(slug) ?? 0) - days)).toBeLessThan(0.1);
      }
      // heavy tails beyond the days looked at leave a few hundredths of a day
      const sizes = moved.map(({ days }) => Math.abs(days));
      expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    },
  );
});

describe("spring", () => {
  const springAfter = (...reports: Report[]) =>
    forecastSeason(clubOf(AS_OF, reports)).lakes.get("dogwood")?.evidence.spring;

  test("is unknown before any report", () => {
    expect(springAfter()).toBeNull();
  });

  test("is unknown after a report that any spring would have given", () => {
    expect(springAfter(reportOf("alder", "2026-01-15", { ice: "on" }))).toBeNull();
  });

  test("counts the lakes whose reports tell, and runs early when they are open early", () => {
    const early = springAfter(
      reportOf("alder", "2026-04-04", { ice: "off" }),
      reportOf("birch", "2026-04-06", { ice: "off" }),
    );
    expect(early?.lakes).toBe(2);
    expect(early?.days).toBeLessThan(-3);
    expect(springAfter(reportOf("birch", "2026-04-24", { ice: "on" }))?.days).toBeGreaterThan(3);
  });

  test("with the day known it is that day against the lake's usual one, drawn a little towards the middle", () => {
    const [alder, ...rest] = FOUR_LAKES;
    if (alder === undefined) throw new Error("no lake");
    const { evidence } =
      forecastSeason(
        clubOf(AS_OF, [], [withRow(alder, { season: 2026, on: day("2026-04-22") }), ...rest]),
      ).lakes.get("alder") ?? {};
    if (evidence === undefined) throw new Error("no forecast");
    const late = daysBetween(evidence.usualIceOff, day("2026-04-22"));
    expect(evidence.spring?.days).toBeGreaterThan(0.6 * late);
    expect(evidence.spring?.days).toBeLessThan(late + 0.5);
  });
});

describe("silence", () => {
  const reports = ["2026-04-18", "2026-04-19"].map((date, i) =>
    reportOf(i === 0 ? "alder" : "birch", date, { ice: "off" }),
  );
  const dogwoodOf = (lakes: SeasonClub["lakes"]) =>
    forecastSeason(clubOf(AS_OF, reports, lakes)).lakes.get("dogwood");

  test("of a lake that is watched is named among its movers, and makes it later", () => {
    const lakes = FOUR_LAKES.map((lake) => ({
      ...lake,
      watched: lake.slug === "dogwood" ? ("yes" as const) : ("no" as const),
    }));
    const mover = dogwoodOf(lakes)?.evidence.movedBy.find(({ seen }) => seen === "no report");
    expect(mover).toMatchObject({ lake: "dogwood", date: "2026-04-19", reports: 0 });
    expect(mover?.days).toBeGreaterThan(0);
  });

  test("of a lake that nobody looks at says nothing", () => {
    expect(dogwoodOf(UNWATCHED)?.evidence.movedBy.map(({ seen }) => seen)).not.toContain("no report");
  });
});

describe("wouldSharpen", () => {
  const club = clubOf(AS_OF, [reportOf("cedar", "2026-04-20", { ice: "on" })], UNWATCHED);
  const seasonOf = (reports: SeasonClub["reports"]) =>
    clubSeason({ ...club, reports: [...club.reports, ...reports] }, "north").regions[0]?.lakes ?? [];
  const springOf = (reports: SeasonClub["reports"], slug: string) =>
    seasonOf(reports).find(({ lake }) => lake.slug === slug);
  const varianceOf = (reports: SeasonClub["reports"], slug: string): number => {
    const { iceOff } = springOf(reports, slug)?.spring ?? { iceOff: new Float64Array() };
    const mean = iceOff.reduce((sum, chance, i) => sum + chance * i, 0);
    return iceOff.reduce((sum, chance, i) => sum + chance * (i - mean) ** 2, 0);
  };

  test("the days it promises are near those that a look at the other lake takes off, averaged over what it may show", () => {
    const forecast = forecastSeason(club).lakes.get("dogwood");
    const sharpen = forecast?.evidence.wouldSharpen;
    if (forecast === undefined || sharpen === null || sharpen === undefined)
      throw new Error("no lake would narrow it");
    const other = springOf([], sharpen.lake);
    const open =
      other === undefined ? 0 : chanceBy(other.spring, "iceOff", seasonDay(day(AS_OF), SEASON, "north"));
    expect(Math.min(open, 1 - open)).toBeGreaterThan(0.02);
    const after = (ice: "on" | "off"): number =>
      varianceOf([reportOf(sharpen.lake, AS_OF, { ice })], "dogwood");
    const expected = open * after("off") + (1 - open) * after("on");
    const width = daysBetween(forecast.iceOff.p10, forecast.iceOff.p90);
    const gained = width * (1 - Math.sqrt(expected / varianceOf([], "dogwood")));
    expect(gained).toBeGreaterThan(0.5);
    expect(Math.abs(sharpen.days - gained)).toBeLessThan(0.4 * gained);
  });

  test("names nothing for a lake seen open", () => {
    const forecast = forecastSeason(
      clubOf("2026-05-20", [reportOf("dogwood", "2026-05-20", { ice: "off" })]),
    );
    expect(forecast.lakes.get("dogwood")?.evidence.wouldSharpen).toBeNull();
  });

  test.each(["2026-01-20", "2026-09-01"])("asks for nothing on %s, when every look is foreseen", (asOf) => {
    const forecast = forecastSeason({ ...club, reports: [], asOf: day(asOf) });
    for (const { evidence } of forecast.lakes.values()) expect(evidence.wouldSharpen).toBeNull();
    expect(forecast.regions[0]?.mostInformative).toBeNull();
  });

  test("the lake named for the region is the one that narrows the others by most days together", () => {
    const { lakes, regions } = forecastSeason(club);
    const best = regions[0]?.mostInformative;
    expect(best?.lakes).toBeGreaterThan(0);
    const named = [...lakes].flatMap(([slug, { evidence }]) =>
      slug !== best?.lake && evidence.wouldSharpen !== null ? [evidence.wouldSharpen.days] : [],
    );
    expect(best?.days).toBeLessThanOrEqual(named.reduce((sum, days) => sum + days, 0) + 0.02);
    expect(best?.days).toBeGreaterThanOrEqual(Math.max(...named) - 0.02);
  });
});
