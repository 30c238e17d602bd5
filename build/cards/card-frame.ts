import { A6, CARD_MARGIN_PT } from "./paper.ts";

/** The part of a card that may be inked, points. */
export const LEFT = CARD_MARGIN_PT;
export const TOP = CARD_MARGIN_PT;
export const WIDTH = A6.width_pt - 2 * CARD_MARGIN_PT;
export const BOTTOM = A6.height_pt - CARD_MARGIN_PT;
