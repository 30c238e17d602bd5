import svgToPdfkit from "svg-to-pdfkit";
import { describe, expect, test } from "vitest";
import { layoutCard, layoutMapCard } from "../../build/cards/lake/lake-cards.ts";
import type { Piece } from "../../build/cards/layout/page.ts";
import { createRuler, makeDocument, parseFonts } from "../../build/cards/pdf/document.ts";
import { inkDrawing, readDrawing } from "../../build/cards/pdf/svg-drawing.ts";
import { layoutRigDrawings } from "../../build/cards/rig/rig-cards.ts";
import { layoutBoxPlan } from "../../build/cards/trip/box-card.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { AS_OF } from "./card-fixture.ts";
import { piecesOf } from "./legibility.ts";
import { blackShare, difference, rasterise, withPdf } from "./rasterise.ts";

type Drawing = Extract<Piece, { readonly kind: "svg" }>;

const fonts = parseFonts();

/** Every drawing on the cards of the demonstration lakes, rigs and trips. */
async function drawings(): Promise<Drawing[]> {
  const guide = await demoGuide();
  const ruler = createRuler(fonts);
  const rigs = layoutRigDrawings(guide, ruler);
  const sides = [
    ...guide.lakes.flatMap((lake) =>
      [layoutCard(guide, lake, ruler), layoutMapCard(guide, lake, ruler)].flatMap((card) =>
        card === undefined ? [] : [card.front, card.back],
      ),
    ),
    rigs.front.face,
    rigs.back.face,
    ...guide.trips.flatMap((trip) => layoutBoxPlan(guide, trip, ruler).map(({ face }) => face)),
  ];
  return sides
    .flatMap(({ parts, decoration }) => [...parts.flatMap(piecesOf), ...decoration])
    .filter((piece): piece is Drawing => piece.kind === "svg");
}

const PAGE: [number, number] = [300, 420];

async function rastersOf(
  all: readonly Drawing[],
  ink: (document: PDFKit.PDFDocument, drawing: Drawing) => void,
) {
  const bytes = await makeDocument({ title: "Drawings", author: "", asOf: AS_OF }, fonts, (document) => {
    for (const drawing of all) {
      document.addPage({ size: PAGE, margin: 0 });
      ink(document, { ...drawing, x_pt: 10, y_pt: 10 });
    }
  });
  return withPdf(bytes, async (pdf) => {
    const rasters = [];
    for (const page of all.keys()) rasters.push(await rasterise(pdf, page, 2));
    return rasters;
  });
}

test("every drawing on the demo's cards is inked as svg-to-pdfkit, a library of its own, inks it", async () => {
  const all = await drawings();
  expect(all.length).toBeGreaterThan(50);
  const own = await rastersOf(all, inkDrawing);
  const theirs = await rastersOf(all, (document, { svg, x_pt, y_pt }) => {
    const [, width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
    svgToPdfkit(document, svg, x_pt, y_pt, {
      width,
      height,
      assumePt: true,
      fontCallback: (_family, bold) => (bold ? "bold" : "regular"),
    });
  });
  for (const [i, raster] of own.entries()) {
    expect(blackShare(raster)).toBeGreaterThan(0);
    expect(difference(raster, theirs[i] ?? raster), all[i]?.svg).toBeLessThan(0.0005);
  }
});

describe("what a card could not show", () => {
  const drawing = (inner: string): string => `<svg viewBox="0 0 9 9">${inner}</svg>`;

  test.each([
    ["an element", '<rect width="3" height="3"></rect>', /<rect /],
    ["an attribute", '<path d="M0 0" opacity="0.5"></path>', /<path opacity>/],
    ["a text without its size", '<text x="1" y="2">a</text>', /“undefined” for a number/],
    ["a number", '<circle cx="1" cy="2" r="wide"></circle>', /“wide” for a number/],
  ])("%s, is refused", (_, inner, message) => {
    expect(() => readDrawing(drawing(inner))).toThrow(message);
  });
});

test("an attribute without a value is an empty one, as in HTML", () => {
  expect(readDrawing('<svg viewBox="0 0 9 9"><path d stroke="#111111"></path></svg>').parts).toMatchObject([
    { path: "", stroke: "#111111" },
  ]);
});

test("what a group says counts for all in it, unless they say it themselves", () => {
  const {
    parts: [one, other],
  } = readDrawing(
    '<svg viewBox="0 0 9 9"><g stroke="#111111" fill="none"><path d="M0 0"></path><path d="M1 1" stroke="#222222"></path></g></svg>',
  );
  expect([one, other]).toMatchObject([
    { stroke: "#111111", fill: undefined },
    { stroke: "#222222", fill: undefined },
  ]);
});

test("a text in pieces stands in one line about its anchor", () => {
  expect(
    readDrawing(
      '<svg viewBox="0 0 9 9" font-size="8"><text x="5" y="6" text-anchor="middle">set <tspan font-weight="bold">4 ft</tspan></text></svg>',
    ).parts,
  ).toMatchObject([
    {
      x: 5,
      y: 6,
      left: 0.5,
      size: 8,
      runs: [
        { text: "set ", font: "regular" },
        { text: "4 ft", font: "bold" },
      ],
    },
  ]);
});
