import { describe, expect, test } from "vitest";
import { addDays, daysBetween } from "../../build/model/calendar.ts";
import type { LakeForecast } from "../../build/season/forecast.ts";
import { lakeForecastSchema } from "../../build/season/forecast.ts";
import { forecastSeason, type SeasonForecast } from "../../build/season/season.ts";
import { clubOf, day, FOUR_LAKES, lakeOf, reportOf, type SeasonClub, withRow } from "./club.ts";

const of = (forecast: SeasonForecast, slug: string): LakeForecast => {
  const lake = forecast.lakes.get(slug);
  if (lake === undefined) throw new Error(`no forecast for ${slug}`);
  return lake;
};
const width = ({ iceOff }: LakeForecast): number => daysBetween(iceOff.p10, iceOff.p90);

const without = ({ elevation_m: _, ...lake }: (typeof FOUR_LAKES)[number]) => lake;

const CLUBS: readonly (readonly [string, SeasonClub])[] = [
  ["before the season", clubOf("2026-01-10")],
  [
    "in the season, with reports",
    clubOf("2026-04-20", [
      reportOf("alder", "2026-04-16", { ice: "off" }),
      reportOf("cedar", "2026-04-20", { ice: "on" }),
    ]),
  ],
  ["after the season", clubOf("2026-09-30", [reportOf("alder", "2026-04-16", { ice: "off" })])],
  ["a lake alone with one record", clubOf("2026-04-20", [], [lakeOf("alder", { 2025: 110 })])],
  [
    "a lake alone without a record",
    clubOf("2026-04-20", [reportOf("alder", "2026-04-16", { ice: "on" })], [lakeOf("alder")]),
  ],
  [
    "no record anywhere",
    clubOf("2026-04-20", [], [lakeOf("alder"), lakeOf("birch", {}, { elevation_m: 900 })]),
  ],
  [
    "one season alone",
    clubOf("2026-04-20", [], [lakeOf("alder", { 2025: 110 }), lakeOf("birch", { 2025: 119 })]),
  ],
  ["no elevations", clubOf("2026-04-20", [], FOUR_LAKES.map(without))],
  [
    "0, 1, 2 and 3 records",
    clubOf(
      "2026-04-20",
      [reportOf("birch", "2026-04-20", { ice: "part" })],
      [
        lakeOf("alder"),
        lakeOf("birch", { 2025: 110 }),
        lakeOf("cedar", { 2024: 108, 2025: 112 }),
        lakeOf("dogwood", { 2023: 104, 2024: 112, 2025: 115 }),
      ],
    ),
  ],
  [
    "interval records only",
    clubOf(
      "2026-04-20",
      [],
      [
        withRow(lakeOf("alder"), { season: 2025, after: day("2025-04-10"), by: day("2025-04-19") }),
        withRow(lakeOf("birch"), { season: 2025, by: day("2025-05-01") }),
        withRow(lakeOf("cedar"), { season: 2024, after: day("2024-04-25") }),
      ],
    ),
  ],
  [
    "a lake that does not turn over",
    clubOf(
      "2026-05-05",
      [reportOf("alder", "2026-05-04", { phase: "ice-off" })],
      [lakeOf("alder", { 2024: 108, 2025: 112 }, { turnoverRule: { turnsOver: false } })],
    ),
  ],
  [
    "a rule of its own",
    clubOf(
      "2026-05-05",
      [],
      [
        lakeOf(
          "alder",
          { 2024: 108, 2025: 112 },
          { turnoverRule: { turnsOver: true, onset: { from: 3, to: 3 }, duration: { from: 40, to: 45 } } },
        ),
      ],
    ),
  ],
];

test("no ice-off is invented where no lake of the region has a date", () => {
  const { lakes, refusals } = forecastSeason(clubOf("2026-04-20", [], [lakeOf("alder"), lakeOf("birch")]));
  expect([lakes.size, ...refusals]).toEqual([0, ["alder", "noDates"], ["birch", "noDates"]]);
});

