import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layoutCard } from "../../build/cards/lake/lake-cards.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { addDays } from "../../build/model/calendar.ts";
import { day, fullLake, guideOf } from "../lake-fixture.ts";
import { LEGIBLE, POINT_MM } from "../reference/paper.ts";
import { AS_OF, ember, high, kettle, layoutOf, long, ruler } from "./card-fixture.ts";
import { faults, piecesOf, textsOf, written, xHeight_mm } from "./legibility.ts";

const LAKES = [ember, kettle, high, long];
const FACES = LAKES.flatMap((lake) => {
  const { front, back } = layoutOf(lake);
  return [front, back];
}).map((face) => [face.title, face] as const);

describe.each(FACES)("%s", (_title, face) => {
  test("all lettering is large enough, 3 mm from the edge of an A6 card, and clear of other lettering", () => {
    expect(faults(face)).toEqual([]);
  });

  test("no lettering of the strip is smaller than Degani's least x-height", () => {
    for (const piece of face.parts.flatMap(piecesOf))
      if (piece.kind === "drawing") {
        const size_pt = piece.drawing.textSize ?? Number.NaN;
        expect(ruler.xHeight_pt({ font: "regular", size_pt }) * POINT_MM).toBeGreaterThanOrEqual(
          LEGIBLE.any_mm,
        );
      }
  });
});

test("whatever the texts and the date, a card either is without fault or says what does not fit", () => {
  const words = (most: number) =>
    fc
      .array(
        fc.constantFrom("Long", "weedy", "shoal", "a", "of", "Thimble", "drop-off", "north-west", "km 12"),
        {
          minLength: 1,
          maxLength: most,
        },
      )
      .map((list) => list.join(" "));
  const lakes = fc.record({
    name: words(6),
    summary: fc.option(words(40), { nil: null }),
    hazards: fc.array(words(20), { maxLength: 6 }),
    plan: fc.constantFrom(ember.plan, ember.plan.slice(0, 1), []),
  });
  let without = 0;
  fc.assert(
    fc.property(lakes, fc.integer({ min: -40, max: 40 }), (change, days) => {
      const asOf = addDays(AS_OF, days);
      const lake = { ...fullLake("any", "Any", day("2026-05-12"), asOf), ...change };
      const { front, back, problems } = layoutCard(guideOf([lake], asOf), lake, ruler);
      if (problems.length > 0) return;
      without += 1;
      expect([...faults(front), ...faults(back)]).toEqual([]);
    }),
    { numRuns: 150 },
  );
  expect(without).toBeGreaterThan(30);
});

test("name, state, dates and the numbers to set are large enough to read at a glance", () => {
  const { front } = layoutOf(ember);
  const dates = ["22 May", "(17–27 May)"];
  // The deep end of the count is past 90 s, which is printed nowhere: the count has only a start.
  const numbers = ["1.5–5.5 ft", "7.5–17.5 ft", "from 60 s"];
  const glances = ["Ember Lake", "Ice-off", ...dates, ...numbers];
  for (const words of glances) {
    const sizes = textsOf(front)
      .filter(({ text }) => text.replaceAll("\u00a0", " ") === words)
      .map(xHeight_mm);
    expect([words, Math.max(...sizes) >= LEGIBLE.glance_mm]).toEqual([words, true]);
  }
});

test("the front shows each phase's days with their spread, its rig and its flies", () => {
  const words = written(layoutOf(ember).front);
  expect(words).toContain("as of 16 May 2026");
  expect(words).toContain("12 May (7–17 May) to 22 May (17–27 May)");
  expect(words).toContain("Indicator still, slip. Leader Long board, line Floater.");
  expect(words).toContain("Cinder Pupa 14, 16; Marl Scud 12, 14.");
});

test("the back shows hazards, rules with their date, the notice and where the QR code leads", () => {
  const words = written(layoutOf(ember).back);
  expect(words).toContain("West wind builds fast after noon.");
  expect(words).toContain("Rules as checked on 2 Mar 2026");
  expect(words).toContain("Everything here is invented.");
  expect(words).toContain("https://guide.example/spring/lakes/ember/");
});

test("cautions that always hold stand on every back, those of another state do not", () => {
  const warm = written(layoutOf(kettle).back);
  expect(warm).toContain("Wear the life jacket; it cannot be put on in the water. (US Coast Guard)");
  expect(warm).not.toContain("Spring ice is rotten ice");
  expect(written(layoutOf(ember).back)).toContain("Spring ice is rotten ice");
});

describe("what does not fit is named, not shrunk", () => {
  const sentence = "Keep to the marked channel when the wind is in the west. ";
  const cases: readonly (readonly [string, string, Partial<GuideLake>])[] = [
    ["a long summary", "summary", { summary: sentence.repeat(30) }],
    ["many hazards", "hazards", { hazards: Array.from({ length: 20 }, () => sentence.trim()) }],
    [
      "long rules",
      "rules",
      { rules: { text: sentence.repeat(30), checked: ember.rules?.checked ?? ember.iceOff.p50 } },
    ],
    [
      "a name of three lines",
      "name",
      { name: "The Long Upper Lake of the Seven Cold Springs and Two Tarns" },
    ],
  ];
  test.each(cases)("%s", (_what, field, change) => {
    const { problems } = layoutOf({ ...ember, ...change });
    const named = problems.filter((problem) => problem.field === field);
    expect(named[0]?.message).toMatch(new RegExp(`^card ember, field ${field}: .*(too long|lines long)`));
    expect(named[0]?.hint).toContain(`Shorten ${field}`);
    expect(named[0]?.file).toBe("lakes/ember.yaml");
  });

  test("a word wider than its column", () => {
    const { problems } = layoutOf({ ...ember, name: "Llanfairpwllgwyngyllgogerychwyrn" });
    expect(problems.map(({ field, message }) => [field, /mm too wide/.test(message)])).toContainEqual([
      "name",
      true,
    ]);
  });

  test("a pattern's name that is too long is blamed on the patterns", () => {
    const plan = ember.plan.map((phase) => ({
      ...phase,
      flies: phase.flies.map((fly) => ({
        ...fly,
        name: "Slow Old Pale Grey Marl Shoal Scud of the North ".repeat(4),
      })),
    }));
    const { problems } = layoutOf({ ...ember, plan });
    expect(problems.map(({ field }) => field)).toContain("patterns");
  });

  test("the millimetres are those by which the face runs over: 10 lines of 8.8 pt type add 38.8 mm", () => {
    const over = (lines: number): number => {
      const hazards = Array.from({ length: lines }, (_, i) => `Snag ${i}.`);
      const { problems } = layoutOf({ ...ember, hazards });
      return Number(/(\d+) mm too long/.exec(problems[0]?.message ?? "")?.[1]);
    };
    expect(Math.abs(over(40) - over(30) - 10 * 8.8 * LEGIBLE.leading * POINT_MM)).toBeLessThanOrEqual(1);
  });
});

test("a character that the typeface lacks is a problem of its field", () => {
  const { problems } = layoutOf({ ...ember, summary: "Ramp → north shore." });
  expect(problems.map(({ field, message }) => [field, message])).toEqual([
    ["summary", "card ember, field summary: the card's typeface has no “→” (U+2192)"],
  ]);
});
