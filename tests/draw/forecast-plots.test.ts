import { describe, expect, test } from "vitest";
import { errorPlot } from "../../build/draw/error-plot.ts";
import { paperInk, screenInk } from "../../build/draw/ink.ts";
import { pastStrip } from "../../build/draw/past-strip.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { BacktestRow } from "../../build/season/forecast.ts";
import { day } from "../season/club.ts";
import { lettering, letteringFaults } from "./lettering-boxes.ts";

const row = (moment: BacktestRow["moment"], guide: number, usual: number, shifted: number): BacktestRow => ({
  moment,
  reporting: "perfect",
  n: 10,
  seasons: 5,
  baseline: { mae: usual, crps: 3 },
  shifted: { mae: shifted, crps: 2.5 },
  opening: null,
  model: { mae: guide, crps: 2, cover50: 0.5, cover80: 0.8 },
  calibration: [],
});

const ROWS = [
  row("before", 6, 6, 6),
  row("first", 4, 6, 5),
  row("25%", 2, 6, 3),
  row("50%", 1.5, 6, 2.5),
  row("75%", 1, 13.9, 2),
];

/** The points of every line that is drawn through several. */
const linesOf = (svg: string): (readonly [number, number])[][] =>
  [...svg.matchAll(/ d="M([\d.]+ [\d.]+(?:L[\d.]+ [\d.]+)+)"/g)].map(([, points = ""]) =>
    points.split("L").map((point) => {
      const [x = 0, y = 0] = point.split(" ").map(Number);
      return [x, y] as const;
    }),
  );

describe.each([
  ["screen", screenInk],
  ["paper", paperInk],
] as const)("error by share of lakes open, on %s", (_, ink) => {
  const plot = errorPlot(ROWS, ink);

  test("has one line for each forecaster, through every moment with a report, and names each once", () => {
    const lines = linesOf(renderSvg(plot));
    expect(lines.map((line) => line.length)).toEqual([4, 4, 4]);
    const words = lettering(plot);
    for (const name of ["This guide", "Usual date, shifted", "Usual date"])
      expect(words.filter((word) => word === name)).toHaveLength(1);
  });

  test("a larger error stands higher, and equal errors level", () => {
    const [guide = [], shifted = [], usual = []] = linesOf(renderSvg(plot));
    const heights = (line: (readonly [number, number])[]) => line.map(([, y]) => y);
    expect(heights(guide)).toEqual([...heights(guide)].sort((a, b) => a - b));
    guide.forEach(([x, y], i) => {
      expect(shifted[i]?.[0]).toBe(x);
      expect(shifted[i]?.[1]).toBeLessThan(y);
    });
    expect(new Set(heights(usual).slice(0, 3)).size).toBe(1);
  });

  test.each([
    ["usual errors", ROWS],
    ["one moment", ROWS.slice(1, 2)],
    ["small errors", [row("first", 0.1, 0.2, 0.3)]],
    ["errors of two months", [row("first", 61, 62, 63), row("25%", 1, 2, 3)]],
  ] as const)("%s: every text is inside the frame, and none over another", (_name, rows) => {
    expect(letteringFaults(errorPlot(rows, ink))).toEqual([]);
  });
});

describe.each([
  ["screen", screenInk],
  ["paper", paperInk],
] as const)("past springs of a lake, on %s", (_, ink) => {
  const spring = (season: number, opened: string, bracket?: readonly [string, string, string]) => ({
    season,
    opened: day(`${season}-${opened}`),
    forecast:
      bracket === undefined
        ? null
        : {
            from: day(`${season}-03-20`),
            p10: day(`${season}-${bracket[0]}`),
            p50: day(`${season}-${bracket[1]}`),
            p90: day(`${season}-${bracket[2]}`),
          },
  });
  const PAST = [
    spring(2019, "05-04", ["04-20", "04-28", "05-06"]),
    spring(2020, "04-22"),
    spring(2021, "05-01", ["04-18", "04-25", "05-02"]),
    spring(2022, "05-22", ["05-01", "05-08", "05-15"]),
    spring(2024, "03-30", ["04-02", "04-06", "04-12"]),
  ];
  const strip = pastStrip(PAST, ink);

  test("has a line and a year for each spring, a diamond for its opening, and a bracket where one was given", () => {
    const svg = renderSvg(strip);
    expect(lettering(strip).filter((word) => /^\d{4}$/.test(word))).toEqual(
      PAST.map(({ season }) => String(season)),
    );
    expect(svg.match(/ d="M44 [\d.]+H314"/g)).toHaveLength(PAST.length);
    expect(svg.match(/ d="M[\d.]+ [\d.]+(L[\d.]+ [\d.]+){3}Z"/g)).toHaveLength(PAST.length);
    expect(svg.match(/ d="M[\d.]+ [\d.]+V[\d.]+H[\d.]+V[\d.]+Z"/g)).toHaveLength(4);
  });

  test.each([
    ["five springs", PAST],
    ["five springs that opened on one day", PAST.map(({ season }) => spring(season, "04-22"))],
    ["forty springs", Array.from({ length: 40 }, (_one, i) => spring(1980 + i, "04-22"))],
  ] as const)("%s: every text is inside the frame, and none over another", (_name, past) => {
    expect(letteringFaults(pastStrip(past, ink))).toEqual([]);
  });
});
