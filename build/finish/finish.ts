import { writeFile } from "node:fs/promises";
import path from "node:path";
import { ADDRESS } from "../../templates/sheet.ts";
import { sitemapXml } from "../feeds/sitemap.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { listedFiles } from "./listed-files.ts";
import { offlineFilesScript } from "./offline-files.ts";

/** Pages for search engines. */
const isFindable = (address: string): boolean => address.endsWith(".html") && address !== ADDRESS.notFound;

/**
 * Writes what can only be made when everything else is written: the list of files to save on a phone and, for a guide
 * with an address of its own, the site map.
 * @param dir where the guide has been written
 * @throws when a file cannot be read or written
 */
export async function finishGuide(guide: Guide, dir: string): Promise<void> {
  const files = await listedFiles(dir);
  await writeFile(path.join(dir, ADDRESS.offlineFiles), offlineFilesScript(files, guide));
  const { baseUrl } = guide;
  if (baseUrl === null) return;
  const pages = files.map(({ address }) => address).filter(isFindable);
  await writeFile(
    path.join(dir, ADDRESS.sitemap),
    sitemapXml(pages.map((address) => new URL(encodeURI(address), baseUrl).href)),
  );
}
