import { mkdir, mkdtemp, readdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";

export interface TinyClubs {
  readonly dir: string;
  readonly old: string;
  readonly new: string;
}

const LAKE = `name: Ember Lake
position: { lat: 41.312, lon: -106.291 }
elevation: 2580 m
depth: { max: 9 m }
iceOff:
  - { season: 2023, on: 2023-05-14 }
  - { season: 2024, on: 2024-05-09 }
  - { season: 2025, on: 2025-05-11 }
`;
const REPORTS = "- { lake: ember, date: 2026-05-12, ice: off, phase: ice-off }\n";

/** One lake without a shape: built in a second. */
async function writeTinyClub(dir: string, name: string): Promise<void> {
  const files = {
    "club.yaml": `name: ${name}\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Denver\nunits: imperial\n`,
    "lakes/ember.yaml": LAKE,
    "reports/2026.yaml": REPORTS,
  };
  for (const [file, text] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(dir, file)), { recursive: true });
    await writeFile(path.join(dir, file), text);
  }
}

/** A new folder with two clubs of one lake each that differ in the club's name, which stands on every page and card. */
export async function tinyClubs(): Promise<TinyClubs> {
  const dir = await mkdtemp(path.join(tmpdir(), "faults-"));
  const clubs = { dir, old: path.join(dir, "old"), new: path.join(dir, "new") };
  await writeTinyClub(clubs.old, "Old club");
  await writeTinyClub(clubs.new, "New club");
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
