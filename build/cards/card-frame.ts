import { A6, CARD_MARGIN_PT, type PaperSize } from "./paper.ts";

/** The part of a card that may be inked, points. */
export interface Frame {
  readonly left_pt: number;
  readonly top_pt: number;
  readonly width_pt: number;
  readonly bottom_pt: number;
}

/** What a margin leaves of a card. */
export const frameOf = ({ width_pt, height_pt }: PaperSize, margin_pt: number): Frame => ({
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
