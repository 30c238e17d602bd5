import { lstatSync } from "node:fs";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import path from "node:path";
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
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

const READ_ME_NAME = `${FOLDER}/READ-ME.txt`;

/** True where something stands that this program did not pack. */
export async function isForeignFile(zipFile: string): Promise<boolean> {
  const found = lstatSync(zipFile, { throwIfNoEntry: false });
  if (found === undefined) return false;
  if (!found.isFile()) return true;
  try {
    const { [READ_ME_NAME]: readMe } = unzipSync(new Uint8Array(await readFile(zipFile)), {
      filter: ({ name }) => name === READ_ME_NAME,
    });
    return readMe === undefined || strFromU8(readMe) !== READ_ME;
  } catch {
    return true;
  }
}

/** Writes a file beside and puts it in the place of the old one when the disk holds it. */
async function replaceFile(file: string, bytes: Uint8Array): Promise<void> {
  const part = path.join(path.dirname(file), `.${path.basename(file)}.${process.pid}.part`);
  const handle = await open(part, "wx");
  try {
    await handle.writeFile(bytes);
    await handle.sync();
    await handle.close();
    await rename(part, file);
  } finally {
    await handle.close().catch(() => undefined);
    await rm(part, { force: true });
  }
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
    { [READ_ME_NAME]: strToU8(READ_ME), ...entries },
    // Without a zone a date and time is read, and written into the archive, as local: the same everywhere.
    { mtime: `${asOf}T00:00:00`, level: 9 },
  );
  await mkdir(path.dirname(zipFile), { recursive: true });
  if (await isForeignFile(zipFile)) throw new Error("what is there is not an archive of this program");
  await replaceFile(zipFile, zip);
}
