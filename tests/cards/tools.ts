import { execFile } from "node:child_process";
import { promisify } from "node:util";
import type { Raster } from "./rasterise.ts";

const execute = promisify(execFile);

/** Which Debian package each tool comes from. */
const PACKAGES: Readonly<Record<string, string>> = {
  qpdf: "qpdf",
  pdfinfo: "poppler-utils",
  pdffonts: "poppler-utils",
  pdftotext: "poppler-utils",
  pdftoppm: "poppler-utils",
};

/** The packages whose tools cannot be started here. */
export async function missingPackages(): Promise<string[]> {
  const missing = new Set<string>();
  for (const [tool, from] of Object.entries(PACKAGES))
    await execute(tool, [tool === "qpdf" ? "--version" : "-v"]).catch(() => missing.add(from));
  return [...missing];
}

/** What a tool writes; it throws where the tool fails, with its words. */
export const told = async (tool: string, ...options: readonly string[]): Promise<string> =>
  (await execute(tool, [...options], { maxBuffer: 1 << 28 })).stdout;

/** A page by poppler, as grey pixels. */
export async function popplerRaster(file: string, page: number, dpi: number): Promise<Raster> {
  const { stdout } = await execute(
    "pdftoppm",
    ["-r", `${dpi}`, "-gray", "-f", `${page}`, "-l", `${page}`, file],
    { encoding: "buffer", maxBuffer: 1 << 28 },
  );
  const [, width, height] =
    /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(stdout.subarray(0, 64).toString("latin1")) ?? [];
  const [wide, high] = [Number(width), Number(height)];
  return { width: wide, height: high, grey: new Uint8Array(stdout.subarray(stdout.length - wide * high)) };
}

/** A word with the box poppler gives it: points from the page's top left. */
export interface Word {
  readonly page: number;
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export async function wordsOf(file: string): Promise<Word[]> {
  const pages = (await told("pdftotext", "-bbox", file, "-")).split("<page ").slice(1);
  const box = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g;
  return pages.flatMap((page, i) =>
    [...page.matchAll(box)].map(([, left, top, right, bottom, text = ""]) => ({
      page: i + 1,
      text,
      left: Number(left),
      right: Number(right),
      top: Number(top),
      bottom: Number(bottom),
    })),
  );
}