describe.each(CLUBS)("%s", (_, club) => {
  const forecast = forecastSeason(club);

  test("every lake has a forecast by the schema", () => {
    expect([...forecast.lakes.keys(), ...forecast.refusals.keys()].sort()).toEqual(
      club.lakes.map(({ slug }) => slug).sort(),
    );
    for (const lake of forecast.lakes.values())
      expect(lakeForecastSchema.safeParse(lake).error?.issues).toBeUndefined();
  });

  test("each day's chances sum to 1, over the whole window", () => {
    const { from, to } = forecast.window;
    for (const { daily } of forecast.lakes.values()) {
      expect(daily.map(({ date }) => date)).toEqual(
        Array.from({ length: daysBetween(from, to) + 1 }, (_, i) => addDays(from, i)),
      );
      for (const { iced, iceOff, turnover, postTurnover, laterWeeks } of daily)
        expect(Math.abs(iced + iceOff + turnover + postTurnover + laterWeeks - 1)).toBeLessThan(1e-9);
    }
  });

  test("days are in order: p10, p50, p90, and each phase after the one before", () => {
    for (const { iceOff, phases } of forecast.lakes.values()) {
      for (const { p10, p50, p90 } of [iceOff, ...phases.flatMap(({ from, to }) => [from, to])])
        expect([p10, p50, p90]).toEqual([p10, p50, p90].sort());
      phases.forEach(({ from, to }, i) => {
        expect(from.p50 <= to.p50).toBe(true);
        const next = phases[i + 1];
        if (next !== undefined) expect(to.p50 < next.from.p50).toBe(true);
      });
    }
  });

  test("quantiles and daily chances tell the same", () => {
    for (const { iceOff, daily } of forecast.lakes.values())
      for (const [p, date] of [
        [0.1, iceOff.p10],
        [0.5, iceOff.p50],
        [0.9, iceOff.p90],
      ] as const) {
        const on = daily.find((row) => row.date === date);
        const before = daily.find((row) => row.date === addDays(date, -1));
        if (on !== undefined) expect(1 - on.iced).toBeGreaterThanOrEqual(p - 1e-9);
        if (before !== undefined) expect(1 - before.iced).toBeLessThan(p + 1e-9);
      }
  });
});

describe("the window", () => {
  test("begins a week before the first chance of opening and ends a week after the last best weeks", () => {
    const { window, lakes } = forecastSeason(clubOf("2026-04-20"));
    const first = [...lakes.values()]
      .map(({ daily }) => daily.find(({ iced }) => iced < 0.98)?.date ?? "")
      .sort()[0];
    expect(daysBetween(window.from, day(first ?? ""))).toBe(7);
    for (const { daily } of lakes.values()) expect(daily.at(-8)?.laterWeeks).toBeGreaterThan(0.97);
  });

  test("holds the as-of date where that keeps it under 200 days", () => {
    const held = forecastSeason(clubOf("2026-02-20")).window;
    expect(held.from).toBe("2026-02-20");
    const far = forecastSeason(clubOf("2026-12-01")).window;
    expect(daysBetween(far.from, far.to)).toBeLessThan(200);
  });

  test("a club without lakes has a window of its as-of date", () => {
    const none = forecastSeason(clubOf("2026-04-20", [], []));
    expect(none.window).toEqual({ from: "2026-04-20", to: "2026-04-20" });
    expect([none.lakes.size, none.doubts.length]).toEqual([0, 0]);
  });
});

