/** How wide a leader is drawn, in the drawing's units a millimetre: much wider than it is, but in proportion. */
const PER_MILLIMETRE = 5;
/** A tapered leader's butt, mm: 0.021 in. Common practice, from memory. */
const BUTT_MM = 0.53;

/** Drawn width of line of a diameter. */
export const drawnWidth = (diameter_mm: number): number => diameter_mm * PER_MILLIMETRE;

/** Drawn width of a tapered leader a share of the way from its end to its butt. */
export const taperWidth = (end_mm: number, share: number): number =>
  drawnWidth(end_mm + (Math.max(BUTT_MM, end_mm) - end_mm) * share);
