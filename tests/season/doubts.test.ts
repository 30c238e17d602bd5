import { describe, expect, test } from "vitest";
import type { Memoize } from "../../build/model/memoize.ts";
import { forecastSeason } from "../../build/season/season.ts";
import { clubOf, day, FOUR_LAKES, reportOf, withRow } from "./club.ts";

const doubtsAfter = (reports: Parameters<typeof clubOf>[1], lakes = FOUR_LAKES) =>
  forecastSeason(clubOf("2026-05-20", reports, lakes));

describe("doubts", () => {
  test("reports that agree raise none", () => {
    expect(
      doubtsAfter([
        reportOf("alder", "2026-04-12", { ice: "on" }),
        reportOf("alder", "2026-04-19", { ice: "off" }),
      ]).doubts,
    ).toEqual([]);
  });

  test("ice after open water is named where it was written", () => {
    const { doubts } = doubtsAfter([
      reportOf("alder", "2026-04-14", { ice: "off" }, 2),
      reportOf("alder", "2026-04-18", { ice: "on" }, 3),
    ]);
    expect(doubts).toMatchObject([
      { code: "ice-back", severity: "warning", file: "reports/2026.yaml", line: 3, column: 3 },
    ]);
    expect(doubts[0]?.message).toContain("18 Apr");
    expect(doubts[0]?.message).toContain("14 Apr");
  });

  test("are said where the reports stand now, of a forecast that was remembered", () => {
    const kept = new Map<string, unknown>();
    const memoize: Memoize = <Needs, Result>(
      kind: string,
      needs: Needs,
      compute: (needs: Needs) => Result,
    ) => {
      const key = JSON.stringify([kind, needs]);
      if (!kept.has(key)) kept.set(key, compute(needs));
      return kept.get(key) as Result;
    };
    const doubtsFrom = (line: number) =>
      forecastSeason(
        clubOf("2026-05-20", [
          reportOf("alder", "2026-04-14", { ice: "off" }, line),
          reportOf("alder", "2026-04-18", { ice: "on" }, line + 1),
        ]),
        { memoize },
      ).doubts;
    expect(doubtsFrom(2)).toMatchObject([{ code: "ice-back", line: 3 }]);
    expect(doubtsFrom(7)).toMatchObject([{ code: "ice-back", line: 8 }]);
    expect(kept.size).toBe(1);
  });

  test("open and iced on one day cannot both be", () => {
    const { doubts } = doubtsAfter([
      reportOf("alder", "2026-04-14", { ice: "off" }, 2),
      reportOf("alder", "2026-04-14", { ice: "on" }, 3),
    ]);
    expect(doubts.map(({ code }) => code)).toContain("ice-back");
  });

  test("partly open and open on one day can", () => {
    const { doubts } = doubtsAfter([
      reportOf("alder", "2026-04-14", { ice: "off" }),
      reportOf("alder", "2026-04-14", { ice: "part" }),
    ]);
    expect(doubts).toEqual([]);
  });

  test("one report against all the rest is doubted, marked, and moves little", () => {
    const rest = ["2026-04-08", "2026-04-12", "2026-04-15"].map((date, i) =>
      reportOf("alder", date, { ice: "on" }, 2 + i),
    );
    const odd = reportOf("alder", "2026-02-20", { ice: "off" }, 9);
    const forecast = doubtsAfter([odd, ...rest]);
    const alder = forecast.lakes.get("alder");
    expect(alder?.marks.filter(({ doubted }) => doubted)).toEqual([
      { date: "2026-02-20", seen: "ice off", doubted: true },
    ]);
    expect(alder?.iceOff.p50).toBe(doubtsAfter(rest).lakes.get("alder")?.iceOff.p50);
  });

  test("a report is doubted when its chance is under one in ten, by Bayes' rule for one report in fifty wrong", () => {
    const alone = FOUR_LAKES.slice(0, 1).map((lake) => ({ ...lake, watched: "no" as const }));
    const before = forecastSeason(clubOf("2026-06-20", [], alone)).lakes.get("alder")?.daily ?? [];
    const doubted = (date: string): boolean =>
      forecastSeason(clubOf("2026-06-20", [reportOf("alder", date, { ice: "part" })], alone)).doubts.length >
      0;
    const named = before
      .flatMap(({ date }, i) => {
        // partly open: it opens that day or within a week
        const [from, to] = [before[i - 1], before[i + 7]];
        if (from === undefined || to === undefined) return [];
        const part = from.iced - to.iced;
        return [{ date, chance: (0.98 * part) / (0.98 * part + 0.02 * (1 - part)) }];
      })
      // a chance is printed to four decimals: those too near the limit are left aside
      .filter(({ chance }) => chance > 0.03 && chance < 0.3 && Math.abs(chance - 0.1) > 0.03);
    expect(named.some(({ chance }) => chance < 0.1)).toBe(true);
    expect(named.some(({ chance }) => chance > 0.1)).toBe(true);
    for (const { date, chance } of named) expect(doubted(date)).toBe(chance < 0.1);
  });

  test("cloudy water on a lake that does not turn over is doubted", () => {
    const lakes = FOUR_LAKES.map((lake) => ({ ...lake, turnoverRule: { turnsOver: false } as const }));
    const { doubts } = doubtsAfter([reportOf("alder", "2026-05-10", { phase: "turnover" })], lakes);
    expect(doubts).toMatchObject([{ code: "report-doubted", line: 1 }]);
  });

  test("a report that contradicts this season's record is named", () => {
    const lakes = FOUR_LAKES.map((lake, i) =>
      i === 0 ? withRow(lake, { season: 2026, on: day("2026-04-14") }) : lake,
    );
    const forecast = doubtsAfter([reportOf("alder", "2026-04-20", { ice: "on" })], lakes);
    expect(forecast.doubts).toMatchObject([{ code: "ice-back" }]);
    expect(forecast.lakes.get("alder")?.iceOff).toMatchObject({ status: "observed", p50: "2026-04-14" });
  });

  describe("of a region's reports as a whole", () => {
    const iced = (date: string) =>
      FOUR_LAKES.map(({ slug }, i) => reportOf(slug, date, { ice: "on" }, 20 + i));
    const codes = (reports: Parameters<typeof clubOf>[1], asOf = "2026-04-30") =>
      forecastSeason(clubOf(asOf, reports)).doubts.map(({ code }) => code);

    test("openings alone are named at the latest of them, with the lake to look at", () => {
      const { doubts, regions } = forecastSeason(
        clubOf("2026-04-24", [
          reportOf("alder", "2026-04-20", { ice: "off" }, 4),
          reportOf("birch", "2026-04-23", { ice: "off" }, 7),
        ]),
      );
      const openings = doubts.find(({ code }) => code === "openings-only");
      expect(openings).toMatchObject({ severity: "warning", file: "reports/2026.yaml", line: 7 });
      expect(openings?.hint).toContain(regions[0]?.mostInformative?.lake ?? "no lake");
      expect(openings?.hint).toContain("still iced or not");
    });

    test("one lake still iced among them and nothing is said", () => {
      expect(
        codes([
          reportOf("alder", "2026-04-20", { ice: "off" }),
          reportOf("cedar", "2026-04-20", { ice: "on" }),
        ]),
      ).not.toContain("openings-only");
    });

    test("a middle day that is not after the lake's own latest ice is named at that report", () => {
      const others = ["birch", "cedar", "dogwood"].flatMap((slug, i) => [
        reportOf(slug, "2026-03-20", { ice: "off" }, 10 + i),
        reportOf(slug, "2026-03-28", { phase: "turnover" }, 20 + i),
      ]);
      const forecast = forecastSeason(
        clubOf("2026-06-20", [...others, reportOf("alder", "2026-06-10", { ice: "on" }, 3)]),
      );
      const alder = forecast.lakes.get("alder")?.iceOff;
      const named = forecast.doubts.filter(({ code }) => code === "median-before-ice");
      expect(named.length).toBe((alder?.p50 ?? "") <= "2026-06-10" ? 1 : 0);
      for (const { line } of named) expect(line).toBe(3);
    });

    test("springs with every lake still iced raise nothing", () => {
      expect(codes(iced("2026-04-10"), "2026-04-10")).toEqual([]);
    });
  });
});
