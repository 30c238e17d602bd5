import { mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { initWasm, Resvg } from "@resvg/resvg-wasm";
import {
  boardOpenGraphImage,
  boardPictureLakes,
  lakeOpenGraphImage,
} from "../draw/strip/open-graph-image.ts";
import { renderSvg } from "../draw/svg.ts";
import { guideFrame } from "../guide/guide-frame.ts";
import type { Guide } from "../guide/guide-schema.ts";
import type { LastOutputs } from "../incremental/outputs.ts";
import { ADDRESS } from "../model/addresses.ts";
import type { Inputs } from "../model/memoize.ts";

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

interface Picture {
  readonly page: string;
  readonly inputs: Inputs;
  readonly svg: () => string;
}

const picture = <Own extends Inputs>(page: string, inputs: Own, svg: (inputs: Own) => string): Picture => ({
  page,
  inputs,
  svg: () => svg(inputs),
});

function picturesOf(guide: Guide, only: string | undefined): Picture[] {
  const frame = guideFrame(guide);
  const lakes = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) =>
      picture(ADDRESS.lake(lake.slug), { lake, guide: frame }, (inputs) =>
        renderSvg(lakeOpenGraphImage(inputs.lake, inputs.guide)),
      ),
    );
  if (only !== undefined) return lakes;
  const first = picture(ADDRESS.board, { lakes: boardPictureLakes(guide), guide: frame }, (inputs) =>
    renderSvg(boardOpenGraphImage(inputs.lakes, inputs.guide)),
  );
  return [...lakes, first];
}

/**
 * Writes the pictures that other programs show beside a link: PNG, for they do not show SVG. A link inputs a full
 * address, so a guide without one gets none.
 * @param only a lake's slug: its picture alone
 * @param kept pictures that need not be drawn again
 * @throws when a file cannot be written
 */
export async function writeOpenGraphImages(
  guide: Guide,
  outDir: string,
  { only, kept }: { readonly only: string | undefined; readonly kept: LastOutputs },
): Promise<void> {
  if (guide.baseUrl === null) return;
  for (const { page, inputs, svg } of picturesOf(guide, only)) {
    const address = ADDRESS.linkPicture(page);
    if (kept.reuse("link picture", inputs, [address])) continue;
    const file = path.join(outDir, address);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, await png(svg()));
  }
}
