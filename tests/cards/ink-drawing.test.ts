import svgToPdfkit from "svg-to-pdfkit";
import { expect, test } from "vitest";
import { layoutCard, layoutMapCard } from "../../build/cards/lake/lake-cards.ts";
import { createRuler, makeDocument, parseFonts } from "../../build/cards/pdf/document.ts";
import { inkDrawing } from "../../build/cards/pdf/ink-drawing.ts";
import { layoutRigDrawings } from "../../build/cards/rig/rig-cards.ts";
import { layoutBoxPlan } from "../../build/cards/trip/box-card.ts";
import { calibrationPlot, shareBar } from "../../build/draw/charts.ts";
import {
  circle,
  createDrawing,
  type Drawing,
  type DrawingContent,
  group,
  path,
  placedDrawing,
  text,
} from "../../build/draw/drawing.ts";
import { paperInk } from "../../build/draw/ink.ts";
import { stripLegend } from "../../build/draw/strip/legend.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import { demoGuide } from "../site/demo-guide.ts";
import { AS_OF } from "./card-fixture.ts";
import { piecesOf } from "./legibility.ts";
import { blackShare, difference, type Raster, rasterise, withPdf } from "./rasterise.ts";

const fonts = parseFonts();

/** Every drawing on the cards of the demonstration lakes, rigs and trips. */
async function cardDrawings(): Promise<Drawing[]> {
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
    .flatMap((piece) => (piece.kind === "drawing" ? [piece.drawing] : []));
}

type Inking = (document: PDFKit.PDFDocument, drawing: Drawing, x_pt: number, y_pt: number) => void;

/** Each drawing on a page of its own. */
async function rastersOf(drawings: readonly Drawing[], ink: Inking): Promise<Raster[]> {
  const bytes = await makeDocument({ title: "Drawings", author: "", asOf: AS_OF }, fonts, (document) => {
    for (const drawing of drawings) {
      document.addPage({ size: [350, 460], margin: 0 });
      ink(document, drawing, 10, 10);
    }
  });
  return withPdf(bytes, async (pdf) => {
    const rasters = [];
    for (const page of drawings.keys()) rasters.push(await rasterise(pdf, page, 2));
    return rasters;
  });
}

const inkBySvgToPdfkit: Inking = (document, drawing, x_pt, y_pt) =>
  svgToPdfkit(document, renderSvg(drawing), x_pt, y_pt, {
    width: drawing.width,
    height: drawing.height,
    assumePt: true,
    fontCallback: (_family, bold) => (bold ? "bold" : "regular"),
  });

/** Inks drawings by both back ends: here, and as the markup that pages show inked by a library of its own. */
async function expectSameInk(drawings: readonly Drawing[]): Promise<void> {
  const own = await rastersOf(drawings, inkDrawing);
  const theirs = await rastersOf(drawings, inkBySvgToPdfkit);
  for (const [i, drawing] of drawings.entries()) {
    const [a, b] = [own[i], theirs[i]];
    if (a === undefined || b === undefined) throw new Error("every drawing has its page");
    expect(blackShare(a)).toBeGreaterThan(0);
    expect(difference(a, b), renderSvg(drawing)).toBeLessThan(0.0005);
  }
}

test("every drawing on the demo's cards is inked as svg-to-pdfkit inks its markup", async () => {
  const drawings = await cardDrawings();
  expect(drawings.length).toBeGreaterThan(50);
  await expectSameInk(drawings);
});

test("so are drawings that only pages show", async () => {
  const calibration = [
    { said: 0.1, came: 0.2 },
    { said: 0.9, came: 0.7 },
  ];
  const scores = { mae: 1, crps: 1 };
  await expectSameInk([
    calibrationPlot(
      (["before", "first", "75%"] as const).map((moment) => ({
        moment,
        reporting: "perfect" as const,
        n: 10,
        seasons: 3,
        baseline: scores,
        shifted: scores,
        opening: null,
        model: { ...scores, cover50: 0.5, cover80: 0.8 },
        calibration,
      })),
      paperInk,
    ),
    shareBar({ share: 0.4, low: 0.2, high: 0.7 }, paperInk),
    stripLegend({ ink: paperInk, width: 200, marks: true }),
  ]);
});

const drawingOf = (content: DrawingContent): Drawing =>
  createDrawing({ width: 120, height: 80, title: null, textSize: 10 }, content);

const SQUARE = "M10 10H60V60H10Z";

test.each<[string, DrawingContent]>([
  ["a path without attributes is filled black", path({ d: SQUARE })],
  [
    "a group's attributes apply unless a part sets its own",
    group({ fill: "none", stroke: "#000000", "stroke-width": 4 }, [
      path({ d: SQUARE }),
      group({ "stroke-width": 1 }, [path({ d: "M70 10V60" }), path({ d: "M80 10V60", stroke: "none" })]),
    ]),
  ],
  ["quadratic curves", path({ d: "M10 40Q40 0 70 40T110 40q-20 40 -50 20t-50 0Z" })],
  ["holes by the even-odd rule", path({ d: `${SQUARE}M20 20H50V50H20Z`, "fill-rule": "evenodd" })],
  [
    "mitred corners end where SVG 1.1 cuts them",
    path({ d: "M20 70L25 20L30 70", fill: "none", stroke: "#000000", "stroke-width": 6 }),
  ],
  [
    "round dots of a dashed line",
    path({
      d: "M10 30H110",
      stroke: "#000000",
      "stroke-width": 6,
      "stroke-linecap": "round",
      "stroke-dasharray": "0.01 12",
    }),
  ],
  ["a translated path", path({ d: SQUARE, transform: { translate: [40, 10] } })],
  ["a circle", circle({ cx: 40, cy: 40, r: 25, fill: "#ffffff", stroke: "#000000" })],
  [
    "text about its anchor, in runs of two weights",
    [
      text({ x: 60, y: 20, "text-anchor": "middle" }, [
        { text: "set ", isBold: false },
        { text: "4 ft", isBold: true },
      ]),
      group({ "text-anchor": "end", "font-weight": "bold" }, text({ x: 110, y: 40 }, "end & <bold>")),
      text({ x: 10, y: 70, "font-size": 16 }, 42),
    ],
  ],
  [
    "a drawing in a drawing, cut off at its own edges",
    placedDrawing(
      20,
      10,
      createDrawing({ width: 60, height: 40, title: null, textSize: 8 }, [
        path({ d: "M-10 -10H50V30H-10Z", fill: "none", stroke: "#000000", "stroke-width": 5 }),
        text({ x: 5, y: 20 }, "a word that runs out"),
      ]),
    ),
  ],
])("both back ends agree: %s", async (_, content) => {
  await expectSameInk([drawingOf(content)]);
});

test("what lies outside a drawing is not inked", async () => {
  const [raster] = await rastersOf([drawingOf(path({ d: "M120 0H150V80H120Z" }))], inkDrawing);
  expect(raster === undefined ? undefined : blackShare(raster)).toBe(0);
});

test("text without a font size is refused", async () => {
  const drawing = createDrawing({ width: 9, height: 9, title: null }, text({ x: 1, y: 2 }, "a"));
  await expect(rastersOf([drawing], inkDrawing)).rejects.toThrow("without a font size");
});
