import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Guide } from "../../build/guide/guide-schema.ts";
import type { Output } from "../../build/site/outputs.ts";
import { writeSite } from "../../build/site/site.ts";

/** A site in a folder of its own. */
export interface BuiltSite {
  readonly dir: string;
  /** Every file by its address, as bytes. */
  readonly files: ReadonlyMap<string, Buffer>;
  /** Every page by its address, as text. */
  readonly pages: ReadonlyMap<string, string>;
  /** Every file of the whole guide, also those that are written elsewhere. */
  readonly outputs: readonly Output[];
  remove(): Promise<void>;
}

/** Writes a guide's site into a new folder under the system's own for such things. */
export async function buildSite(guide: Guide, only?: string): Promise<BuiltSite> {
  const dir = await mkdtemp(path.join(tmpdir(), "lake-season-site-"));
  const { outputs } = await writeSite(guide, dir, { only });
  const names = (await readdir(dir, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(dir, path.join(entry.parentPath, entry.name)).replaceAll(path.sep, "/"))
    .sort();
  const files = new Map<string, Buffer>();
  for (const name of names) files.set(name, await readFile(path.join(dir, name)));
  const pages = new Map(
    [...files]
      .filter(([name]) => name.endsWith(".html"))
      .map(([name, bytes]) => [name, bytes.toString("utf8")]),
  );
  return { dir, files, pages, outputs, remove: () => rm(dir, { recursive: true, force: true }) };
}

/** The page at an address. @throws when there is none */
export function pageOf(site: BuiltSite, address: string): string {
  const page = site.pages.get(address);
  if (page === undefined) throw new Error(`no page at ${address}`);
  return page;
}
