/** Metres rounded to the millimetre, the finest length any table holds. */
export const toMillimetre = (length_m: number): number => Math.round(length_m * 1000) / 1000;
