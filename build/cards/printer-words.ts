import type { Piece } from "./face.ts";
import { mm } from "./paper.ts";
import { SMALL } from "./type-styles.ts";

/** The bar on every sheet to check the size by. */
export const BAR_MM = 50;

/** A line for the person at the printer, outside what is cut out. */
export const printerLine = (text: string, x_pt: number, y_pt: number, style = SMALL): Piece => ({
  kind: "text",
  text,
  x_pt,
  y_pt,
  style,
  reversed: false,
});

/** The bar, ending at `right_pt`. */
export const sizeBar = (right_pt: number, y_pt: number): Piece => ({
  kind: "shape",
  path: `M${right_pt - mm(BAR_MM)} ${y_pt - 3}v6M${right_pt - mm(BAR_MM)} ${y_pt}h${mm(BAR_MM)}m0 -3v6`,
  stroke_pt: 0.8,
});
