import { describe, expect, test } from "vitest";
import { latenessText, nextText, nowText, spreadText, whyText } from "../../build/guide/status-words.ts";
import type { RegionForecast } from "../../build/season/forecast.ts";
import { bareLake, day, evenRegion } from "../lake-fixture.ts";
import { lake as clubLake } from "../rigs/box-fixture.ts";

const asOf = day("2026-05-16");
/** Ice-off about 12 May, give or take five days; turnover from 23 May; best weeks from 4 to 16 June. */
const ember = bareLake("ember", "Ember Lake", day("2026-05-12"), asOf);
const names = new Map([["wren", clubLake]]);
const why = (
  evidence: Partial<typeof ember.evidence>,
  marks = ember.marks,
  region: RegionForecast = evenRegion,
): string[] =>
  whyText({ ...ember, evidence: { ...ember.evidence, ...evidence }, marks }, region, asOf, names, "imperial");

describe("status in words", () => {
  test("now: the likeliest state with its chance", () => {
    expect(nowText({ ...ember, now: { state: "turnover", chance: 0.834 } })).toBe(
      "Turnover (83 %): cloudy or still mixing, and poor.",
    );
  });

  test("a day that is not certain is never told without its spread", () => {
    expect(spreadText({ p10: day("2026-05-24"), p50: day("2026-05-28"), p90: day("2026-06-02") })).toBe(
      "28 May (24 May to 2 Jun)",
    );
    expect(spreadText({ p10: asOf, p50: asOf, p90: asOf })).toBe("16 May");
  });

  test("next: when this phase ends and when the next good one begins", () => {
    expect(nextText({ ...ember, now: { state: "iceOff", chance: 0.8 } })).toBe(
      "Ice-off until 22 May (17 May to 27 May). Best weeks from 4 Jun (30 May to 9 Jun).",
    );
    expect(nextText({ ...ember, now: { state: "laterWeeks", chance: 0.99 }, next: null })).toBe(
      "Its best weeks ended about 17 Jun (12 Jun to 22 Jun).",
    );
  });

  test("a spring is late, early, or as usual", () => {
    expect([8.6, -1.2, 0.4].map(latenessText)).toEqual(["9 days late", "1 day early", "about as usual"]);
  });
});

describe("why the dates are what they are", () => {
  test("records: how many, of which years, and the usual day", () => {
    expect(why({})[0]).toBe(
      "From 9 seasons of its own records (2015 to 2025), in a middling spring it opens about 12 May.",
    );
    expect(why({ seasons: 1, firstSeason: 2025, lastSeason: 2025 })[0]).toContain(
      "From 1 season of its own records (2025)",
    );
    expect(why({ seasons: 0, firstSeason: null, lastSeason: null })[0]).toContain(
      "No records of its own yet",
    );
  });

  test("this spring against others, and by how many lakes", () => {
    expect(why({ spring: { days: 9.2, lakes: 6 } })[1]).toBe(
      "This spring runs 9 days late, by reports from 6 lakes.",
    );
    expect(why({ spring: null })[1]).toContain("past years are all there is");
  });

  test("which reports moved it, by how many days, and which way", () => {
    const movedBy = [
      { lake: "wren", date: day("2026-05-10"), seen: "ice on" as const, reports: 1, days: 2.34 },
      { lake: "wren", date: day("2026-05-11"), seen: "ice off" as const, reports: 3, days: -1 },
      { lake: "wren", date: day("2026-05-14"), seen: "no report" as const, reports: 0, days: 0.4 },
      { lake: "wren", date: day("2026-05-12"), seen: "ice off" as const, reports: 1, days: 0.02 },
    ];
    expect(why({ movedBy }).filter((line) => line.includes("moved"))).toEqual([
      "Wren Lake, “ice on” on 10 May, moved its ice-off 2.3 days later.",
      "Wren Lake, “ice off” on 11 May, with 2 other reports, moved its ice-off 1 day earlier.",
      "No report from Wren Lake up to 14 May moved its ice-off 0.4 days later.",
    ]);
  });

  test("what would sharpen it most, and how old the last sight of it is", () => {
    const lines = why({ wouldSharpen: { lake: "wren", days: 1.5 } }, [
      { date: day("2026-05-12"), seen: "ice on", doubted: false },
    ]);
    expect(lines).toContain(
      "A look at Wren Lake today, still iced or open, would narrow it most (by about 1.5 days).",
    );
    expect(lines).toContain("Last seen Tue 12 May, 4 days before this guide.");
  });

  const best = { lake: "wren", days: 4.2, lakes: 5 };

  test("the lake whose look would narrow the others most is named once", () => {
    const line = "Of all lakes, a look at Wren Lake would narrow the others most.";
    const region = { ...evenRegion, mostInformative: best };
    expect(why({ wouldSharpen: null }, [], region)).toContain(line);
    expect(why({ wouldSharpen: { lake: "wren", days: 1.5 } }, [], region)).not.toContain(line);
  });

  test("openings alone ask for a look, still iced or not", () => {
    const lines = why({}, [], { ...evenRegion, mostInformative: best, openingsOnly: true });
    expect(lines.join(" ")).toContain("one look at Wren Lake, still iced or not, would help most");
  });

  test("an unusually uneven spring is said to be one", () => {
    const line = "This spring is unusually uneven: spreads are wider.";
    expect(why({}, [], { ...evenRegion, uneven: 0.6 })).toContain(line);
    expect(why({}, [])).not.toContain(line);
  });

  test("a middle day that is not after the lake's own last ice is owned up to", () => {
    const seen = (date: string) => [{ date: day(date), seen: "ice on" as const, doubted: false }];
    const of = (date: string) => why({}, seen(date)).filter((line) => line.includes("other lakes speak"));
    expect(of("2026-05-12")).toHaveLength(1);
    expect(of("2026-05-11")).toHaveLength(0);
  });
});
