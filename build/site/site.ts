import { copyFile, mkdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { ADDRESS } from "../../templates/_includes/page-context.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type LastOutputs, noOutputs } from "../incremental/outputs.ts";
import type { Progress } from "../model/progress.ts";
import { programFile, templatesFolder } from "../program/program-files.ts";
import { writeOpenGraphImages } from "./open-graph-images.ts";
import { type SitePage, sitePages } from "./pages.tsx";
import { dataFiles, pageText } from "./text-files.ts";

const TEMPLATES = templatesFolder();
const fontPackage = (file: string): string =>
  createRequire(import.meta.url).resolve(`@fontsource/atkinson-hyperlegible-next/${file}`);
const fontFile = (weight: number): string =>
  fontPackage(`files/atkinson-hyperlegible-next-latin-${weight}-normal.woff2`);

/** Files that are the same for every guide, from where they lie to where they go: what pages load, and the licences. */
const ASSETS: Readonly<Record<string, string>> = {
  [path.join(TEMPLATES, "assets/icon.svg")]: ADDRESS.icon,
  [path.join(TEMPLATES, "assets/glare.js")]: ADDRESS.glare,
  [path.join(TEMPLATES, "assets/ticks.js")]: ADDRESS.ticks,
  [path.join(TEMPLATES, "assets/today.js")]: ADDRESS.today,
  [path.join(TEMPLATES, "assets/share.js")]: ADDRESS.share,
  [path.join(TEMPLATES, "assets/offline.js")]: ADDRESS.offline,
  [path.join(TEMPLATES, "assets/offline-worker.js")]: ADDRESS.offlineWorker,
  [path.join(TEMPLATES, "assets/search.js")]: ADDRESS.searchScript,
  [fontFile(400)]: ADDRESS.textFont,
  [fontFile(700)]: ADDRESS.boldFont,
  [fontPackage("LICENSE")]: ADDRESS.fontLicence,
  [programFile("content/notices.txt")]: ADDRESS.notices,
};

/** Styles as readers load them: without what is written for those who change them, an eighth fewer bytes on the way. */
const styles = async (file: string): Promise<string> =>
  (await readFile(path.join(TEMPLATES, file), "utf8"))
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/([{};,:]) /g, "$1")
    .replace(/ ([{}])/g, "$1")
    .trim();

/** Eleventy takes paths from where the program was started. */
const fromHere = (file: string): string => path.relative(process.cwd(), file);

/** Not by Eleventy: of its own copying, a second failure (a full disk) is caught by nobody and ends the program. */
async function copyAssets(outDir: string): Promise<void> {
  for (const [file, address] of Object.entries(ASSETS)) {
    const target = path.join(outDir, address);
    await mkdir(path.dirname(target), { recursive: true });
    await copyFile(file, target);
  }
}

/** Eleventy holds what it has written until it is done; a large club's pages would fill the memory. */
const PAGES_AT_ONCE = 250;

/** Eleventy is loaded only when there is something to draw. */
async function draw(pages: readonly SitePage[], outDir: string, drawn: () => void): Promise<void> {
  const { default: Eleventy } = await import("@11ty/eleventy");
  const eleventy = new Eleventy(fromHere(TEMPLATES), fromHere(outDir), {
    configPath: false,
    quietMode: true,
    config: (config) => {
      config.setTemplateFormats(["11ty.js"]);
      config.setDataFileSuffixes([]);
      for (const page of pages)
        config.addTemplate(`${page.address}.11ty.js`, {
          data: () => ({ permalink: page.address }),
          render: () => {
            const text = pageText(page);
            drawn();
            return text;
          },
        });
    },
  });
  eleventy.disableLogger();
  await eleventy.write();
}

/** Writes what the pages of a whole guide load. */
async function writeLoaded(guide: Guide, outDir: string): Promise<void> {
  const files = [
    ...dataFiles(guide),
    { address: ADDRESS.styles, text: await styles("assets/site.css") },
    { address: ADDRESS.searchStyles, text: await styles("assets/search.css") },
  ];
  for (const { address, text } of files) {
    const file = path.join(outDir, address);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

/** How a part of the guide is written. */
interface SiteOptions {
  /** A lake's slug: its page alone. */
  readonly only?: string | undefined;
  /** Pages and pictures that need not be drawn again. */
  readonly kept?: LastOutputs | undefined;
  /** Told of every page. */
  readonly progress?: Progress;
}

/**
 * Writes the guide's pages and what they load.
 * @param outDir where the guide is written; files already there that are not pages stay
 * @throws when a page cannot be drawn or written
 */
export async function writeSite(
  guide: Guide,
  outDir: string,
  { only, kept = noOutputs, progress }: SiteOptions = {},
): Promise<void> {
  const pages = sitePages(guide, only);
  progress?.("pages", 0, pages.length);
  await copyAssets(outDir);
  if (only === undefined) await writeLoaded(guide, outDir);
  const toDraw = pages.filter(({ address, needs }) => !kept.reuse("page", needs, [address]));
  let done = pages.length - toDraw.length;
  progress?.("pages", done, pages.length);
  const drawn = (): void => {
    done += 1;
    progress?.("pages", done, pages.length);
  };
  for (let i = 0; i < toDraw.length; i += PAGES_AT_ONCE)
    await draw(toDraw.slice(i, i + PAGES_AT_ONCE), outDir, drawn);
  await writeOpenGraphImages(guide, outDir, { only, kept });
}
