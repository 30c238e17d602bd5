import PDFDocument from "pdfkit";
import type { CalendarDate } from "../model/calendar.ts";
import { type Fonts, registerFonts } from "./fonts.ts";

interface DocumentWords {
  readonly title: string;
  readonly author: string;
  readonly asOf: CalendarDate;
}

/**
 * Makes one PDF: tagged, titled, in English, dated by the guide's as-of date and by nothing else, so that the same
 * guide gives the same bytes.
 * @param draw adds pages, and their structure under the root it is given
 */
export async function makeDocument(
  { title, author, asOf }: DocumentWords,
  fonts: Fonts,
  draw: (document: PDFKit.PDFDocument, root: PDFKit.PDFStructureElement) => void,
): Promise<Buffer> {
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
  draw(document, root);
  root.end();
  document.end();
  return done;
}
