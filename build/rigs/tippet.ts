import type { TippetSize } from "../model/club.ts";

/** Trade convention, the "rule of 11": diameter in thousandths of an inch = 11 - X. */
const RULE_OF = 11;
const MM_PER_THOUSANDTH_INCH = 0.0254; // exact, by definition of the inch

const THICKEST: TippetSize = 0;
const FINEST: TippetSize = 8;
const STEP: TippetSize = 0.5;

/** Whole and half sizes from 0X to 8X. */
export const TIPPET_SIZES: readonly TippetSize[] = Array.from(
  { length: (FINEST - THICKEST) / STEP + 1 },
  (_, i) => THICKEST + i * STEP,
);

/** True for a size this program can work with: 0X to 8X in whole and half sizes. */
export const isTippetSize = (size: number): size is TippetSize => TIPPET_SIZES.includes(size);

/**
 * Nominal diameter of a tippet size, mm. Makers differ by 0.01 mm and more.
 * @param size 0 to 8, whole or half
 * @throws RangeError for any other size
 */
export function tippetDiameter_mm(size: TippetSize): number {
  if (!isTippetSize(size)) throw new RangeError(`no tippet size ${size}X: 0X to 8X, whole or half`);
  return Number(((RULE_OF - size) * MM_PER_THOUSANDTH_INCH).toFixed(5)); // exact: half a thousandth is 0.0127 mm
}

/** "4X", "4.5X". */
export const tippetSizeText = (size: TippetSize): string => `${size}X`;

/** The thickest step between two neighbours that still knots well, in X sizes: 0.002 in. Common practice, from memory. */
export const WIDEST_STEP: TippetSize = 2;

/** How many X sizes finer the second size is; negative when it is thicker. */
export const stepBetween = (upper: TippetSize, lower: TippetSize): number => lower - upper;

/** The fewest sizes, evenly spread, that bring every step between two neighbours down to {@link WIDEST_STEP}. */
export function bridgingSizes(upper: TippetSize, lower: TippetSize): TippetSize[] {
  const step = stepBetween(upper, lower);
  const pieces = Math.ceil(Math.abs(step) / WIDEST_STEP);
  return Array.from(
    { length: Math.max(0, pieces - 1) },
    (_, i) => Math.round((upper + (step * (i + 1)) / pieces) / STEP) * STEP,
  );
}
