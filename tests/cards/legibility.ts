import type { Face, Part, Piece } from "../../build/cards/layout/page.ts";
import { ISO_216_MM, LEGIBLE, POINT_MM } from "../reference/paper.ts";
import { ruler } from "./card-fixture.ts";

type Text = Extract<Piece, { kind: "text" }>;

export const piecesOf = (part: Part): Piece[] => [...part.pieces, ...part.parts.flatMap(piecesOf)];
export const textsOf = (face: Face): Text[] =>
  face.parts.flatMap(piecesOf).filter((piece): piece is Text => piece.kind === "text");
export const written = (face: Face): string =>
  textsOf(face)
    .map(({ text }) => text)
    .join(" ")
    .replace(/\s+/g, " ");
export const xHeight_mm = ({ style }: Text): number => ruler.xHeight_pt(style) * POINT_MM;

/** What a face gets wrong: lettering too small, too near the edge, or in the way of other lettering. */
export function faults(face: Face, [width, height]: readonly [number, number] = ISO_216_MM.A6): string[] {
  const boxes = textsOf(face).map((piece) => {
    const { text, x_pt, y_pt, style } = piece;
    const right_pt = x_pt + ruler.width_pt(text.trimEnd(), style);
    const [left, right, top, bottom] = [
      x_pt,
      right_pt,
      y_pt - style.size_pt * 0.8,
      y_pt + style.size_pt * 0.25,
    ].map((at_pt) => at_pt * POINT_MM) as [number, number, number, number];
    return { piece, left, right, top, bottom };
  });
  const small = boxes.filter(({ piece }) => xHeight_mm(piece) < LEGIBLE.any_mm);
  const outside = boxes.filter(
    ({ left, right, top, bottom }) => left < 3 || right > width - 3 || top < 3 || bottom > height - 3,
  );
  const close = boxes.filter((a, i) =>
    boxes.slice(i + 1).some((b) => {
      const sideBySide = a.right <= b.left + 0.01 || b.right <= a.left + 0.01;
      const apart_pt = Math.abs(a.piece.y_pt - b.piece.y_pt);
      const least_pt = LEGIBLE.leading * Math.min(a.piece.style.size_pt, b.piece.style.size_pt);
      return !sideBySide && apart_pt < least_pt - 0.01;
    }),
  );
  const say = (fault: string) => (box: (typeof boxes)[number]) => `${fault}: ${box.piece.text}`;
  return [...small.map(say("small")), ...outside.map(say("outside")), ...close.map(say("too close"))];
}
