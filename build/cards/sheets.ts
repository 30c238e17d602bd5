import type { GuideFrame } from "../guide/guide-frame.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { openDocument } from "./document.ts";
import { drawDecoration, drawFace } from "./draw-face.ts";
import type { Face, Piece } from "./face.ts";
import type { Fonts } from "./fonts.ts";
import { backPlacement, CARDS_PER_SHEET, cropMarks, frontPlacement } from "./imposition.ts";
import { mm, SHEET_NAMES, SHEET_SIZES, type SheetName } from "./paper.ts";
import { BAR_MM, printerLine, sizeBar } from "./printer-words.ts";
import { SMALL, STRONG } from "./type-styles.ts";

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
