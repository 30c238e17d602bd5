import { inflateSync } from "node:zlib";

/** A straight line of a page, in points from its top left corner. */
export interface Stroke {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
}

/** What a page draws, read from its own operators (ISO 32000-1, 8.4 and 8.5). */
export interface PageContent {
  readonly height: number;
  readonly strokes: readonly Stroke[];
  /** Where each shift of the origin puts it. */
  readonly origins: readonly (readonly [x: number, y: number])[];
}

/** The content streams of a PDF's pages, inflated, in page order. */
function streams(bytes: Buffer): string[] {
  const text = bytes.toString("latin1");
  return [...text.matchAll(/\/Contents (\d+) 0 R/g)].map(([, id]) => {
    const object = new RegExp(`(?:^|\\n)${id} 0 obj\\n[^]*?stream\\n`).exec(text);
    if (object === null) throw new Error(`no object ${id}`);
    const start = object.index + object[0].length;
    return inflateSync(bytes.subarray(start, text.indexOf("endstream", start))).toString("latin1");
  });
}

const NUMBER = "(-?[\\d.]+)";

/** Every page's lines and origins; the first matrix of a page turns it upside down and gives its height. */
export const pageContents = (bytes: Buffer): PageContent[] =>
  streams(bytes).map((stream) => {
    const flip = new RegExp(`^1 0 0 -1 0 ${NUMBER} cm`, "m").exec(stream);
    if (flip === null) throw new Error("the page is not turned upside down first");
    const strokes: Stroke[] = [];
    let at: readonly [number, number] = [0, 0];
    for (const [, x, y, operator] of stream.matchAll(new RegExp(`^${NUMBER} ${NUMBER} ([ml])$`, "gm"))) {
      const next = [Number(x), Number(y)] as const;
      if (operator === "l") strokes.push({ from: at, to: next });
      at = next;
    }
    const origins = [...stream.matchAll(new RegExp(`^1 0 0 1 ${NUMBER} ${NUMBER} cm`, "gm"))].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );
    return { height: Number(flip[1]), strokes, origins };
  });
