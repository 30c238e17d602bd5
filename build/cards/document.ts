import PDFDocument from "pdfkit";
import type { CalendarDate } from "../model/calendar.ts";
import { type Fonts, registerFonts } from "./fonts.ts";

interface DocumentWords {
  readonly title: string;
  readonly author: string;
  readonly asOf: CalendarDate;
}

/** A PDF that is being made. */
export interface OpenDocument {
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
  const document = new PDFDocument({
    autoFirstPage: false,
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
