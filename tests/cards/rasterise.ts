import { type PDFiumDocument, PDFiumLibrary } from "@hyzyla/pdfium";
import jsqr from "jsqr";

/** One page as grey pixels, 0 black to 255 white. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** Opens a PDF in PDFium, which shares no code with the writer, and closes it afterwards. */
export async function withPdf<T>(bytes: Uint8Array, look: (pdf: PDFiumDocument) => Promise<T>): Promise<T> {
  const library = await PDFiumLibrary.init();
  const pdf = await library.loadDocument(bytes);
  try {
    return await look(pdf);
  } finally {
    pdf.destroy();
    library.destroy();
  }
}

/** @param scale pixels a point */
export async function rasterise(pdf: PDFiumDocument, page: number, scale: number): Promise<Raster> {
  const { data, width, height } = await pdf.getPage(page).render({ scale, render: "bitmap" });
  const grey = Uint8Array.from({ length: width * height }, (_, i) => data[4 * i + 1] ?? 255);
  return { width, height, grey };
}

/** A part of a page; x and y in pixels. */
export function crop(raster: Raster, x: number, y: number, width: number, height: number): Raster {
  const grey = Uint8Array.from(
    { length: width * height },
    (_, i) => raster.grey[(y + Math.floor(i / width)) * raster.width + x + (i % width)] ?? 255,
  );
  return { width, height, grey };
}

/** Black or white and nothing between, as a laser printer or a copier leaves it. */
export const thresholded = (raster: Raster): Raster => ({
  ...raster,
  grey: raster.grey.map((value) => (value < 128 ? 0 : 255)),
});

/** A quarter turn clockwise. */
export function quarterTurn({ width, height, grey }: Raster): Raster {
  const turned = new Uint8Array(grey.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) turned[x * height + (height - 1 - y)] = grey[y * width + x] ?? 255;
  return { width: height, height: width, grey: turned };
}

/** Share of black in a raster. */
export const blackShare = ({ grey }: Raster): number =>
  grey.reduce((sum, value) => sum + (255 - value), 0) / 255 / grey.length;

/** Mean difference of two rasters of one size, 0 to 1. */
export function difference(a: Raster, b: Raster): number {
  if (a.width !== b.width || a.height !== b.height) throw new Error("rasters differ in size");
  return (
    a.grey.reduce((sum, value, i) => sum + Math.abs(value - (b.grey[i] ?? 255)), 0) / 255 / a.grey.length
  );
}

/** Reads the QR code in a raster, by a reader that shares no code with the writer. */
export function readQr({ width, height, grey }: Raster) {
  const rgba = new Uint8ClampedArray(width * height * 4);
  for (const [i, value] of grey.entries()) rgba.set([value, value, value, 255], 4 * i);
  // The package is CommonJS with its function under `default`, which Node and its types see differently.
  const read = (typeof jsqr === "function" ? jsqr : (jsqr as { default: unknown }).default) as (
    data: Uint8ClampedArray,
    width: number,
    height: number,
  ) => {
    readonly data: string;
    readonly version: number;
    readonly location: Readonly<Record<"topLeftCorner" | "bottomRightCorner", { x: number; y: number }>>;
  } | null;
  return read(rgba, width, height);
}
