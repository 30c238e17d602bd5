import { mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import { ADDRESS } from "../../templates/sheet.ts";
import { boardLinkPicture, lakeLinkPicture } from "../draw/link-picture.tsx";
import type { Guide } from "../guide/guide-schema.ts";

const { resolve } = createRequire(import.meta.url);
const FONTS = [
  "400Regular/AtkinsonHyperlegibleNext_400Regular",
  "700Bold/AtkinsonHyperlegibleNext_700Bold",
].map((file) => `@expo-google-fonts/atkinson-hyperlegible-next/${file}.ttf`);

let ready: Promise<readonly Uint8Array[]> | undefined;
/** The library and the typeface, loaded once for all pictures of a process. */
function load(): Promise<readonly Uint8Array[]> {
  ready ??= (async () => {
    await initWasm(await readFile(resolve("@resvg/resvg-wasm/index_bg.wasm")));
    return Promise.all(FONTS.map((file) => readFile(resolve(file))));
  })();
  return ready;
}

async function png(svg: string): Promise<Uint8Array> {
  const fontBuffers = [...(await load())];
  const drawing = new Resvg(svg, {
    font: { fontBuffers, defaultFontFamily: "Atkinson Hyperlegible Next" },
  });
  try {
    return drawing.render().asPng();
  } finally {
    drawing.free();
  }
}

/**
 * Writes the pictures that other programs show beside a link: PNG, for they do not show SVG. A link needs a full
 * address, so a guide without one gets none.
 * @param only a lake's slug: its picture alone
 * @throws when a file cannot be written
 */
export async function writeLinkPictures(guide: Guide, outDir: string, only?: string): Promise<void> {
  if (guide.baseUrl === null) return;
  const pictures: [page: string, svg: string][] = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) => [ADDRESS.lake(lake.slug), lakeLinkPicture(lake, guide)]);
  if (only === undefined) pictures.push([ADDRESS.board, boardLinkPicture(guide)]);
  for (const [page, svg] of pictures) {
    const file = path.join(outDir, ADDRESS.linkPicture(page));
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, await png(svg));
  }
}
