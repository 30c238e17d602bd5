import type { GuideFrame } from "../../guide/guide-frame.ts";
import { dayMonthYear } from "../../model/calendar.ts";
import {
  A6,
  type Face,
  mm,
  type Piece,
  SHEET_NAMES,
  SHEET_SIZES,
  type SheetName,
  SMALL,
  STRONG,
} from "../layout/page.ts";
import { drawDecoration, drawFace } from "./card-pdf.ts";
import { type Fonts, openDocument } from "./document.ts";

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

/** Turns a card's points into a sheet's: x' = a x + c y + e, y' = b x + d y + f. */
export type Placement = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/**
 * Two cards a sheet. Four would fill A4 to its edges, where office printers cannot print and no crop mark fits; two
 * leave both and suit US letter as well. Cards lie on their sides, one over the other.
 */
export const CARDS_PER_SHEET = 2;

const MARK_PT = mm(5);
const MARK_GAP_PT = mm(2);

function block(sheet: SheetName) {
  const { width_pt, height_pt } = SHEET_SIZES[sheet];
  return {
    left: (width_pt - A6.height_pt) / 2,
    right: (width_pt + A6.height_pt) / 2,
    top: (height_pt - CARDS_PER_SHEET * A6.width_pt) / 2,
    bottom: (height_pt + CARDS_PER_SHEET * A6.width_pt) / 2,
  };
}

/** Where the front of the `slot`-th card lies, from 0 at the top: on its side, its head to the left. */
export function frontPlacement(sheet: SheetName, slot: number): Placement {
  const { left, top } = block(sheet);
  return [0, -1, 1, 0, left, top + (slot + 1) * A6.width_pt];
}

/**
 * Where its back lies: behind the front when the sheet is flipped on its long edge, and head to the right, so that
 * the cut card turns over like a leaf of a book.
 */
export function backPlacement(sheet: SheetName, slot: number): Placement {
  const { right, top } = block(sheet);
  return [0, 1, -1, 0, right, top + slot * A6.width_pt];
}

/** Marks outside the cards' corners; the knife follows them. */
function cropMarks(sheet: SheetName): Piece {
  const { left, right, top, bottom } = block(sheet);
  const levels = Array.from({ length: CARDS_PER_SHEET + 1 }, (_, i) => top + i * A6.width_pt);
  const across = levels.flatMap((y) => [
    `M${left - MARK_GAP_PT} ${y}h${-MARK_PT}`,
    `M${right + MARK_GAP_PT} ${y}h${MARK_PT}`,
  ]);
  const down = [left, right].flatMap((x) => [
    `M${x} ${top - MARK_GAP_PT}v${-MARK_PT}`,
    `M${x} ${bottom + MARK_GAP_PT}v${MARK_PT}`,
  ]);
  return { kind: "shape", path: [...across, ...down].join(""), stroke_pt: 0.4 };
}

/** Both sides of one card. */
export interface CardFaces {
  readonly name: string;
  readonly front: Face;
  readonly back: Face;
}

const SIDE_MARGIN_PT = mm(15);

/** What the person at the printer must know, and a bar to check the size by; outside the cards. */
function printerWords(sheet: SheetName, what: string): Piece[] {
  const { height_pt } = SHEET_SIZES[sheet];
  const line = (words: string, y_pt: number, style = SMALL): Piece =>
    printerLine(words, SIDE_MARGIN_PT, y_pt, style);
  return [
    line(what, mm(14), STRONG),
    line("Print on both sides, flip on the long edge, at 100 %. Cut at the marks.", height_pt - mm(20)),
    line(`This bar is ${BAR_MM} mm long when the size is right.`, height_pt - mm(15)),
    sizeBar(SIDE_MARGIN_PT + mm(BAR_MM), height_pt - mm(12)),
  ];
}

/** Cards for sheets. */
interface Sheeted {
  /** What the cards are, for title and heading. */
  readonly what: string;
  /** Placed when their turn comes and forgotten when they are inked. */
  readonly cards: Iterable<CardFaces>;
  readonly count: number;
}

/** Sheets of one size that are being filled. */
interface OpenSheets {
  /** Inks both sides of one sheet. */
  add(onSheet: readonly CardFaces[]): void;
  close(): Promise<Buffer>;
}

function openSheets(
  guide: GuideFrame,
  { what, count }: Pick<Sheeted, "what" | "count">,
  sheet: SheetName,
  fonts: Fonts,
): OpenSheets {
  const { name, width_pt, height_pt } = SHEET_SIZES[sheet];
  const sheets = Math.ceil(count / CARDS_PER_SHEET);
  const asOf = dayMonthYear(guide.asOf);
  const title = `${guide.club.name}: ${what} as of ${asOf}, ${name} sheets`;
  const { document, root, close } = openDocument({ title, author: guide.club.name, asOf: guide.asOf }, fonts);
  let filled = 0;
  return {
    add(onSheet) {
      filled++;
      for (const side of ["front", "back"] as const) {
        const which = `${what} as of ${asOf}: sheet ${filled} of ${sheets}, ${side}`;
        document.addPage({ size: [width_pt, height_pt], margin: 0 });
        document.outline.addItem(`${which}: ${[...new Set(onSheet.map((card) => card.name))].join(", ")}`);
        drawDecoration(document, [cropMarks(sheet), ...printerWords(sheet, which)]);
        for (const [slot, card] of onSheet.entries()) {
          const place = side === "front" ? frontPlacement : backPlacement;
          document.save();
          document.transform(...place(sheet, slot));
          drawFace(document, root, card[side]);
          document.restore();
        }
      }
    },
    close,
  };
}

/**
 * Cards on sheets to print on both sides: fronts on odd pages, their backs on the pages after.
 * @returns a document for each size of sheet, in the order of SHEET_NAMES
 */
export function sheetsPdfs(guide: GuideFrame, sheeted: Sheeted, fonts: Fonts): Promise<Buffer[]> {
  const all = SHEET_NAMES.map((sheet) => openSheets(guide, sheeted, sheet, fonts));
  let onSheet: CardFaces[] = [];
  const fill = (): void => {
    for (const sheets of all) sheets.add(onSheet);
    onSheet = [];
  };
  for (const card of sheeted.cards) {
    onSheet.push(card);
    if (onSheet.length === CARDS_PER_SHEET) fill();
  }
  if (onSheet.length > 0) fill();
  return Promise.all(all.map((sheets) => sheets.close()));
}
