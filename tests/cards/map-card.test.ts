import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { layoutMapCard } from "../../build/cards/lake/lake-cards.ts";
import type { Face, Piece } from "../../build/cards/layout/page.ts";
import type { Drawing } from "../../build/draw/drawing.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { type Guide, type GuideLake, guideSchema } from "../../build/guide/guide-schema.ts";
import { composeWater } from "../../build/water/water.ts";
import { lettering, letteringFaults } from "../draw/lettering-boxes.ts";
import { day, fullLake, guideOf } from "../lake-fixture.ts";
import { ISO_216_MM, LEGIBLE, POINT_MM } from "../reference/paper.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { circle, LAKE, OPTIONS, rectangle, shapeOf } from "../water/shapes.ts";
import { AS_OF, cardsOf, ember, high, kettle, need, ruler } from "./card-fixture.ts";
import { faults, piecesOf, textsOf, written } from "./legibility.ts";
import { withPdf } from "./rasterise.ts";

const demo = await demoGuide();

const cardOf = (guide: Guide, lake: GuideLake) => {
  const card = layoutMapCard(guide, lake, ruler);
  if (card === undefined) throw new Error(`${lake.slug} has no map card`);
  return card;
};
const plain = (face: Face): string => written(face).replaceAll("\u00a0", " ");

type DrawingPiece = Extract<Piece, { kind: "drawing" }>;
const drawingsOf = (face: Face): DrawingPiece[] =>
  face.parts.flatMap(piecesOf).filter((piece): piece is DrawingPiece => piece.kind === "drawing");

function firstDrawing(face: Face): Drawing {
  const [first] = drawingsOf(face);
  if (first === undefined) throw new Error(`${face.title} has no drawing`);
  return first.drawing;
}

/** Drawings too near the edge, in small lettering, over one another or over words. */
function drawingFaults(face: Face): string[] {
  const [width, height] = ISO_216_MM.A6;
  const drawings = drawingsOf(face);
  const boxes = drawings.map(({ drawing, x_pt, y_pt }) => ({
    left: x_pt,
    right: x_pt + drawing.width,
    top: y_pt,
    bottom: y_pt + drawing.height,
  }));
  const words = textsOf(face).map(({ text, x_pt, y_pt, style }) => ({
    text,
    left: x_pt,
    right: x_pt + ruler.width_pt(text.trimEnd(), style),
    top: y_pt - style.size_pt * 0.75,
    bottom: y_pt,
  }));
  const meet = (a: (typeof boxes)[number], b: (typeof boxes)[number]): boolean =>
    a.left < b.right - 0.1 && b.left < a.right - 0.1 && a.top < b.bottom - 0.1 && b.top < a.bottom - 0.1;
  return drawings.flatMap(({ drawing }, i) => {
    const box = boxes[i];
    if (box === undefined) return [];
    const size_pt = drawing.textSize ?? Number.NaN;
    const xHeight_mm = ruler.xHeight_pt({ font: "regular", size_pt }) * POINT_MM;
    const [left, right, top, bottom] = [box.left, box.right, box.top, box.bottom].map((at) => at * POINT_MM);
    return [
      ...((left ?? 0) < 3 || (right ?? 0) > width - 3 ? ["outside at the sides"] : []),
      ...((top ?? 0) < 3 || (bottom ?? 0) > height - 3 ? ["outside above or below"] : []),
      ...(xHeight_mm >= LEGIBLE.any_mm ? [] : [`lettering of ${xHeight_mm} mm`]),
      ...boxes.slice(i + 1).flatMap((other) => (meet(box, other) ? ["over another drawing"] : [])),
      ...words.filter((word) => meet(box, word)).map(({ text }) => `over “${text}”`),
      ...letteringFaults(drawing),
    ];
  });
}

const allFaults = (face: Face): string[] => [...faults(face), ...drawingFaults(face)];

describe.each(demo.lakes.map((lake) => [lake.name, lake] as const))("%s", (_, lake) => {
  const { front, back, problems } = cardOf(demo, lake);

  test("fits: nothing small, cut, too near the edge or over anything else", () => {
    expect(problems).toEqual([]);
    expect(allFaults(front)).toEqual([]);
    expect(allFaults(back)).toEqual([]);
  });

  test("front: every mark in the key, north in words, not for navigation", () => {
    const key = lettering(firstDrawing(front)).join(" ");
    for (const { mark, name } of lake.place.map?.marks ?? [])
      for (const word of (name ?? mark).split(" ")) expect(key).toContain(word);
    expect(plain(front)).toContain("north is up");
    expect(plain(front)).toContain("Not for navigation.");
  });

  test("back: the longest winds with their rods, forces 3 to 6, both ways of anchoring, the cautions", () => {
    const words = plain(back);
    for (const force of [3, 4, 5, 6]) expect(words).toMatch(new RegExp(`force ${force}, \\d`, "i"));
    for (const { name, words: how } of demo.rigs.anchor.moorings) {
      expect(words).toContain(name);
      expect(words).toContain(how);
    }
    for (const id of ["wind", "cold-shock", "life-jacket", "anchor"])
      expect(words).toContain(demo.cautions.find((caution) => caution.id === id)?.short);
    expect(words).toContain("(US Coast Guard)");
    expect(words).toContain("Local rules and licensed instruction come first.");
  });

  test("the light of each phase to come stands on one side", () => {
    const words = plain(front) + plain(back);
    expect(words.match(/First light/g)).toHaveLength(1);
    for (const { sunrise } of lake.place.light.slice(0, 1)) expect(words).toContain(sunrise?.slice(11, 16));
  });
});

