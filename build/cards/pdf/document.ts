import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import PDFDocument from "pdfkit";
import type { CalendarDate } from "../../model/calendar.ts";
import type { Ruler } from "../layout/column.ts";
import { FONT_NAMES, type FontName, type TypeStyle } from "../layout/page.ts";

/** The part used here of a font file that is parsed. */
interface ParsedFont {
  hasGlyphForCodePoint(codePoint: number): boolean;
  readonly ascent: number;
  readonly descent: number;
  readonly xHeight: number;
  readonly unitsPerEm: number;
}

/** The part used here of a font in a document of pdfkit. */
interface DocumentFont {
  readonly font: ParsedFont;
  /** Words as they were laid out, by themselves. */
  layoutCache: object;
}

/** A font for all documents. */
interface SharedFont {
  readonly parsed: ParsedFont;
  readonly words: object;
}

const PACKAGE = "@expo-google-fonts/atkinson-hyperlegible-next";
const FILES: Readonly<Record<FontName, string>> = {
  regular: "400Regular/AtkinsonHyperlegibleNext_400Regular.ttf",
  bold: "700Bold/AtkinsonHyperlegibleNext_700Bold.ttf",
};

/** The font that a document has taken last; pdfkit’s types do not know it. */
const fontOf = (document: PDFKit.PDFDocument): DocumentFont =>
  (document as unknown as { readonly _font: DocumentFont })._font;

/**
 * Parses a font once for all documents: pdfkit takes a parsed font as well as a file, and parsing anew for every
 * card costs far more than drawing it. Words are laid out once for all documents too.
 */
function shareFont(name: FontName): SharedFont {
  const file = createRequire(import.meta.url).resolve(`${PACKAGE}/${FILES[name]}`);
  const document = new PDFDocument({ autoFirstPage: false, font: "" });
  const { font: parsed, layoutCache: words } = fontOf(document.font(readFileSync(file)));
  return { parsed, words };
}

export type Fonts = Readonly<Record<FontName, SharedFont>>;

export const parseFonts = (): Fonts => ({ regular: shareFont("regular"), bold: shareFont("bold") });

/** Makes the fonts known to a document under their own names. */
export function registerFonts(document: PDFKit.PDFDocument, fonts: Fonts): void {
  for (const name of FONT_NAMES) {
    const { parsed, words } = fonts[name];
    document.registerFont(name, parsed as unknown as PDFKit.Mixins.PDFFontSource);
    fontOf(document.font(name)).layoutCache = words;
  }
}

/** Measures text exactly as it will be set, in a document of its own that is never written. */
export function createRuler(fonts: Fonts): Ruler {
  const document = new PDFDocument({ autoFirstPage: false, font: "" });
  registerFonts(document, fonts);
  /** Widths by font and size. */
  const measured: Readonly<Record<FontName, Map<number, Map<string, number>>>> = {
    regular: new Map(),
    bold: new Map(),
  };
  return {
    width_pt: (text: string, { font, size_pt }: TypeStyle) => {
      const widths: Map<string, number> = measured[font].get(size_pt) ?? new Map();
      measured[font].set(size_pt, widths);
      const known = widths.get(text);
      if (known !== undefined) return known;
      const width = document.font(font).fontSize(size_pt).widthOfString(text);
      widths.set(text, width);
      return width;
    },
    missing: (text: string, { font }: TypeStyle) =>
      [...new Set(text)].filter((c) => !fonts[font].parsed.hasGlyphForCodePoint(c.codePointAt(0) ?? 0)),
    xHeight_pt: ({ font, size_pt }: TypeStyle) =>
      (fonts[font].parsed.xHeight / fonts[font].parsed.unitsPerEm) * size_pt,
  };
}

interface DocumentWords {
  readonly title: string;
  readonly author: string;
  readonly asOf: CalendarDate;
}

/**
 * pdfkit makes bytes of their own of each operator, of which a page has thousands, and joins them when the page is done.
 * Here the operators are joined first, which takes a fraction of the time and comes to the same bytes.
 */
class JoinedDocument extends PDFDocument {
  readonly #operators: string[] = [];

  override addContent(operator: string): this {
    this.#operators.push(operator);
    return this;
  }

  #write(): void {
    if (this.#operators.length > 0) super.addContent(this.#operators.splice(0).join("\n"));
  }

  override addPage(options?: PDFKit.PDFDocumentOptions): this {
    this.#write();
    super.addPage(options);
    return this;
  }

  override end(): void {
    this.#write();
    super.end();
  }
}

/** A PDF that is being made. */
interface OpenDocument {
  readonly document: PDFKit.PDFDocument;
  /** What the structure of its pages goes under. */
  readonly root: PDFKit.PDFStructureElement;
  /** Ends it, and gives its bytes. */
  close(): Promise<Buffer>;
}

/**
 * Begins a PDF: tagged, titled, in English, dated by the guide's as-of date and by nothing else, so that the same
 * guide gives the same bytes.
 */
export function openDocument({ title, author, asOf }: DocumentWords, fonts: Fonts): OpenDocument {
  const date = new Date(`${asOf}T00:00:00Z`);
  const document = new JoinedDocument({
    autoFirstPage: false,
    font: "",
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    lang: "en",
    info: { Title: title, Author: author, CreationDate: date, ModDate: date },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    document.on("data", (chunk: Buffer) => chunks.push(chunk));
    document.on("end", () => resolve(Buffer.concat(chunks)));
    document.on("error", reject);
  });
  registerFonts(document, fonts);
  const root = document.struct("Document");
  document.addStructure(root);
  return {
    document,
    root,
    close() {
      root.end();
      document.end();
      return done;
    },
  };
}

/**
 * Makes one PDF.
 * @param draw adds pages, and their structure under the root it is given
 */
export function makeDocument(
  words: DocumentWords,
  fonts: Fonts,
  draw: (document: PDFKit.PDFDocument, root: PDFKit.PDFStructureElement) => void,
): Promise<Buffer> {
  const { document, root, close } = openDocument(words, fonts);
  draw(document, root);
  return close();
}
