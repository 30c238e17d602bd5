import { type Column, columnOverflow, createColumn, ROUNDING_PT, type Ruler } from "../layout/column.ts";
import type { CardFrame, Face, Overflow } from "../layout/page.ts";
import type { CardFaces } from "../pdf/sheets.ts";

/**
 * Something that stands on one side of a card whole: it sets itself at the column's height and moves below. It is told
 * whether it stands first on its side.
 */
export type Block = (column: Column, isFirst: boolean) => void;

interface SidesOptions {
  readonly frame: CardFrame;
  readonly ruler: Ruler;
  /** Stands at the head of every side. */
  readonly head: (column: Column, side: number) => void;
  /** What a side's bookmark says. */
  readonly title: (side: number) => string;
  /** The field to blame for a block that is longer than a side. */
  readonly field: string;
  /** Free height between blocks. */
  readonly gap_pt: number;
}

function heightOf(block: Block, { frame, ruler }: SidesOptions): number {
  const column = createColumn(ruler, 0, frame.width_pt, 0);
  block(column, false);
  return column.y_pt;
}

/** What stands on every side is found wrong on every side, and said once. */
const distinct = (misfits: readonly Overflow[]): Overflow[] =>
  misfits.filter(({ message }, i) => misfits.findIndex((other) => other.message === message) === i);

/**
 * Sets blocks on as many sides as they need, in their order. Each chapter begins a new side.
 * @returns the sides, and what is too long even for a side of its own
 */
export function layoutSides(
  chapters: readonly (readonly Block[])[],
  options: SidesOptions,
): { readonly faces: Face[]; readonly misfits: Overflow[] } {
  const { frame, ruler, head, title, field, gap_pt } = options;
  const faces: Face[] = [];
  const misfits: Overflow[] = [];
  const begin = (): Column => {
    const column = createColumn(ruler, frame.left_pt, frame.width_pt, frame.top_pt);
    head(column, faces.length + 1);
    return column;
  };
  const end = (column: Column): void => {
    misfits.push(...column.misfits, ...columnOverflow(column, frame.bottom_pt, { [field]: 0 }));
    faces.push({ title: title(faces.length + 1), parts: column.parts, decoration: column.decoration });
  };
  for (const blocks of chapters.filter((chapter) => chapter.length > 0)) {
    let column = begin();
    let isBare = true;
    for (const block of blocks) {
      const room_pt = frame.bottom_pt - column.y_pt + ROUNDING_PT;
      if (!isBare && heightOf(block, options) > room_pt) {
        end(column);
        column = begin();
        isBare = true;
      }
      block(column, isBare);
      column.y_pt += gap_pt;
      isBare = false;
    }
    column.y_pt -= gap_pt;
    end(column);
  }
  return { faces, misfits: distinct(misfits) };
}

/** The back of a card whose sides are an odd number. */
const blank = (name: string): Face => ({ title: `${name}, blank back`, parts: [], decoration: [] });

/** Sides that follow one another as cards to print on both sides: each second one stands on the back of the one before. */
export const pairSides = (name: string, faces: readonly Face[]): CardFaces[] =>
  faces.flatMap((front, i) => (i % 2 === 0 ? [{ name, front, back: faces[i + 1] ?? blank(name) }] : []));
