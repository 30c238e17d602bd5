import type { Drawing, DrawingNode, Presentation } from "../../build/draw/drawing.ts";
import { estimateTextWidth } from "../../build/draw/geometry.ts";

/** Where a line of lettering stands in a drawing. */
export interface LetteringBox {
  readonly text: string;
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Capitals and descenders of a plain sans, as shares of its size. */
const [ABOVE, BELOW] = [0.72, 0.22];

type TextWidth = (text: string, size: number, isBold: boolean) => number;

function boxesIn(node: DrawingNode, inherited: Presentation, textWidth: TextWidth): LetteringBox[] {
  if (node.tag === "g") {
    const style = { ...inherited, ...node.attributes };
    return node.children.flatMap((child) => boxesIn(child, style, textWidth));
  }
  if (node.tag !== "text") return [];
  const { x, y, ...style } = { ...inherited, ...node.attributes };
  const size = style["font-size"] ?? Number.NaN;
  const text = node.runs.map((run) => run.text).join("");
  const width = node.runs.reduce(
    (sum, run) => sum + textWidth(run.text, size, run.isBold || style["font-weight"] === "bold"),
    0,
  );
  const anchor = style["text-anchor"];
  const left = anchor === "middle" ? x - width / 2 : anchor === "end" ? x - width : x;
  return [{ text, size, left, right: left + width, top: y - ABOVE * size, bottom: y + BELOW * size }];
}

/** The box of each line of lettering, in the order drawn. */
export const letteringBoxes = (
  { children, textSize }: Drawing,
  textWidth: TextWidth = estimateTextWidth,
): LetteringBox[] =>
  children.flatMap((node) =>
    boxesIn(node, textSize === undefined ? {} : { "font-size": textSize }, textWidth),
  );

/** Every line of lettering, in the order drawn. */
export const lettering = (drawing: Drawing): string[] => letteringBoxes(drawing).map(({ text }) => text);

/** Every two lines that run into one another, and every line that leaves the drawing. */
export function letteringFaults(drawing: Drawing): string[] {
  const boxes = letteringBoxes(drawing);
  const { width, height } = drawing;
  return boxes.flatMap((a, i) => [
    ...boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `"${a.text}" over "${b.text}"`),
    ...(a.left >= 0 && a.right <= width && a.top >= 0 && a.bottom <= height ? [] : [`"${a.text}" outside`]),
  ]);
}