describe("records", () => {
  test("fewer records, wider forecast; none at all, widest", () => {
    const lakes = [
      lakeOf("alder", { 2022: 108, 2023: 99, 2024: 95, 2025: 113 }),
      lakeOf("birch", { 2022: 111, 2023: 103, 2024: 98, 2025: 115 }),
      lakeOf("cedar", { 2025: 114 }),
      lakeOf("dogwood"),
    ];
    const forecast = forecastSeason(clubOf("2026-03-01", [], lakes));
    expect(width(of(forecast, "cedar"))).toBeGreaterThanOrEqual(width(of(forecast, "alder")));
    expect(width(of(forecast, "dogwood"))).toBeGreaterThan(width(of(forecast, "alder")));
    expect(of(forecast, "dogwood").evidence).toMatchObject({
      seasons: 0,
      firstSeason: null,
      lastSeason: null,
    });
    expect(of(forecast, "birch").evidence).toMatchObject({ seasons: 4, firstSeason: 2022, lastSeason: 2025 });
  });

  test("a lake without records stands later the higher it lies: 3.3 days per 100 m (Hopkins 1918), as far as the records agree", () => {
    const lakes = [
      ...FOUR_LAKES.slice(0, 2),
      lakeOf("low", {}, { elevation_m: 200 }),
      lakeOf("high", {}, { elevation_m: 700 }),
    ];
    const forecast = forecastSeason(clubOf("2026-03-01", [], lakes));
    const days = daysBetween(of(forecast, "low").iceOff.p50, of(forecast, "high").iceOff.p50);
    expect(days).toBeGreaterThan(5 * (3.3 - 2));
    expect(days).toBeLessThan(5 * (3.3 + 2));
  });

  test("one 30-day typing error moves the middle of a four-record lake by less than a day (season model, section 6)", () => {
    const [alder, birch, ...rest] = FOUR_LAKES;
    if (alder === undefined || birch === undefined) throw new Error("no lakes");
    const middle = (lakes: SeasonClub["lakes"]) =>
      of(forecastSeason(clubOf("2026-03-01", [], lakes)), "birch").evidence.usualIceOff;
    const right = middle([alder, withRow(birch, { season: 2024, on: day("2024-04-09") }), ...rest]);
    const wrong = middle([alder, withRow(birch, { season: 2024, on: day("2024-05-09") }), ...rest]);
    expect(daysBetween(right, wrong)).toBeLessThanOrEqual(1);
  });

  test("south of the equator the spring is in the second half of the year", () => {
    const south = (slug: string, on: string) =>
      withRow(lakeOf(slug, {}, { position: { lat: -44, lon: 170 } }), { season: 2025, on: day(on) });
    const forecast = forecastSeason(
      clubOf(
        "2026-09-20",
        [reportOf("alder", "2026-09-18", { ice: "on" })],
        [south("alder", "2025-09-25"), south("birch", "2025-10-04")],
      ),
    );
    expect(of(forecast, "alder").iceOff.p50.slice(0, 4)).toBe("2026");
    expect(daysBetween(day("2026-09-18"), of(forecast, "alder").iceOff.p50)).toBeGreaterThan(0);
    expect(daysBetween(day("2026-10-15"), of(forecast, "alder").iceOff.p50)).toBeLessThan(0);
    expect(of(forecast, "alder").marks.length).toBe(1);
  });

  test("this season's row is the answer: observed, and every percentile on its day", () => {
    const [alder, ...rest] = FOUR_LAKES;
    if (alder === undefined) throw new Error("no lake");
    const forecast = forecastSeason(
      clubOf("2026-04-30", [], [withRow(alder, { season: 2026, on: day("2026-04-21") }), ...rest]),
    );
    const { iceOff, marks, evidence } = of(forecast, "alder");
    expect(iceOff).toMatchObject({
      status: "observed",
      p10: "2026-04-21",
      p50: "2026-04-21",
      p90: "2026-04-21",
    });
    expect(marks).toEqual([{ date: "2026-04-21", seen: "ice off", doubted: false }]);
    expect(evidence.wouldSharpen).toBeNull();
    expect(evidence.seasons).toBe(4);
  });

  test("this season's turnover pins the best weeks", () => {
    const alder = lakeOf(
      "alder",
      { 2024: 108, 2025: 112 },
      {
        turnover: [
          {
            season: 2026,
            from: day("2026-05-02"),
            to: day("2026-05-11"),
            where: { file: "lakes/alder.yaml", line: 4, column: 1 },
          },
        ],
      },
    );
    const { phases } = of(forecastSeason(clubOf("2026-05-15", [], [alder])), "alder");
    const best = phases.find(({ phase }) => phase === "post-turnover");
    expect(best?.from).toEqual({ p10: "2026-05-12", p50: "2026-05-12", p90: "2026-05-12" });
  });
});

