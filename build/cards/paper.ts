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
} as const satisfies Record<string, PaperSize>;
export type SheetName = keyof typeof SHEET_SIZES;
export const SHEET_NAMES = Object.keys(SHEET_SIZES) as SheetName[];

/** Nothing stands nearer to a card's edge: the safe margin of 3 mm, and a millimetre for a crooked cut. */
export const CARD_MARGIN_PT = mm(4);
