import type { GuideFrame } from "../../guide/guide-frame.ts";
import { dayMonthYear } from "../../model/calendar.ts";
import type { Face, PaperSize, Part, Piece } from "../layout/page.ts";
import { type Fonts, makeDocument } from "./document.ts";
import { inkDrawing } from "./ink-drawing.ts";

function drawPiece(document: PDFKit.PDFDocument, piece: Piece): void {
  switch (piece.kind) {
    case "text":
      document
        .font(piece.style.font)
        .fontSize(piece.style.size_pt)
        .fillColor(piece.reversed ? "white" : "black")
        .text(piece.text, piece.x_pt, piece.y_pt, { lineBreak: false, baseline: "alphabetic" });
      break;
    case "shape":
      if (piece.stroke_pt === undefined) document.path(piece.path).fill("black");
      else document.path(piece.path).lineWidth(piece.stroke_pt).stroke("black");
      break;
    case "drawing":
      inkDrawing(document, piece.drawing, piece.x_pt, piece.y_pt);
      break;
  }
}

function structure(document: PDFKit.PDFDocument, part: Part): PDFKit.PDFStructureElement {
  const children = [
    ...(part.pieces.length === 0
      ? []
      : [
          () => {
            for (const piece of part.pieces) drawPiece(document, piece);
          },
        ]),
    ...part.parts.map((child) => structure(document, child)),
  ];
  return document.struct(part.role, part.alt === undefined ? {} : { alt: part.alt }, children);
}

/** Inks things that mean nothing read aloud. */
export function drawDecoration(document: PDFKit.PDFDocument, pieces: readonly Piece[]): void {
  document.markContent("Artifact", { type: "Layout" });
  for (const piece of pieces) drawPiece(document, piece);
  document.endMarkedContent();
}

/** Inks a face on the document's present page, its parts tagged in reading order under `root`. */
export function drawFace(document: PDFKit.PDFDocument, root: PDFKit.PDFStructureElement, face: Face): void {
  drawDecoration(document, face.decoration);
  root.add(
    document.struct(
      "Sect",
      { title: face.title },
      face.parts.map((part) => structure(document, part)),
    ),
  );
}

/** The sides of a card, or of a few that belong together, as a document with a page of its size for each. */
export const cardPdf = (
  guide: GuideFrame,
  faces: readonly Face[],
  { title, paper }: { readonly title: string; readonly paper: PaperSize },
  fonts: Fonts,
): Promise<Buffer> =>
  makeDocument(
    { title: `${title} as of ${dayMonthYear(guide.asOf)}`, author: guide.club.name, asOf: guide.asOf },
    fonts,
    (document, root) => {
      for (const face of faces) {
        document.addPage({ size: [paper.width_pt, paper.height_pt], margin: 0 });
        document.outline.addItem(face.title);
        drawFace(document, root, face);
      }
    },
  );
