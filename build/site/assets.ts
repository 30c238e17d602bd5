import { copyFile, mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import type { Guide } from "../guide/guide-schema.ts";
import { ADDRESS } from "../model/addresses.ts";
import { programFile } from "../program/program-files.ts";
import type { Output } from "./outputs.ts";
import { TEMPLATES } from "./pages.ts";
import { dataFiles } from "./text-files.ts";

// Copied here and not by Eleventy's passthrough copy: on a full disk a failure of that is caught by nobody and ends the
// program (3.1.8: its promises wait, without a handler, for the pages to be drawn).

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

/** Styles as readers load them: without comments and layout, an eighth fewer bytes on the way. */
const styles = async (file: string): Promise<string> =>
  (await readFile(path.join(TEMPLATES, file), "utf8"))
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/([{};,:]) /g, "$1")
    .replace(/ ([{}])/g, "$1")
    .trim();

async function copyInto(outDir: string, file: string, address: string): Promise<void> {
  const target = path.join(outDir, address);
  await mkdir(path.dirname(target), { recursive: true });
  await copyFile(file, target);
}

/** Writes what is the same for every guide. @throws a system error */
export async function copyAssets(outDir: string): Promise<void> {
  for (const [file, address] of Object.entries(ASSETS)) await copyInto(outDir, file, address);
}

/** Writes what the pages of a whole guide load. @throws a system error */
export async function writeLoaded(guide: Guide, outDir: string): Promise<void> {
  const files = [
    ...dataFiles(guide),
    { address: ADDRESS.styles, text: await styles("assets/site.css") },
    { address: ADDRESS.searchStyles, text: await styles("assets/search.css") },
    { address: ADDRESS.boardStyles, text: await styles("assets/board.css") },
  ];
  for (const { address, text } of files) {
    const file = path.join(outDir, address);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

/** Copies the club's folder `static` as it is. Hidden files and links stay out. @throws a system error */
export async function copyStatic(clubDir: string, outDir: string): Promise<Output[]> {
  const from = path.join(clubDir, "static");
  const copied: Output[] = [];
  const walk = async (folder: string): Promise<void> => {
    const entries = await readdir(path.join(from, folder), { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      const name = path.posix.join(folder, entry.name);
      if (entry.name.startsWith(".")) continue;
      if (entry.isDirectory()) await walk(name);
      if (!entry.isFile()) continue;
      await copyInto(outDir, path.join(from, name), ADDRESS.static(name));
      copied.push({ address: ADDRESS.static(name), kind: "asset", listed: true });
    }
  };
  await walk("");
  return copied;
}
