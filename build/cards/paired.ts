import type { Face } from "./face.ts";
import type { CardFaces } from "./sheets.ts";

/** The back of a card whose sides are an odd number. */
const blank = (name: string): Face => ({ title: `${name}, blank back`, parts: [], decoration: [] });

/** Sides that follow one another as cards to print on both sides: each second one stands on the back of the one before. */
export const paired = (name: string, faces: readonly Face[]): CardFaces[] =>
  faces.flatMap((front, i) => (i % 2 === 0 ? [{ name, front, back: faces[i + 1] ?? blank(name) }] : []));
