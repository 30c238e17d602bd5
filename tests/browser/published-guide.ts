import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { makeGuide } from "../../build/pipeline.ts";
import { guideOutputs, type Output } from "../../build/site/outputs.ts";
import { loadTemplates, sitePages } from "../../build/site/pages.ts";

/** The demonstration club's guide, published whole: pages, cards and all. */
export interface PublishedGuide {
  readonly dir: string;
  readonly guide: Guide;
  readonly outputs: readonly Output[];
  /** Every file's address, in order. */
  readonly addresses: readonly string[];
  read(address: string): Promise<Buffer>;
  remove(): Promise<void>;
}

/** @throws when it cannot be made */
export async function publishDemo(): Promise<PublishedGuide> {
  const work = await mkdtemp(path.join(tmpdir(), "lake-season-published-"));
  const dir = path.join(work, "site");
  const { guide } = await makeGuide({ dataDir: "demo-data", outDir: dir, version: "0.0.0" });
  if (guide === undefined) throw new Error("demo-data makes no guide");
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const addresses = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => path.relative(dir, path.join(parentPath, name)).replaceAll(path.sep, "/"))
    .sort();
  return {
    dir,
    guide,
    outputs: guideOutputs(guide, sitePages(await loadTemplates(), guide)),
    addresses,
    read: (address) => readFile(path.join(dir, address)),
    remove: () => rm(work, { recursive: true, force: true }),
  };
}
