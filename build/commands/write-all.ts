import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import type { ScaffoldFile } from "../load/scaffold.ts";

/** Writes files below a folder, or where their own full path leads, making the folders they lie in. */
export async function writeAll(root: string, files: readonly ScaffoldFile[]): Promise<void> {
  for (const { path: relative, text } of files) {
    const file = path.resolve(root, relative);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}
