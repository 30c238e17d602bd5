import type { TypeStyle } from "./type-styles.ts";

/** One thing to be inked, in points from a face's top left corner. */
export type Piece =
  | {
      readonly kind: "text";
      readonly text: string;
      readonly x_pt: number;
      /** Of the baseline. */
      readonly y_pt: number;
      readonly style: TypeStyle;
      /** White, for words on black. */
      readonly reversed: boolean;
    }
  /** SVG path data, filled or stroked in black. */
  | { readonly kind: "shape"; readonly path: string; readonly stroke_pt?: number }
  | {
      readonly kind: "svg";
      readonly svg: string;
      readonly x_pt: number;
      readonly y_pt: number;
    };

/** A part of a face with its meaning, for readers that cannot see the page; in reading order. */
export interface Part {
  /** A structure type of ISO 32000-1, 14.8.4. */
  readonly role: "H1" | "H2" | "P" | "Figure" | "Table" | "TR" | "TH" | "TD" | "L" | "LI" | "LBody";
  /** What a figure shows. */
  readonly alt?: string;
  readonly pieces: readonly Piece[];
  readonly parts: readonly Part[];
}

/** One side of a card, everything placed. */
export interface Face {
  /** For the bookmark. */
  readonly title: string;
  readonly parts: readonly Part[];
  /** Rules, boxes and bullets, which mean nothing read aloud. */
  readonly decoration: readonly Piece[];
}

/** A text that cannot be set as it is written. */
export interface Misfit {
  /** Which of the club's fields to change. */
  readonly field: string;
  readonly message: string;
  readonly hint: string;
}

export interface FaceLayout {
  readonly face: Face;
  readonly misfits: readonly Misfit[];
}
