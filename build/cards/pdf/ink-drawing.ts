import { SVGPathData } from "svg-pathdata";
import type { Drawing, DrawingNode, Presentation, TextNode } from "../../draw/drawing.ts";
import type { FontName } from "../layout/page.ts";

/** Initial values where SVG 1.1 differs from PDF: the fill (11.3) and the miter limit (11.4; PDF has 10). */
const INITIAL_FILL = "#000000";
const MITER_LIMIT = 4;

/** The path without quadratic curves: PDF has cubic ones only, and pdfkit's own conversion is not SVG's. */
const withoutQuadratics = (d: string): string =>
  /[qt]/i.test(d) ? new SVGPathData(d).toAbs().qtToC().encode() : d;

/** A circle as two half circles, clockwise from its left end (SVG 1.1, 9.3). */
function circlePath(cx: number, cy: number, r: number): string {
  const half = (to: number): string => `A${r} ${r} 0 0 1 ${to} ${cy}`;
  return `M${cx - r} ${cy}${half(cx + r)}${half(cx - r)}Z`;
}

const drawnColour = (colour: string): string | undefined => (colour === "none" ? undefined : colour);

function inkPath(document: PDFKit.PDFDocument, d: string, style: Presentation): void {
  const fill = drawnColour(style.fill ?? INITIAL_FILL);
  const stroke = drawnColour(style.stroke ?? "none");
  if (fill === undefined && stroke === undefined) return;
  const rule = style["fill-rule"] === "evenodd" ? "even-odd" : "non-zero";
  const dashes = stroke === undefined ? undefined : style["stroke-dasharray"];
  // pdfkit takes a list of lengths, which its types do not allow.
  if (dashes !== undefined) document.save().dash(dashes.split(" ").map(Number) as unknown as number, {});
  if (fill !== undefined) document.fillColor(fill);
  if (stroke !== undefined)
    document
      .strokeColor(stroke)
      .lineWidth(style["stroke-width"] ?? 1)
      .lineCap(style["stroke-linecap"] ?? "butt");
  document.path(d);
  if (stroke === undefined) document.fill(rule);
  else if (fill === undefined) document.stroke();
  else document.fillAndStroke(undefined, undefined, rule);
  if (dashes !== undefined) document.restore();
}

/** Share of a line's width that stands left of its anchor. */
const LEFT_OF_ANCHOR = { start: 0, middle: 0.5, end: 1 } as const;

function inkText(
  document: PDFKit.PDFDocument,
  { attributes: { x, y }, runs }: TextNode,
  style: Presentation,
): void {
  const size = style["font-size"];
  if (size === undefined) throw new Error("A drawing has text without a font size");
  document.fontSize(size).fillColor(style.fill ?? INITIAL_FILL);
  const measured = runs.map(({ text, isBold }) => {
    const font: FontName = isBold || style["font-weight"] === "bold" ? "bold" : "regular";
    return { text, font, width: document.font(font).widthOfString(text) };
  });
  const width = measured.reduce((sum, run) => sum + run.width, 0);
  let at = x - LEFT_OF_ANCHOR[style["text-anchor"] ?? "start"] * width;
  for (const run of measured) {
    document.font(run.font).text(run.text, at, y, { lineBreak: false, baseline: "alphabetic" });
    at += run.width;
  }
}

function inkNode(document: PDFKit.PDFDocument, node: DrawingNode, inherited: Presentation): void {
  switch (node.tag) {
    case "g": {
      const style = { ...inherited, ...node.attributes };
      for (const child of node.children) inkNode(document, child, style);
      break;
    }
    case "path": {
      const { d, transform, ...own } = node.attributes;
      if (transform !== undefined) document.save().translate(...transform.translate);
      inkPath(document, withoutQuadratics(d), { ...inherited, ...own });
      if (transform !== undefined) document.restore();
      break;
    }
    case "circle": {
      const { cx, cy, r, ...own } = node.attributes;
      inkPath(document, circlePath(cx, cy, r), { ...inherited, ...own });
      break;
    }
    case "text":
      inkText(document, node, { ...inherited, ...node.attributes });
      break;
    case "drawing":
      inkDrawing(document, node.drawing, node.x, node.y);
      break;
  }
}

/** Inks a drawing, one of its units to a point; what lies outside its edges is cut off. */
export function inkDrawing(
  document: PDFKit.PDFDocument,
  { width, height, textSize, children }: Drawing,
  x_pt: number,
  y_pt: number,
): void {
  document.save().translate(x_pt, y_pt).rect(0, 0, width, height).clip();
  document.miterLimit(MITER_LIMIT);
  for (const child of children)
    inkNode(document, child, textSize === undefined ? {} : { "font-size": textSize });
  document.restore();
}
