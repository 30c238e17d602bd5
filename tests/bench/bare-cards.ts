import { createWriteStream } from "node:fs";
import { mkdir, readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { finished } from "node:stream/promises";
import { PDFiumLibrary } from "@hyzyla/pdfium";
import PDFDocument from "pdfkit";
import { parseFonts, registerFonts } from "../../build/cards/pdf/document.ts";
import { startCost } from "./stage-watch.ts";

interface BarePage {
  readonly size: [width_pt: number, height_pt: number];
  readonly lines: readonly string[];
}

/** The reading library gives no memory back until it ends, and has 2 GB at the most. */
const FILES_AT_ONCE = 200;

/** What stands on each page of a PDF, read by another library than the one that wrote it. */
async function pagesOf(library: PDFiumLibrary, file: string): Promise<BarePage[]> {
  const document = await library.loadDocument(await readFile(file));
  try {
    return [...document.pages()].map((page) => {
      const { originalWidth, originalHeight } = page.getOriginalSize();
      return { size: [originalWidth, originalHeight], lines: page.getText().split(/\r?\n/) };
    });
  } finally {
    document.destroy();
  }
}

/**
 * Writes the text of a finished guide's cards again by pdfkit alone: as many files, pages and lines, without layout,
 * drawings or tags, and with the fonts parsed once for all files. Says the cost as JSON. Arguments: the finished guide,
 * and a folder to write to.
 */
const [site = "", outDir = ""] = process.argv.slice(2);
const cards = path.join(site, "cards");
const names = await readdir(cards);
const files: { readonly name: string; readonly pages: readonly BarePage[] }[] = [];
while (files.length < names.length) {
  const library = await PDFiumLibrary.init();
  for (const name of names.slice(files.length, files.length + FILES_AT_ONCE))
    files.push({ name, pages: await pagesOf(library, path.join(cards, name)) });
  library.destroy();
}
const to = path.join(outDir, "cards");
await mkdir(to, { recursive: true });

const cost = startCost();
const fonts = parseFonts();
for (const { name, pages } of files) {
  const document = new PDFDocument({ autoFirstPage: false });
  const stream = document.pipe(createWriteStream(path.join(to, name)));
  registerFonts(document, fonts);
  for (const { size, lines } of pages) {
    document.addPage({ size, margin: 0 }).font("regular").fontSize(7);
    const step_pt = size[1] / (lines.length + 1);
    for (const [i, line] of lines.entries()) document.text(line, 10, step_pt * i, { lineBreak: false });
  }
  document.end();
  await finished(stream);
}
console.log(JSON.stringify({ ...cost(), made: files.length }));
