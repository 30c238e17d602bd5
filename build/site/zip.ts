import { mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { strToU8, type Zippable, zipSync } from "fflate";
import type { Guide } from "../guide/guide-schema.ts";
import { ADDRESS } from "../model/addresses.ts";
import { readListed, readOfflineList } from "./offline-and-sitemap.ts";
import { guideOutputs, type Output } from "./outputs.ts";
import { loadTemplates, sitePages } from "./pages.ts";

/** The folder that opens out of the archive. */
const FOLDER = "guide";
const READ_ME = "Open index.html in a browser. Nothing needs to be installed.\n";

/** What a published guide lists: by its own data, and by its offline list where the club added files. */
async function listedOutputs(dir: string): Promise<Output[]> {
  const guide = JSON.parse(await readFile(path.join(dir, ADDRESS.data), "utf8")) as Guide;
  const added = await readOfflineList(dir);
  return [
    ...guideOutputs(guide, sitePages(await loadTemplates(), guide)),
    ...added.map((address): Output => ({ address, kind: "page", listed: true })),
  ];
}

/**
 * Packs a published guide for handing on: it opens from a disk. Unlisted pages stay out. The same guide gives the same
 * bytes, for every file is dated by the as-of day.
 * @param dir a guide written whole
 * @throws when a file cannot be read or written
 */
export async function zipGuide({ asOf }: Pick<Guide, "asOf">, dir: string, zipFile: string): Promise<void> {
  const files = await readListed(await listedOutputs(dir), dir);
  const entries: Zippable = Object.fromEntries(
    files.map(({ address, bytes }) => [`${FOLDER}/${address}`, new Uint8Array(bytes)]),
  );
  const zip = zipSync(
    { [`${FOLDER}/READ-ME.txt`]: strToU8(READ_ME), ...entries },
    // Without a zone a date and time is read, and written into the archive, as local: the same everywhere.
    { mtime: `${asOf}T00:00:00`, level: 9 },
  );
  await mkdir(path.dirname(zipFile), { recursive: true });
  await writeFile(zipFile, zip);
}