/** Ember Lake with some other shape. */
const shapedEmber = (
  shore: Parameters<typeof shapeOf>[0],
  parts: Parameters<typeof shapeOf>[1] = {},
  change: Partial<GuideLake> = {},
): GuideLake => ({
  ...fullLake("ember", "Ember Lake", day("2026-05-12"), AS_OF),
  place: composeWater(LAKE, shapeOf(shore, parts), {
    ...OPTIONS,
    days: [AS_OF, day("2026-05-22"), day("2026-06-04")],
    bands: [
      { phase: "ice-off", band: { from_m: 0.5, to_m: 3 } },
      { phase: "post-turnover", band: { from_m: 2, to_m: 4 } },
    ],
  }).water,
  ...change,
});

test("ground of two phases is hatched for both, and the key says so", () => {
  const lake = shapedEmber(circle(300), { contours: [[4, circle(120)]] });
  const map = firstDrawing(cardOf(demo, lake).front);
  expect(lettering(map)).toContain("Both ice-off and best weeks");
  expect(renderSvg(map).match(/stroke="#ffffff" stroke-width="0.8"/g)?.length).toBe(2);
});

describe("what does not fit is named", () => {
  const named = (name: string, count: number): GuideLake => {
    const lake = shapedEmber(circle(300));
    const { map } = lake.place;
    if (map === null) throw new Error("no map");
    const [lon, lat] = map.shoreline[0]?.[0]?.[0] ?? [0, 0];
    const marks = Array.from({ length: count }, (_, i) => ({
      mark: "shoal" as const,
      name,
      lon: lon - i * 1e-4,
      lat,
    }));
    return { ...lake, place: { ...lake.place, map: { ...map, marks } } };
  };
  test.each([
    [
      "a key that leaves no room for the map",
      named("A long shoal of many words far from the ramp and the reeds", 26),
      /leaves \d+ mm/,
    ],
    ["a word wider than the card", named("Unter".repeat(20), 1), /wider than the card/],
    ["marks too close for their letters", named("X", 60), /no room on the map for the letter/],
    ["a character the typeface lacks", named("Ramp \u2192 north", 1), /no “→”/],
  ])("%s", (_, lake, message) => {
    const { problems } = cardOf(demo, lake);
    expect(problems.map(({ field, file }) => [field, file])).toContainEqual(["marks", "lakes/ember.geojson"]);
    expect(problems.map((problem) => problem.message).join(" ")).toMatch(message);
  });
});

test("whatever the shape, the name and the units, a map card either is without fault or says what does not fit", () => {
  const lakes = fc.record({
    length_m: fc.integer({ min: 150, max: 9000 }),
    width_m: fc.integer({ min: 100, max: 3000 }),
    turn_deg: fc.integer({ min: 0, max: 179 }),
    name: fc.constantFrom("Tarn", "Ember Lake", "Pennesseewassee Norway Lake"),
    units: fc.constantFrom("metric" as const, "imperial" as const),
  });
  let without = 0;
  fc.assert(
    fc.property(lakes, ({ length_m, width_m, turn_deg, name, units }) => {
      const lake = shapedEmber(
        rectangle(length_m, width_m, turn_deg),
        { contours: [[5, rectangle(length_m * 0.6, width_m * 0.6, turn_deg)]] },
        { name },
      );
      const { front, back, problems } = cardOf({ ...demo, club: { ...demo.club, units } }, lake);
      if (problems.length > 0) return;
      without += 1;
      expect([...allFaults(front), ...allFaults(back)]).toEqual([]);
    }),
    { numRuns: 25 },
  );
  expect(without).toBe(25);
});

describe("in the files", () => {
  const shaped = shapedEmber(circle(300), { contours: [[4, circle(120)]] });
  const guide = guideSchema.parse(guideOf([shaped, kettle, high], AS_OF, { cautions: demo.cautions }));
  let files: ReadonlyMap<string, Buffer>;
  beforeAll(async () => {
    files = (await cardsOf(guide)).files;
  });

  test("a lake with a shape has four pages, one without two", async () => {
    const pages = (name: string) => withPdf(need(files, name), async (pdf) => pdf.getPageCount());
    expect(await pages("ember.pdf")).toBe(4);
    expect(await pages("kettle.pdf")).toBe(2);
  });

  test("the title and the bookmarks name both cards", () => {
    const text = need(files, "ember.pdf").toString("latin1");
    for (const words of [
      "Ember Lake: lake cards as of 16 May 2026",
      "Ember Lake, front",
      "Ember Lake, back",
      "Ember Lake, map",
      "Ember Lake, wind",
    ])
      expect(text).toContain(`(${words})`);
  });

  test.each(["a4", "letter"])(
    "on %s the map card is right after its lake's, its back behind its front",
    async (sheet) => {
      const words = await withPdf(need(files, `sheets-${sheet}.pdf`), async (pdf) =>
        Array.from({ length: pdf.getPageCount() }, (_, page) => pdf.getPage(page).getText()),
      );
      expect(words).toHaveLength(4);
      const [front = "", back = "", secondFront = ""] = words;
      expect(front).toContain("map: north is");
      expect(front.indexOf("map: north is")).toBeGreaterThan(front.indexOf("Ember Lake"));
      expect(back).toContain("One anchor, off the bow");
      expect(back.indexOf("One anchor")).toBeGreaterThan(back.indexOf("Rules as checked"));
      expect(secondFront).not.toContain("map: north is");
    },
  );
});

test("without a shape there is no map card", () => {
  expect(layoutMapCard(guideOf([ember], AS_OF), ember, ruler)).toBeUndefined();
});
