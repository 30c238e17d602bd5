import { cp, mkdtemp, readdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { writeSyntheticClub } from "../../build/bench/synthetic-club.ts";

export interface TinyClubs {
  readonly dir: string;
  readonly old: string;
  readonly new: string;
}

/** A new folder with two clubs of one lake each that differ in the club's name, which stands on every page and card. */
export async function tinyClubs(): Promise<TinyClubs> {
  const dir = await mkdtemp(path.join(tmpdir(), "faults-"));
  const clubs = { dir, old: path.join(dir, "old"), new: path.join(dir, "new") };
  await writeSyntheticClub(clubs.old, 1);
  await cp(clubs.old, clubs.new, { recursive: true });
  const file = path.join(clubs.new, "club.yaml");
  await writeFile(file, (await readFile(file, "utf8")).replace("Synthetic", "Changed"));
  return clubs;
}

/** Everything in a folder by its path in it; "" for the folders. */
export async function contentsOf(dir: string): Promise<Record<string, string>> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const all = entries.map(async (entry): Promise<[string, string]> => {
    const file = path.join(entry.parentPath, entry.name);
    return [path.relative(dir, file), entry.isFile() ? await readFile(file, "latin1") : ""];
  });
  return Object.fromEntries((await Promise.all(all)).sort(([a], [b]) => (a < b ? -1 : 1)));
}
