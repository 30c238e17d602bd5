import type { TippetSize } from "../../model/club.ts";

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

/** Clearer and cloudier than ordinary water, Secchi depth, m. From memory. */
const CLEAR_M = 4;
const CLOUDY_M = 1.5;
/** The usual range of lake tippets. From memory. */
const USUAL_SIZES = { thickest: 2, finest: 6 } as const;

/**
 * The tippet to start with: a third of the hook's number, one size finer in clear water and one thicker in cloudy.
 * Common practice, no source.
 * @param hook size number, 2 to 24
 * @param clarity_m Secchi depth; absent for ordinary water
 */
export function suggestedTippet(hook: number, clarity_m?: number): TippetSize {
  const byClarity = clarity_m === undefined ? 0 : Number(clarity_m > CLEAR_M) - Number(clarity_m < CLOUDY_M);
  return Math.min(USUAL_SIZES.finest, Math.max(USUAL_SIZES.thickest, Math.round(hook / 3) + byClarity));
}
