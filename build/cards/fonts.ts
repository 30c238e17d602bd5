import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import type { Ruler } from "./flow.ts";
import { FONT_NAMES, type FontName, type TypeStyle } from "./type-styles.ts";

/** Glyphs of a stretch of text, in font units. */
interface GlyphRun {
  readonly glyphs: readonly unknown[];
  readonly positions: readonly object[];
  readonly advanceWidth: number;
}

/** The part used here of a font that pdfkit has parsed. */
interface ParsedFont {
  layout(text: string, features?: unknown): GlyphRun;
  hasGlyphForCodePoint(codePoint: number): boolean;
  readonly xHeight: number;
  readonly ascent: number;
  readonly descent: number;
  readonly unitsPerEm: number;
}

const PACKAGE = "@expo-google-fonts/atkinson-hyperlegible-next";
const FILES: Readonly<Record<FontName, string>> = {
  regular: "400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
  bold: "700Bold/AtkinsonHyperlegibleNext_700Bold.ttf",
};

/**
 * Parses a font once for all documents: pdfkit takes a parsed font as well as a file, and parsing anew for every
 * card costs far more than drawing it.
 */
function parseFont(name: FontName): ParsedFont {
  const file = createRequire(import.meta.url).resolve(`${PACKAGE}/${FILES[name]}`);
  const document = new PDFDocument({ autoFirstPage: false, font: "" });
  document.font(readFileSync(file));
  return remembering((document as unknown as { readonly _font: { readonly font: ParsedFont } })._font.font);
}

/**
 * The same font, which lays each stretch of text out once for all documents. pdfkit scales the positions it is given
 * in place, so each document gets its own copy of them.
 */
function remembering(font: ParsedFont): ParsedFont {
  const runs = new Map<string, GlyphRun>();
  return Object.assign(Object.create(font) as ParsedFont, {
    layout(text: string, features?: unknown): GlyphRun {
      if (features !== undefined) return font.layout(text, features);
      let run = runs.get(text);
      if (run === undefined) {
        const { glyphs, positions, advanceWidth } = font.layout(text);
        run = { glyphs, positions, advanceWidth };
        runs.set(text, run);
      }
      return { ...run, positions: run.positions.map((position) => ({ ...position })) };
    },
  });
}

export type Fonts = Readonly<Record<FontName, ParsedFont>>;

export const parseFonts = (): Fonts => ({ regular: parseFont("regular"), bold: parseFont("bold") });

/** Makes the fonts known to a document under their own names. */
export function registerFonts(document: PDFKit.PDFDocument, fonts: Fonts): void {
  for (const name of FONT_NAMES)
    document.registerFont(name, fonts[name] as unknown as PDFKit.Mixins.PDFFontSource);
}

/** Measures text exactly as it will be set, in a document of its own that is never written. */
export function createRuler(fonts: Fonts): Ruler {
  const document = new PDFDocument({ autoFirstPage: false, font: "" });
  registerFonts(document, fonts);
  const widths = new Map<string, number>();
  return {
    width_pt: (text: string, { font, size_pt }: TypeStyle) => {
      const key = `${font} ${size_pt} ${text}`;
      const known = widths.get(key);
      if (known !== undefined) return known;
      const width = document.font(font).fontSize(size_pt).widthOfString(text);
      widths.set(key, width);
      return width;
    },
    missing: (text: string, { font }: TypeStyle) =>
      [...new Set(text)].filter((c) => !fonts[font].hasGlyphForCodePoint(c.codePointAt(0) ?? 0)),
    xHeight_pt: ({ font, size_pt }: TypeStyle) => (fonts[font].xHeight / fonts[font].unitsPerEm) * size_pt,
  };
}
