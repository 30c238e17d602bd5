/**
 * Trimmed sizes of ISO 216 paper, mm: the A series halves with the fraction dropped, so A6 is 105 by 148.
 * Debian's libpaper (`paperconf -s`) gives the same in points.
 */
export const ISO_216_MM = { A6: [105, 148], A4: [210, 297] } as const;

/** Points of the neighbours A5 (148 x 210 mm) and A7 (74 x 105 mm) by libpaper: A6 takes one side from each. */
export const LIBPAPER_PT = { A5: [419.528, 595.276], A7: [209.764, 297.638], A4: [595.276, 841.89] } as const;

/** US letter, ANSI/ASME Y14.1: 8.5 by 11 in; libpaper agrees. */
export const US_LETTER_PT = [612, 792] as const;

/** A PostScript and PDF point is 1/72 in, in mm. */
export const POINT_MM = 0.352778;

/** Least x-heights on a card, mm, and least line spacing as a multiple of the type size: Degani, NASA CR 177605 (1992). */
export const LEGIBLE = { glance_mm: 2.5, any_mm: 1.5, leading: 1.25 } as const;

/** Light modules around a QR symbol: ISO/IEC 18004, from memory. */
export const QR_QUIET_MODULES = 4;
/** Sides of QR symbols in modules are 17 + 4 version, versions 1 to 40: ISO/IEC 18004. */
export const qrSide = (version: number): number => 17 + 4 * version;

/** A US index card is 5 by 3 in, and an inch 72 points by definition. */
export const INDEX_CARD_PT = [5 * 72, 3 * 72] as const;
