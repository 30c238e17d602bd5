import { type Drawn, type DrawnPath, type DrawnText, readDrawing } from "./drawn.ts";
import type { Piece } from "./face.ts";

type Drawing = Extract<Piece, { readonly kind: "svg" }>;

/** A drawing stands on its own card and on two sheets; it is read once. */
const read = new WeakMap<Drawing, Drawn>();

function drawnOf(drawing: Drawing): Drawn {
  const known = read.get(drawing) ?? readDrawing(drawing.svg);
  read.set(drawing, known);
  return known;
}

function inkPath(document: PDFKit.PDFDocument, drawn: DrawnPath): void {
  const { path, fill, stroke, isEvenOdd, width, cap, dashes } = drawn;
  if (fill === undefined && stroke === undefined) return;
  const rule = isEvenOdd ? "even-odd" : "non-zero";
  const isDashed = stroke !== undefined && dashes.length > 0;
  // pdfkit takes a list of lengths, which its types do not know.
  if (isDashed) document.save().dash(dashes as unknown as number, {});
  if (fill !== undefined) document.fillColor(fill);
  if (stroke !== undefined) document.strokeColor(stroke).lineWidth(width).lineCap(cap);
  document.path(path);
  if (stroke === undefined) document.fill(rule);
  else if (fill === undefined) document.stroke();
  else document.fillAndStroke(undefined, undefined, rule);
  if (isDashed) document.restore();
}

function inkText(document: PDFKit.PDFDocument, { runs, x, y, size, fill, left }: DrawnText): void {
  document.fontSize(size).fillColor(fill);
  const widths = runs.map(({ text, font }) => document.font(font).widthOfString(text));
  let at = x - left * widths.reduce((sum, width) => sum + width, 0);
  for (const [i, { text, font }] of runs.entries()) {
    document.font(font).text(text, at, y, { lineBreak: false, baseline: "alphabetic" });
    at += widths[i] ?? 0;
  }
}

/** As SVG has it where nothing is said (SVG 1.1, 11.4); PDF has 10. */
const MITER_LIMIT = 4;

/** Inks a drawing in its own units, which are points. */
export function inkDrawing(document: PDFKit.PDFDocument, drawing: Drawing): void {
  const { width, height, parts } = drawnOf(drawing);
  document.save().translate(drawing.x_pt, drawing.y_pt).rect(0, 0, width, height).clip();
  document.miterLimit(MITER_LIMIT);
  for (const part of parts)
    if ("path" in part) inkPath(document, part);
    else inkText(document, part);
  document.restore();
}
