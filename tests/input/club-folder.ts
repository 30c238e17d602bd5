import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { onTestFinished } from "vitest";

export const CLUB_YAML =
  "name: Test Club\nseason: 2026\nasOf: 2026-05-16\ntimezone: America/Denver\nunits: imperial\n";
export const LAKE_YAML = "name: Ember Lake\nposition: { lat: 41.312, lon: -106.291 }\n";

/** Files by their path in the club folder. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

/** Writes files into a new folder that is gone when the test ends, and returns its path. */
export async function folderOf(files: Files): Promise<string> {
  const dir = await mkdtemp(path.join(tmpdir(), "club-folder-"));
  onTestFinished(() => rm(dir, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(dir, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
  }
  return dir;
}

/** A club with one lake, and files beside or instead of it. */
export const clubFolder = (files: Files = {}): Promise<string> =>
  folderOf({ "club.yaml": CLUB_YAML, "lakes/ember.yaml": LAKE_YAML, ...files });
