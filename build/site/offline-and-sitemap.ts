import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { sitemapXml } from "../feeds/atom-and-sitemap.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { ADDRESS } from "../model/addresses.ts";
import { dayMonthYear } from "../model/calendar.ts";
import type { Output } from "./outputs.ts";

/** A file of a written guide. */
export interface WrittenFile {
  /** Inside the guide, such as "lakes/ember/index.html". */
  readonly address: string;
  readonly bytes: Buffer;
}

/**
 * The listed files of a guide by address. One that is not there is left out: where a lake's part alone was written, the
 * rest is that of an older guide.
 * @param dir where the guide has been written
 */
export async function readListed(outputs: readonly Output[], dir: string): Promise<WrittenFile[]> {
  const addresses = [...new Set(outputs.filter(({ listed }) => listed).map(({ address }) => address))];
  const files: WrittenFile[] = [];
  for (const address of addresses.sort((a, b) => (a < b ? -1 : 1))) {
    const bytes = await readFile(path.join(dir, address)).catch(() => undefined);
    if (bytes !== undefined) files.push({ address, bytes });
  }
  return files;
}

const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("base64");

/** For programs, or for a device with a signal: not worth the room on a phone. */
const isForPrograms = (address: string): boolean =>
  address === ADDRESS.data || address === ADDRESS.reportsFeed || address.endsWith(".geojson");

const BEFORE_LIST = "self.guideFiles = ";

/**
 * The script that tells the offline worker what to save: each file's address and the SHA-256 of its bytes, in base64
 * as browsers check it (W3C Subresource Integrity). Same files, same script: a phone that has them fetches nothing.
 */
function offlineFilesScript(files: readonly WrittenFile[], { asOf }: Pick<Guide, "asOf">): string {
  const hashes = files
    .filter(({ address }) => !isForPrograms(address))
    .map(({ address, bytes }) => [address, sha256(bytes)]);
  const list = { asOf, asOfWords: dayMonthYear(asOf), files: Object.fromEntries(hashes) };
  return `${BEFORE_LIST}${JSON.stringify(list)};\n`;
}

/** The addresses in a published guide's offline list; none where it was published without. */
export async function readOfflineList(dir: string): Promise<string[]> {
  const script = await readFile(path.join(dir, ADDRESS.offlineFiles), "utf8").catch(() => undefined);
  if (script === undefined) return [];
  const list = JSON.parse(script.slice(BEFORE_LIST.length, script.lastIndexOf(";"))) as { files: object };
  return Object.keys(list.files);
}

/** Pages for search engines. */
const isFindable = (address: string): boolean => address.endsWith(".html") && address !== ADDRESS.notFound;

/**
 * Writes what can only be made when everything else is written: the list of files to save on a phone and, for a guide
 * with an address of its own, the site map.
 * @param dir where the guide has been written
 * @throws when a file cannot be written
 */
export async function writeOfflineListAndSitemap(
  guide: Pick<Guide, "asOf" | "baseUrl">,
  outputs: readonly Output[],
  dir: string,
): Promise<void> {
  const files = await readListed(outputs, dir);
  await writeFile(path.join(dir, ADDRESS.offlineFiles), offlineFilesScript(files, guide));
  const { baseUrl } = guide;
  if (baseUrl === null) return;
  const pages = files.map(({ address }) => address).filter(isFindable);
  await writeFile(
    path.join(dir, ADDRESS.sitemap),
    sitemapXml(pages.map((address) => new URL(encodeURI(address), baseUrl).href)),
  );
}
