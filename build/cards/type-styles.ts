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
