import { SaxesParser } from "saxes";
import { SVGPathData } from "svg-pathdata";
import type { Piece, TypeStyle } from "../layout/page.ts";

/** How a line or a ground of a drawing is inked. */
interface DrawnPath {
  /** SVG path data. */
  readonly path: string;
  /** A colour; undefined for no ground. */
  readonly fill: string | undefined;
  readonly isEvenOdd: boolean;
  readonly stroke: string | undefined;
  readonly width: number;
  readonly cap: "butt" | "round";
  readonly dashes: readonly number[];
}

/** Words in a drawing. */
interface DrawnText {
  readonly runs: readonly { readonly text: string; readonly font: TypeStyle["font"] }[];
  readonly x: number;
  /** Of the baseline. */
  readonly y: number;
  readonly size: number;
  readonly fill: string;
  /** Share of its width that stands left of `x`. */
  readonly left: 0 | 0.5 | 1;
}

type Attributes = Readonly<Record<string, string>>;

/** What is said of an element counts for those in it, unless they say it themselves (SVG 1.1, 6.14). */
const INHERITED = new Set([
  "fill",
  "fill-rule",
  "stroke",
  "stroke-width",
  "stroke-linecap",
  "stroke-dasharray",
  "font-size",
  "font-weight",
  "text-anchor",
]);

const OWN: Readonly<Record<string, readonly string[]>> = {
  svg: ["xmlns", "role", "aria-hidden", "width", "height", "viewBox"],
  g: [],
  title: [],
  path: ["d"],
  circle: ["cx", "cy", "r"],
  text: ["x", "y"],
  tspan: [],
};

/** Classes and data are for pages. */
const isKnown = (name: string, attribute: string): boolean =>
  INHERITED.has(attribute) || /^(class$|data-)/.test(attribute) || OWN[name]?.includes(attribute) === true;

const colour = (value: string): string | undefined => (value === "none" ? undefined : value);

const LEFT: Readonly<Record<string, DrawnText["left"]>> = { start: 0, middle: 0.5, end: 1 };

const number = (value: string | undefined): number => {
  const read = Number(value);
  if (value === undefined || !Number.isFinite(read)) throw new Error(`A drawing has “${value}” for a number`);
  return read;
};

/** The same path without quadratic curves: PDF knows cubic ones only, and pdfkit bends the others otherwise than SVG. */
const cubic = (path: string): string =>
  /[qt]/i.test(path) ? new SVGPathData(path).toAbs().qtToC().encode() : path;

/** A circle as four quarters of it. */
function circlePath({ cx, cy, r }: Attributes): string {
  const [x, y, radius] = [number(cx), number(cy), number(r)];
  const half = (to: number): string => `A${radius} ${radius} 0 0 1 ${to} ${y}`;
  return `M${x - radius} ${y}${half(x + radius)}${half(x - radius)}Z`;
}

/** What is not said is as SVG 1.1 has it in the beginning. */
const drawnPath = (
  path: string,
  {
    fill = "#000000",
    stroke = "none",
    "fill-rule": rule,
    "stroke-width": width = "1",
    "stroke-linecap": cap,
    "stroke-dasharray": dashes = "",
  }: Attributes,
): DrawnPath => ({
  path,
  fill: colour(fill),
  isEvenOdd: rule === "evenodd",
  stroke: colour(stroke),
  width: number(width),
  cap: cap === "round" ? "round" : "butt",
  dashes: dashes.split(/[\s,]+/).flatMap((dash) => (dash === "" ? [] : number(dash))),
});

const drawnText = (
  runs: DrawnText["runs"],
  { x, y, "font-size": size, fill = "#000000", "text-anchor": anchor = "start" }: Attributes,
): DrawnText => ({ runs, x: number(x), y: number(y), size: number(size), fill, left: LEFT[anchor] ?? 0 });

/** A drawing is written as HTML has it, where an attribute without a value is an empty one; else it is XML. */
const EMPTY_ATTRIBUTE = "attribute without value.";

/** A drawing as it is inked. */
interface Drawn {
  /** What lies outside is not seen, as on a page. */
  readonly width: number;
  readonly height: number;
  /** The first lowest. */
  readonly parts: readonly (DrawnPath | DrawnText)[];
}

/**
 * Reads a drawing of this program: paths, circles and lines of text in groups.
 * @throws for anything else that an SVG may hold: it would be missing on the card
 */
export function readDrawing(svg: string): Drawn {
  let [width, height] = [0, 0];
  const parts: (DrawnPath | DrawnText)[] = [];
  const open: { readonly name: string; readonly style: Attributes }[] = [];
  let runs: { text: string; font: TypeStyle["font"] }[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    if (!error.message.endsWith(EMPTY_ATTRIBUTE)) throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const unknown = Object.keys(attributes).find((attribute) => !isKnown(name, attribute));
    if (OWN[name] === undefined || unknown !== undefined)
      throw new Error(`A drawing has a <${name} ${unknown ?? ""}>, which no card can show`);
    const inherited = Object.entries(open.at(-1)?.style ?? {}).filter(([attribute]) =>
      INHERITED.has(attribute),
    );
    const style = { ...Object.fromEntries(inherited), ...attributes };
    open.push({ name, style });
    const { d: path = "", viewBox } = attributes;
    if (name === "svg") [, , width = 0, height = 0] = (viewBox ?? "").split(" ").map(number);
    if (name === "path") parts.push(drawnPath(cubic(path), style));
    if (name === "circle") parts.push(drawnPath(circlePath(style), style));
    if (name === "text") runs = [];
  });
  parser.on("text", (text) => {
    const { name, style } = open.at(-1) ?? {};
    if (name === "text" || name === "tspan")
      runs.push({ text, font: style?.["font-weight"] === "bold" ? "bold" : "regular" });
  });
  parser.on("closetag", ({ name }) => {
    const style = open.pop()?.style;
    if (name === "text" && style !== undefined) parts.push(drawnText(runs, style));
  });
  parser.write(svg).close();
  return { width, height, parts };
}

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
