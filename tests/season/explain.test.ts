import { describe, expect, test } from "vitest";
import { dateOfSeasonDay, daysBetween } from "../../build/model/calendar.ts";
import type { Report } from "../../build/model/club.ts";
import { hemisphereOfLakes } from "../../build/season/records.ts";
import { clubSeason } from "../../build/season/region-season.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { clubOf, day, FOUR_LAKES, reportOf, SEASON, type SeasonClub, withRow } from "./club.ts";

const AS_OF = "2026-04-24";
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
  const forecast = forecastSeason(clubOf(AS_OF, REPORTS));
  const all = meanDays(clubOf(AS_OF, REPORTS));

  test.each(["alder", "birch", "cedar", "dogwood"])(
    "%s: each shift is the one found by leaving the report out",
    (slug) => {
      const moved = forecast.lakes.get(slug)?.evidence.movedBy ?? [];
      expect(moved.length).toBeGreaterThan(0);
      for (const { lake, date, days } of moved) {
        const rest = meanDays(
          clubOf(
            AS_OF,
            REPORTS.filter((report) => report.lake !== lake || report.date !== date),
          ),
        );
        expect(Math.abs((all.get(slug) ?? 0) - (rest.get(slug) ?? 0) - days)).toBeLessThan(0.05);
      }
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

describe("wouldSharpen", () => {
  const club = clubOf(AS_OF, [reportOf("cedar", "2026-04-20", { ice: "on" })]);
  /** The 80 % width of a lake, standing late enough to know any date; a forecast rests on what was seen, not on the day it is read. */
  const width = (lakes: SeasonClub["lakes"], slug: string): number => {
    const forecast = forecastSeason({ ...club, asOf: day("2026-08-01"), lakes }).lakes.get(slug);
    return forecast === undefined ? Number.NaN : daysBetween(forecast.iceOff.p10, forecast.iceOff.p90);
  };

  test("the days it promises are near those that the other lake's date takes off, averaged over its dates", () => {
    const sharpen = forecastSeason(club).lakes.get("dogwood")?.evidence.wouldSharpen;
    const hemisphere = hemisphereOfLakes(club.lakes);
    const other = clubSeason(club, hemisphere)
      .regions.flatMap(({ lakes }) => lakes)
      .find(({ lake }) => lake.slug === sharpen?.lake);
    if (other === undefined) throw new Error("no lake would sharpen it");
    let [chances, expected] = [0, 0];
    other.spring.iceOff.forEach((chance, i) => {
      if (chance < 0.01) return;
      const on = dateOfSeasonDay(other.span.from + i, SEASON, hemisphere);
      const known = club.lakes.map((lake) =>
        lake.slug === other.lake.slug ? withRow(lake, { season: SEASON, on }) : lake,
      );
      expected += chance * width(known, "dogwood");
      chances += chance;
    });
    const gained = width(club.lakes, "dogwood") - expected / chances;
    expect(gained).toBeGreaterThan(3);
    expect(Math.abs((sharpen?.days ?? 0) - gained)).toBeLessThan(0.3 * gained);
  });

  test("names no lake that opens later, and nothing for a lake seen open", () => {
    const forecast = forecastSeason(
      clubOf("2026-05-20", [reportOf("dogwood", "2026-05-20", { ice: "off" })]),
    );
    expect(forecast.lakes.get("dogwood")?.evidence.wouldSharpen).toBeNull();
    expect(forecastSeason(club).lakes.get("alder")?.evidence.wouldSharpen).toBeNull();
  });

  test("asks for nothing when the spring is over", () => {
    const forecast = forecastSeason({ ...club, asOf: day("2026-09-01") });
    for (const { evidence } of forecast.lakes.values()) expect(evidence.wouldSharpen).toBeNull();
  });
});
