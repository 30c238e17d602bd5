import { roughWidth } from "./lettering.ts";
import type { Spot } from "./map-frame.ts";

/** An upright box of a drawing. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const boxAbout = ({ x, y }: Spot, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

/** The box a word stands in when its middle is here. */
export const wordBox = (text: string, at: Spot, size: number): Box =>
  boxAbout(at, roughWidth(text, size) + size * 0.5, size * 1.05);

/** How far below the middle of a word its letters stand, as a share of its size. */
export const MIDDLE_TO_BASE = 0.28;

export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const isWithin = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.bottom <= outer.bottom;

export const holds = ({ left, right, top, bottom }: Box, { x, y }: Spot): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** Words in lines no wider than `width`; a longer word has a line of its own. */
export function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && roughWidth(`${last} ${word}`, size) <= width)
      lines.splice(-1, 1, `${last} ${word}`);
    else lines.push(word);
  }
  return lines;
}
