import type { Column } from "./column.ts";

/** The height that a drawing says of itself. */
const drawnHeight_pt = (svg: string): number => Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)?.[1]);

/** Places a drawing in its own size, its lettering full size, and moves below it. */
export function addDrawing(column: Column, svg: string, alt: string, indent_pt = 0): void {
  const { left_pt, y_pt } = column;
  column.parts.push({
    role: "Figure",
    alt,
    parts: [],
    pieces: [{ kind: "svg", svg, x_pt: left_pt + indent_pt, y_pt }],
  });
  column.y_pt += drawnHeight_pt(svg);
}
