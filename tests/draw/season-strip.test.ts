import { expect, test } from "vitest";
import type { Drawing } from "../../build/draw/drawing.ts";
import { paperInk, screenInk } from "../../build/draw/ink.ts";
import { springDays } from "../../build/draw/strip/date-axis.ts";
import { stripLegend } from "../../build/draw/strip/legend.ts";
import { drawMarkShape } from "../../build/draw/strip/marks.ts";
import { seasonStrip } from "../../build/draw/strip/season-strip.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { DAY_STATES, PHASES, STATE_WORDS } from "../../build/model/phase.ts";
import { bareLake, day, fullLake, guideOf } from "../lake-fixture.ts";
import { lettering } from "./lettering-boxes.ts";

const AS_OF = day("2026-05-16");
const lake = fullLake("ember", "Ember Lake", day("2026-05-12"), AS_OF);
const guide = guideOf([lake], AS_OF);
const wide = { ink: screenInk, width: 720, height: 240, compact: false };
const row = { ink: screenInk, width: 320, height: 36, compact: true };

test("a strip is a picture with a title that says what it shows", () => {
  const svg = renderSvg(seasonStrip(lake, guide, wide));
  expect(svg).toMatch(/^<svg [^>]*role="img"/);
  expect(svg).toContain(
    "<title>Ember Lake: chance of each state by day, 15 Mar – 15 Jul. As of 16 May: Ice-off (85 %).</title>",
  );
});

test("it writes the state's names, the as-of date, the months and what was seen", () => {
  const written = lettering(seasonStrip(lake, guide, wide));
  const wanted = [
    "Iced",
    "Ice-off",
    "Turnover",
    "Later weeks",
    "as of 16 May",
    "May",
    "Jun",
    "ice on",
    "ice off",
  ];
  expect(wanted.filter((word) => !written.includes(word))).toEqual([]);
});

test("each kind of mark is written once, a doubted one with its question mark", () => {
  const marks = [
    { date: day("2026-04-20"), seen: "ice on", doubted: false },
    { date: day("2026-05-01"), seen: "ice on", doubted: false },
    { date: day("2026-05-15"), seen: "turnover", doubted: true },
  ] as const;
  const written = lettering(seasonStrip({ ...lake, marks: [...marks] }, guide, wide));
  expect(written.filter((word) => word === "ice on")).toHaveLength(1);
  expect(written).toContain("turnover?");
});

test("a row of the board has no lettering", () => {
  expect(lettering(seasonStrip(lake, guide, row))).toEqual([]);
});

test("strips have no ids that could clash on one page", () => {
  expect(renderSvg(seasonStrip(lake, guide, wide)) + renderSvg(seasonStrip(lake, guide, row))).not.toContain(
    " id=",
  );
});

test("a strip that ends before the as-of date has no as-of line", () => {
  const early = seasonStrip(lake, guide, { ...wide, from: day("2026-04-01"), to: day("2026-05-01") });
  expect(lettering(early)).not.toContain("as of 16 May");
});

test("colours come from the ink alone", () => {
  const colours = (drawing: Drawing) =>
    new Set([...renderSvg(drawing).matchAll(/(?:fill|stroke)="([^"]*)"/g)].map((m) => m[1] ?? ""));
  for (const colour of colours(seasonStrip(lake, guide, wide)))
    expect(colour).toMatch(/^(none|var\(--strip-.*\))$/);
  for (const colour of colours(seasonStrip(lake, guide, { ...wide, ink: paperInk })))
    expect(colour).toMatch(/^(none|#000000|#ffffff)$/);
});

test("no number in a drawing is broken", () => {
  const bare = bareLake("bare", "Bare Lake", day("2026-05-01"), AS_OF);
  for (const one of [lake, bare])
    for (const options of [wide, row, { ...wide, ...springDays(one, guide) }])
      expect(renderSvg(seasonStrip(one, guide, options))).not.toMatch(/NaN|Infinity|undefined/);
});

test("the spring days hold every day that is not surely ice or laterWeeks, and the as-of date", () => {
  const late = bareLake("late", "Late Lake", day("2026-06-05"), AS_OF);
  for (const one of [lake, late]) {
    const { from, to } = springDays(one, guide);
    const unsure = one.daily
      .filter(({ iced, laterWeeks }) => iced < 0.99 && laterWeeks < 0.99)
      .map(({ date }) => date);
    expect([AS_OF, ...unsure].filter((date) => date < from || date > to)).toEqual([]);
  }
});

test("no two kinds of mark have the same shape", () => {
  const kinds = ["ice on", "ice part", "ice off", ...PHASES] as const;
  const shapes = kinds.map((seen) =>
    JSON.stringify(drawMarkShape({ seen, doubted: false, x: 10, y: 10, r: 4, ink: paperInk })),
  );
  expect(new Set(shapes).size).toBe(kinds.length);
});

test("the legend names every state and every kind of mark", () => {
  const written = lettering(stripLegend({ ink: screenInk, width: 340, marks: true }));
  expect(
    DAY_STATES.map((state) => STATE_WORDS[state].name).filter((name) => !written.includes(name)),
  ).toEqual([]);
  // What a report can say of the ice, and the states of open water that it can name.
  const ice = ["ice on", "ice part", "ice off"];
  const open = ["ice-off", "turnover", "best weeks", "later weeks"];
  expect(written.filter((word) => word.startsWith("seen: "))).toEqual(
    [...ice, ...open].map((seen) => `seen: ${seen}`),
  );
});
