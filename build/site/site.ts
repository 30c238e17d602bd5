import { copyFile, mkdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import Eleventy from "@11ty/eleventy";
import { renderToString } from "preact-render-to-string";
import { ADDRESS } from "../../templates/sheet.ts";
import type { Guide } from "../guide/guide-schema.ts";
import type { Progress } from "../model/progress.ts";
import { dataFiles } from "./data-files.ts";
import { writeLinkPictures } from "./link-pictures.ts";
import { sitePages } from "./pages.tsx";

const TEMPLATES = fileURLToPath(new URL("../../templates/", import.meta.url));
const fontFile = (weight: number): string =>
  createRequire(import.meta.url).resolve(
    `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff2`,
  );

/** Files that every page loads, from where they lie to where they go. */
const ASSETS: Readonly<Record<string, string>> = {
  [path.join(TEMPLATES, "icon.svg")]: ADDRESS.icon,
  [path.join(TEMPLATES, "browser/glare.js")]: ADDRESS.glare,
  [path.join(TEMPLATES, "browser/ticks.js")]: ADDRESS.ticks,
  [path.join(TEMPLATES, "browser/today.js")]: ADDRESS.today,
  [path.join(TEMPLATES, "browser/share.js")]: ADDRESS.share,
  [path.join(TEMPLATES, "browser/offline.js")]: ADDRESS.offline,
  [path.join(TEMPLATES, "browser/offline-worker.js")]: ADDRESS.offlineWorker,
  [path.join(TEMPLATES, "browser/search.js")]: ADDRESS.searchScript,
  [fontFile(400)]: ADDRESS.textFont,
  [fontFile(700)]: ADDRESS.boldFont,
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

/**
 * Writes the guide's pages and what they load.
 * @param outDir where the guide is written; files already there that are not pages stay
 * @param only a lake's slug: its page alone
 * @param progress told of every page
 * @throws when a page cannot be drawn or written
 */
export async function writeSite(
  guide: Guide,
  outDir: string,
  only?: string,
  progress?: Progress,
): Promise<void> {
  const pages = sitePages(guide, only);
  let drawn = 0;
  progress?.("pages", drawn, pages.length);
  const files =
    only === undefined
      ? [
          ...dataFiles(guide),
          { address: ADDRESS.styles, text: await styles("site.css") },
          { address: ADDRESS.searchStyles, text: await styles("search.css") },
        ]
      : [];
  const eleventy = new Eleventy(fromHere(TEMPLATES), fromHere(outDir), {
    configPath: false,
    quietMode: true,
    config: (config) => {
      config.setTemplateFormats(["11ty.js"]);
      config.setDataFileSuffixes([]);
      for (const { address, text } of files)
        config.addTemplate(`${address}.11ty.js`, {
          data: () => ({ permalink: address }),
          render: () => text,
        });
      for (const { address, draw } of pages)
        config.addTemplate(`${address}.11ty.js`, {
          data: () => ({ permalink: address }),
          render: () => {
            const page = `<!DOCTYPE html>\n${renderToString(draw())}\n`;
            drawn += 1;
            progress?.("pages", drawn, pages.length);
            return page;
          },
        });
    },
  });
  eleventy.disableLogger();
  await copyAssets(outDir);
  await eleventy.write();
  await writeLinkPictures(guide, outDir, only);
}