describe("nothing dated after the as-of date is used", () => {
  const known = clubOf("2026-04-20", [reportOf("alder", "2026-04-16", { ice: "off" })]);
  const plain = (forecast: SeasonForecast) => ({ ...forecast, lakes: [...forecast.lakes] });
  const told = (club: SeasonClub): string => JSON.stringify(plain(forecastSeason(club)));

  test("reports", () => {
    const later = [
      reportOf("birch", "2026-04-21", { ice: "off" }),
      reportOf("alder", "2026-05-01", { phase: "turnover" }),
    ];
    expect(told({ ...known, reports: [...later, ...known.reports] })).toBe(told(known));
  });

  test("this season's and later seasons' records", () => {
    const lakes = known.lakes.map((lake) =>
      withRow(
        withRow(
          {
            ...lake,
            turnover: [
              {
                season: 2026,
                from: day("2026-05-01"),
                to: day("2026-05-09"),
                where: { file: "f", line: 1, column: 1 },
              },
            ],
          },
          { season: 2026, on: day("2026-04-22") },
        ),
        { season: 2027, on: day("2027-03-22") },
      ),
    );
    expect(told({ ...known, lakes })).toBe(told(known));
  });

  test("phases reported in another season", () => {
    const past = reportOf("birch", "2025-05-10", { phase: "turnover" });
    expect(told({ ...known, reports: [...known.reports, past] })).toBe(told(known));
  });
});

describe("regions", () => {
  // nobody looks at them unasked, so that their silence says nothing either
  const split = FOUR_LAKES.map((lake, i) => ({
    ...lake,
    region: i < 2 ? "west" : "east",
    watched: "no" as const,
  }));
  test("a report in one region says nothing of the spring in another", () => {
    const before = forecastSeason(clubOf("2026-04-20", [], split));
    const after = forecastSeason(
      clubOf("2026-04-20", [reportOf("alder", "2026-04-20", { ice: "on" })], split),
    );
    expect(of(after, "birch").iceOff.p50 > of(before, "birch").iceOff.p50).toBe(true);
    expect(of(after, "cedar").iceOff).toEqual(of(before, "cedar").iceOff);
    expect(of(after, "cedar").evidence.spring).toBeNull();
    expect(of(after, "birch").evidence.spring?.lakes).toBe(1);
  });
});

test("springs of two regions that ran against each other are told apart", () => {
  const springs = [-9, 9, -7, 8];
  const lakes = (split: boolean) =>
    [0, 1, 2, 3, 4, 5].map((i) =>
      lakeOf(
        `lake-${i}`,
        Object.fromEntries(
          springs.map((spring, y) => [2022 + y, 110 + i + (i % 2 === 0 ? spring : -spring)]),
        ),
        split ? { region: i % 2 === 0 ? "west" : "east" } : {},
      ),
    );
  const widthOf = (split: boolean): number => {
    const [first, ...rest] = lakes(split);
    if (first === undefined) throw new Error("no lake");
    const seen = [withRow(first, { season: 2026, on: day("2026-04-22") }), ...rest];
    return width(of(forecastSeason(clubOf("2026-04-25", [], seen)), "lake-2"));
  };
  expect(widthOf(true)).toBeLessThan(0.5 * widthOf(false));
});

describe("status", () => {
  const statusAfter = (...reports: Parameters<typeof reportOf>[]) =>
    of(
      forecastSeason(
        clubOf(
          "2026-05-20",
          reports.map((r) => reportOf(...r)),
        ),
      ),
      "alder",
    ).iceOff.status;

  test.each([
    [[], "forecast"],
    [[["alder", "2026-04-10", { ice: "on" }]], "forecast"],
    [[["alder", "2026-04-18", { ice: "part" }]], "forecast"],
    [[["alder", "2026-04-28", { ice: "off" }]], "observed"],
    [[["alder", "2026-05-10", { phase: "turnover" }]], "observed"],
    [[["alder", "2026-05-10", { water_C: 7 }]], "forecast"],
    [[["birch", "2026-04-28", { ice: "off" }]], "forecast"],
    // open in January, and iced on three later days: nobody believes it
    [
      [
        ["alder", "2026-01-20", { ice: "off" }],
        ["alder", "2026-03-20", { ice: "on" }],
        ["alder", "2026-03-27", { ice: "on" }],
      ],
      "forecast",
    ],
  ] as const)("after %j", (reports, status) => {
    expect(statusAfter(...(reports as unknown as Parameters<typeof reportOf>[]))).toBe(status);
  });
});
