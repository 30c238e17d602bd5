import { createHash } from "node:crypto";
import { mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { strToU8, type Zippable, zipSync } from "fflate";
import { ADDRESS } from "../../templates/_includes/page-context.ts";
import { sitemapXml } from "../feeds/atom-and-sitemap.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";

/** A file that a reader can come to. */
export interface ReachableFile {
  /** Inside the guide, such as "lakes/ember/index.html". */
  readonly address: string;
  readonly bytes: Buffer;
}

/** What a page, and what a style sheet, says it needs or leads to. */
const LINKS: Readonly<Record<string, RegExp>> = {
  ".html": /\s(?:href|src)="([^"#?]+)/g,
  ".css": /url\("([^"]+)"\)/g,
};
const ELSEWHERE = /^([a-z][a-z0-9+.-]*:|\/)/i;

function linksOf({ address, bytes }: ReachableFile): string[] {
  const links = LINKS[path.posix.extname(address)];
  if (links === undefined) return [];
  return [...bytes.toString("utf8").matchAll(links)]
    .map(([, link = ""]) => link.replaceAll("&amp;", "&"))
    .filter((link) => !ELSEWHERE.test(link))
    .map((link) => path.posix.join(path.posix.dirname(address), decodeURI(link)));
}

const readIfThere = (file: string): Promise<Buffer | undefined> => readFile(file).catch(() => undefined);

/**
 * Every file that links lead to from the board and from the page for missing addresses, in the order of their
 * addresses. What only an unlisted page leads to is not among them: whoever was not given its address gets none of it.
 * @param dir a guide written whole
 */
export async function reachableFiles(dir: string): Promise<ReachableFile[]> {
  const found = new Map<string, ReachableFile>();
  const addresses = new Set<string>([ADDRESS.board, ADDRESS.notFound]);
  for (const address of addresses) {
    const bytes = await readIfThere(path.join(dir, address));
    if (bytes === undefined) continue;
    const file = { address, bytes };
    found.set(address, file);
    for (const link of linksOf(file)) addresses.add(link);
  }
  return [...found.values()].sort((a, b) => (a.address < b.address ? -1 : 1));
}

const sha256 = (bytes: Buffer): string => createHash("sha256").update(bytes).digest("base64");

/** For programs, or for a device with a signal: not worth the room on a phone. */
const isForPrograms = (address: string): boolean =>
  address === ADDRESS.data || address === ADDRESS.reportsFeed || address.endsWith(".geojson");

/**
 * The script that tells the offline worker what to save: each file's address and the SHA-256 of its bytes, in base64
 * as browsers check it (W3C Subresource Integrity). Same files, same script: a phone that has them fetches nothing.
 */
export function offlineFilesScript(files: readonly ReachableFile[], { asOf }: Pick<Guide, "asOf">): string {
  const hashes = files
    .filter(({ address }) => !isForPrograms(address))
    .map(({ address, bytes }) => [address, sha256(bytes)]);
  const list = { asOf, asOfWords: dayMonthYear(asOf), files: Object.fromEntries(hashes) };
  return `self.guideFiles = ${JSON.stringify(list)};\n`;
}

/** Pages for search engines. */
const isFindable = (address: string): boolean => address.endsWith(".html") && address !== ADDRESS.notFound;

/**
 * Writes what can only be made when everything else is written: the list of files to save on a phone and, for a guide
 * with an address of its own, the site map.
 * @param dir where the guide has been written
 * @throws when a file cannot be read or written
 */
export async function writeOfflineListAndSitemap(guide: Guide, dir: string): Promise<void> {
  const files = await reachableFiles(dir);
  await writeFile(path.join(dir, ADDRESS.offlineFiles), offlineFilesScript(files, guide));
  const { baseUrl } = guide;
  if (baseUrl === null) return;
  const pages = files.map(({ address }) => address).filter(isFindable);
  await writeFile(
    path.join(dir, ADDRESS.sitemap),
    sitemapXml(pages.map((address) => new URL(encodeURI(address), baseUrl).href)),
  );
}

/** The folder that opens out of the archive. */
const FOLDER = "guide";
const READ_ME = "Open index.html in a browser. Nothing needs to be installed.\n";

/**
 * Packs a written guide for handing on: it opens from a disk. Unlisted pages stay out. The same guide gives the same
 * bytes, for every file is dated by the as-of day.
 * @param dir a guide written whole
 * @throws when a file cannot be read or written
 */
export async function zipGuide({ asOf }: Pick<Guide, "asOf">, dir: string, zipFile: string): Promise<void> {
  const files = await reachableFiles(dir);
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
