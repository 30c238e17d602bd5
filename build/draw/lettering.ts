const NARROW = /[iljftrI1.,:;'’|()\- ]/;
const WIDE = /[mwMWGOQ%]/;

/** Width of a line of text as a share of its type size, letter by letter, on the generous side of a plain sans. */
const width_em = (text: string): number =>
  [...text].reduce((sum, c) => sum + (NARROW.test(c) ? 0.36 : WIDE.test(c) ? 0.86 : 0.58), 0);

/** About how wide a text will stand, in the units of `size`; drawings cannot measure a typeface they do not know. */
export const roughWidth = (text: string, size: number): number => width_em(text) * size;

/** Distance of lines of lettering as a multiple of its size. */
export const LEADING = 1.25;
