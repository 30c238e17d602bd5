import { estimateTextWidth } from "../../build/draw/geometry.ts";

/** Where a line of lettering stands in a drawing. */
export interface LetteringBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const numberOf = (attributes: string, name: string): number =>
  Number(new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1] ?? Number.NaN);

/** Capitals and descenders of a plain sans, as shares of its size. */
const [ABOVE, BELOW] = [0.72, 0.22];

/** The box of each line of lettering; the anchor is that of the text or of the group around it. */
export function letteringBoxes(svg: string): LetteringBox[] {
  const size = numberOf(/^<svg([^>]*)>/.exec(svg)?.[1] ?? "", "font-size");
  const boxes: LetteringBox[] = [];
  const anchors: (string | undefined)[] = [];
  const tags = /<(g|text|\/g)(\s[^>]*)?>(?:([^<]*(?:<tspan[^>]*>[^<]*<\/tspan>)?)<\/text>)?/g;
  for (const [, tag, attributes = "", content = ""] of svg.matchAll(tags)) {
    const own = /text-anchor="(\w+)"/.exec(attributes)?.[1];
    if (tag === "g") anchors.push(own ?? anchors.at(-1));
    if (tag === "/g") anchors.pop();
    if (tag !== "text") continue;
    const text = content.replace(/<[^>]*>/g, "");
    const width = estimateTextWidth(text, size);
    const [x, y] = [numberOf(attributes, "x"), numberOf(attributes, "y")];
    const anchor = own ?? anchors.at(-1);
    const left = anchor === "middle" ? x - width / 2 : anchor === "end" ? x - width : x;
    boxes.push({ text, left, right: left + width, top: y - ABOVE * size, bottom: y + BELOW * size });
  }
  return boxes;
}

/** Every two lines that run into one another, and every line that leaves the drawing. */
export function letteringFaults(svg: string): string[] {
  const boxes = letteringBoxes(svg);
  const head = /^<svg([^>]*)>/.exec(svg)?.[1] ?? "";
  const [width, height] = [numberOf(head, "width"), numberOf(head, "height")];
  return boxes.flatMap((a, i) => [
    ...boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `"${a.text}" over "${b.text}"`),
    ...(a.left >= 0 && a.right <= width && a.top >= 0 && a.bottom <= height ? [] : [`"${a.text}" outside`]),
  ]);
}
