import type { Drawing } from "../../draw/drawing.ts";
import { PAPERS, type Paper } from "../../model/addresses.ts";

/** A point is 1/72 inch, an inch 25.4 mm, both by definition. */
const PT_PER_MM = 72 / 25.4;

export const mm = (length_mm: number): number => length_mm * PT_PER_MM;
export const inMm = (length_pt: number): number => length_pt / PT_PER_MM;

export interface PaperSize {
  readonly name: string;
  readonly width_pt: number;
  readonly height_pt: number;
}

/** A card: ISO 216 A6, 105 by 148 mm. */
export const A6: PaperSize = { name: "A6", width_pt: mm(105), height_pt: mm(148) };

/** A card: the US index card, 5 by 3 in. */
export const INDEX_CARD: PaperSize = { name: "5 × 3 in", width_pt: 360, height_pt: 216 };

/** A label for a leader board: as wide as a common board of foam, as high as four lines and a line to write on. */
export const LABEL: PaperSize = { name: "Label", width_pt: mm(90), height_pt: mm(30) };

/** Sheets that cards are printed on: ISO 216 A4, and US letter by ANSI/ASME Y14.1 (8.5 by 11 in). */
export const SHEET_SIZES = {
  a4: { name: "A4", width_pt: mm(210), height_pt: mm(297) },
  letter: { name: "US letter", width_pt: 612, height_pt: 792 },
} as const satisfies Record<Paper, PaperSize>;
export type SheetName = Paper;
export const SHEET_NAMES = PAPERS;

/** Nothing stands nearer to a card's edge: the safe margin of 3 mm, and a millimetre for a crooked cut. */
export const CARD_MARGIN_PT = mm(4);

/** The part of a card that may be inked, points. */
export interface CardFrame {
  readonly left_pt: number;
  readonly top_pt: number;
  readonly width_pt: number;
  readonly bottom_pt: number;
}

/** What a margin leaves of a card. */
export const frameOf = ({ width_pt, height_pt }: PaperSize, margin_pt: number): CardFrame => ({
  left_pt: margin_pt,
  top_pt: margin_pt,
  width_pt: width_pt - 2 * margin_pt,
  bottom_pt: height_pt - margin_pt,
});

/** The frame of a lake's card. */
const LAKE_CARD = frameOf(A6, CARD_MARGIN_PT);
export const LEFT = LAKE_CARD.left_pt;
export const TOP = LAKE_CARD.top_pt;
export const WIDTH = LAKE_CARD.width_pt;
export const BOTTOM = LAKE_CARD.bottom_pt;

/**
 * The type on a card. Reading distance and wet hands set the sizes: x-height at least 2.5 mm for what is read at a
 * glance, 1.5 mm for everything else, line spacing a quarter above the type size (Degani, On the Typography of
 * Flight-Deck Documentation, NASA CR 177605, 1992).
 */
export interface TypeStyle {
  readonly font: FontName;
  readonly size_pt: number;
}

export const FONT_NAMES = ["regular", "bold"] as const;
export type FontName = (typeof FONT_NAMES)[number];

const LEADING = 1.25;
/** From one baseline to the next, points. */
export const leading_pt = ({ size_pt }: TypeStyle): number => size_pt * LEADING;
/** From the top of a line to its baseline, points: the line's spare room is shared between above and below. */
export const ascent_pt = ({ size_pt }: TypeStyle): number => size_pt * 0.95;

export const SMALL: TypeStyle = { font: "regular", size_pt: 8.8 };
export const STRONG: TypeStyle = { font: "bold", size_pt: 8.8 };
/** Read at a glance: a card's title too. */
export const GLANCE: TypeStyle = { font: "bold", size_pt: 14.4 };
/** The depth to set now. */
export const DEPTH: TypeStyle = { font: "bold", size_pt: 19 };
/** The two things a card is taken out for. */
export const NUMBER: TypeStyle = { font: "bold", size_pt: 22 };

/** One thing to be inked, in points from a face's top left corner. */
export type Piece =
  | {
      readonly kind: "text";
      readonly text: string;
      readonly x_pt: number;
      /** Of the baseline. */
      readonly y_pt: number;
      readonly style: TypeStyle;
      /** White, for words on black. */
      readonly reversed: boolean;
    }
  /** SVG path data, filled or stroked in black. */
  | { readonly kind: "shape"; readonly path: string; readonly stroke_pt?: number }
  | {
      readonly kind: "drawing";
      readonly drawing: Drawing;
      readonly x_pt: number;
      readonly y_pt: number;
    };

/** A part of a face with its meaning, for readers that cannot see the page; in reading order. */
export interface Part {
  /** A structure type of ISO 32000-1, 14.8.4. */
  readonly role: "H1" | "H2" | "P" | "Figure" | "Table" | "TR" | "TH" | "TD" | "L" | "LI" | "LBody";
  /** What a figure shows. */
  readonly alt?: string;
  readonly pieces: readonly Piece[];
  readonly parts: readonly Part[];
}

/** One side of a card, everything placed. */
export interface Face {
  /** For the bookmark. */
  readonly title: string;
  readonly parts: readonly Part[];
  /** Rules, boxes and bullets, which mean nothing read aloud. */
  readonly decoration: readonly Piece[];
}

/** A text that cannot be set as it is written. */
export interface Overflow {
  /** Which of the club's fields to change. */
  readonly field: string;
  readonly message: string;
  readonly hint: string;
}

export interface FaceLayout {
  readonly face: Face;
  readonly misfits: readonly Overflow[];
}
