import { mkdir, open, readFile, realpath, rename, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import type { ScaffoldFile } from "./scaffold.ts";

/** Writes files below a folder, or where their own full path leads, making the folders they lie in. */
export async function writeAll(root: string, files: readonly ScaffoldFile[]): Promise<void> {
  for (const { path: relative, text } of files) {
    const file = path.resolve(root, relative);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  }
}

/** A file's text before and after. */
export interface Replacement {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

const BYTE_ORDER_MARK = "\ufeff";

interface Ready {
  readonly target: string;
  readonly next: string;
}

/** Writes the new text beside the file, flushed to the disk. @throws when the file is no longer as it was read */
async function writeBeside({ file, before, after }: Replacement): Promise<Ready> {
  const target = await realpath(file);
  const text = await readFile(target, "utf8");
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
  if (text !== mark + before) throw new Error(`${file} was edited meanwhile`);
  const next = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.part`);
  const handle = await open(next, "wx", (await stat(target)).mode);
  try {
    await handle.writeFile(mark + after);
    await handle.sync();
  } finally {
    await handle.close();
  }
  return { target, next };
}

/**
 * Replaces files by new texts. Nothing is replaced until every text is written beside its file; each file is then
 * replaced at once, so that whoever reads it finds the old text or the new one whole.
 * @throws when one cannot be written, or was edited since it was read; then every file is as it was
 */
export async function replaceFiles(replacements: readonly Replacement[]): Promise<void> {
  const ready: Ready[] = [];
  try {
    for (const replacement of replacements) ready.push(await writeBeside(replacement));
    for (const { target, next } of ready) await rename(next, target);
  } finally {
    for (const { next } of ready) await rm(next, { force: true });
  }
}
