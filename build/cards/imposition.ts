import type { Piece } from "./face.ts";
import { A6, mm, SHEET_SIZES, type SheetName } from "./paper.ts";

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
export function cropMarks(sheet: SheetName): Piece {
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
