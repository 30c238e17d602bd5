/**
 * A drawing is a tree of plain data with the names and meanings of SVG 1.1, limited to what both back ends draw: `svg.ts`
 * writes it as markup for pages, `cards/pdf/ink-drawing.ts` inks it on cards.
 */
export interface Drawing {
  /** In CSS pixels on pages, in points on cards. What lies outside is not shown. */
  readonly width: number;
  readonly height: number;
  /** What the drawing says, in words; `null` for one that stands beside its own words. */
  readonly title: string | null;
  /** Font size of all text that sets no other. */
  readonly textSize?: number;
  /** On a page, fills whatever place it is given, out of proportion. */
  readonly stretch?: boolean;
  readonly children: readonly DrawingNode[];
}

/** Presentation attributes; a group's apply to everything in it that does not set its own. */
export interface Presentation {
  /** A CSS colour on pages, `#rrggbb` on cards, or `none`. */
  readonly fill?: string;
  readonly "fill-rule"?: "evenodd";
  readonly stroke?: string;
  readonly "stroke-width"?: number;
  readonly "stroke-linecap"?: "round";
  /** Lengths of dashes and gaps, separated by spaces. */
  readonly "stroke-dasharray"?: string;
  readonly "font-size"?: number;
  readonly "font-weight"?: "bold";
  readonly "text-anchor"?: "start" | "middle" | "end";
}

/** What styles, scripts and tests of pages find a part by. */
interface Hooks {
  readonly class?: string;
  readonly "data-x"?: number;
  readonly "data-day"?: string;
}

interface GroupNode {
  readonly tag: "g";
  readonly attributes: Presentation & Hooks;
  /** On a page, shown where a pointer rests on the group, and read aloud. */
  readonly title: string | null;
  readonly children: readonly DrawingNode[];
}

interface PathNode {
  readonly tag: "path";
  readonly attributes: Presentation &
    Hooks & {
      /** SVG path data. */
      readonly d: string;
      readonly transform?: Translation;
    };
}

interface CircleNode {
  readonly tag: "circle";
  readonly attributes: Presentation & { readonly cx: number; readonly cy: number; readonly r: number };
}

export interface TextNode {
  readonly tag: "text";
  /** `y` is the baseline's. */
  readonly attributes: Presentation & { readonly x: number; readonly y: number };
  /** Set one after the other; the text anchor applies to all of them together. */
  readonly runs: readonly TextRun[];
}

/** Part of a line of text; bold or as the text around it. */
interface TextRun {
  readonly text: string;
  readonly isBold: boolean;
}

/** Another drawing with its own width, height and text size, its upper left corner at a place of this one. */
interface PlacedDrawing {
  readonly tag: "drawing";
  readonly x: number;
  readonly y: number;
  readonly drawing: Drawing;
}

export type DrawingNode = GroupNode | PathNode | CircleNode | TextNode | PlacedDrawing;

/** Parts in the order in which they are drawn, the first lowest; `null` draws nothing. */
export type DrawingContent = DrawingNode | null | readonly DrawingContent[];

export interface Translation {
  readonly translate: readonly [x: number, y: number];
}

const flatten = (content: DrawingContent): DrawingNode[] =>
  content === null ? [] : "tag" in content ? [content] : content.flatMap(flatten);

export const createDrawing = (frame: Omit<Drawing, "children">, content: DrawingContent): Drawing => ({
  ...frame,
  children: flatten(content),
});

export const group = (
  attributes: GroupNode["attributes"],
  content: DrawingContent,
  title: string | null = null,
): GroupNode => ({ tag: "g", attributes, title, children: flatten(content) });

export const path = (attributes: PathNode["attributes"]): PathNode => ({ tag: "path", attributes });

export const circle = (attributes: CircleNode["attributes"]): CircleNode => ({ tag: "circle", attributes });

/** One line of text. */
export const text = (
  attributes: TextNode["attributes"],
  content: string | number | readonly TextRun[],
): TextNode => ({
  tag: "text",
  attributes,
  runs: typeof content === "object" ? content : [{ text: String(content), isBold: false }],
});

export const placedDrawing = (x: number, y: number, drawing: Drawing): PlacedDrawing => ({
  tag: "drawing",
  x,
  y,
  drawing,
});

/** Every line of text, in the order drawn; those of placed drawings are left out. */
export const textNodes = (nodes: readonly DrawingNode[]): TextNode[] =>
  nodes.flatMap((node) => (node.tag === "text" ? [node] : node.tag === "g" ? textNodes(node.children) : []));
