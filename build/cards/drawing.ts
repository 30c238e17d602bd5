import type { Column } from "./column.ts";

/** The width and height that a drawing says of itself. */
function drawnSize_pt(svg: string): [width_pt: number, height_pt: number] {
  const size = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  return [Number(size?.[1]), Number(size?.[2])];
}

/** Places a drawing in its own size, its lettering full size, and moves below it. */
export function addDrawing(column: Column, svg: string, alt: string, indent_pt = 0): void {
  const [width_pt, height_pt] = drawnSize_pt(svg);
  const { left_pt, y_pt } = column;
  column.parts.push({
    role: "Figure",
    alt,
    parts: [],
    pieces: [{ kind: "svg", svg, x_pt: left_pt + indent_pt, y_pt, width_pt, height_pt }],
  });
  column.y_pt += height_pt;
}
