import { readdirSync, realpathSync } from "node:fs";
import path from "node:path";
import { isStoredName } from "../incremental/store.ts";
import type { GuideRequest } from "../incremental/up-to-date.ts";

/** Where a path leads, links followed as far as it exists. */
function realPlace(file: string): string {
  const whole = path.resolve(file);
  try {
    return realpathSync(whole);
  } catch {
    const parent = path.dirname(whole);
    return parent === whole ? whole : path.join(realPlace(parent), path.basename(whole));
  }
}

/** True where `inner` is `outer` or lies in it. */
function contains(outer: string, inner: string): boolean {
  const way = path.relative(realPlace(outer), realPlace(inner));
  return way !== ".." && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}

function refusedCache(dataDir: string, cache: string): string | undefined {
  if (contains(dataDir, cache))
    return `${cache} is in the club folder ${dataDir}: give a folder elsewhere with --cache.`;
  let names: readonly string[];
  try {
    names = readdirSync(cache);
  } catch {
    return undefined; // nothing there yet, or nothing can be kept there
  }
  const foreign = names.find((name) => !isStoredName(name));
  return foreign === undefined
    ? undefined
    : `${cache} holds files that are no results of this program, such as ${foreign}: give an empty or a new folder with --cache.`;
}

async function refusedZip(dataDir: string, zipFile: string): Promise<string | undefined> {
  if (contains(dataDir, zipFile))
    return `${zipFile} is in the club folder ${dataDir}: give a place elsewhere with --zip.`;
  const { isForeignFile } = await import("../site/zip.ts");
  return (await isForeignFile(zipFile))
    ? `${zipFile} is not an archive of this program, and would be replaced: give another name with --zip.`
    : undefined;
}

/** Why a command may not write where it was asked to; undefined when it may. Nothing of the club has been read yet. */
export async function refusedPlace(
  { dataDir, outDir, cache }: Pick<GuideRequest, "dataDir" | "cache"> & { readonly outDir?: string },
  zipFile?: string,
): Promise<string | undefined> {
  if (outDir !== undefined && (contains(dataDir, outDir) || contains(outDir, dataDir)))
    return `the club folder ${dataDir} and the output ${outDir} lie one in the other, and publishing would replace files of the club: give a folder elsewhere with --out.`;
  const refused = typeof cache === "string" ? refusedCache(dataDir, cache) : undefined;
  return refused ?? (zipFile === undefined ? undefined : refusedZip(dataDir, zipFile));
}
