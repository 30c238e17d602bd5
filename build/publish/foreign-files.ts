import { constants, createReadStream, lstatSync } from "node:fs";
import { link, mkdir, open, readlink, rename, symlink, utimes } from "node:fs/promises";
import path from "node:path";
import { contentsOfGuide } from "./file-list.ts";

const found = (file: string) => lstatSync(file, { throwIfNoEntry: false });

/** Copies a file that cannot have a second name, and has the disk hold it. */
async function copyToDisk(from: string, to: string): Promise<void> {
  const { mode, atime, mtime } = lstatSync(from);
  const file = await open(to, constants.O_CREAT | constants.O_EXCL | constants.O_WRONLY, mode);
  try {
    for await (const chunk of createReadStream(from)) await file.appendFile(chunk as Buffer);
    await file.sync();
  } finally {
    await file.close();
  }
  await utimes(to, atime, mtime);
}

/** A second name for a file or a link. @throws a system error; EXDEV where it lies on another disk */
async function linkOrCopy(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    const entry = lstatSync(from);
    if ((error as NodeJS.ErrnoException).code === "EXDEV") throw error;
    if (entry.isSymbolicLink()) await symlink(await readlink(from), to);
    else if (entry.isFile()) await copyToDisk(from, to);
    else throw error;
  }
}

/**
 * Gives the next guide all that somebody else put among the files of the published one: second names of the same
 * files, so that nothing is copied and a change under either name is kept.
 * @returns the address of what stands where the next guide has a file; then nothing may be published
 * @throws a system error
 */
export async function carryOver(outDir: string, nextDir: string): Promise<string | undefined> {
  for (const { address, isFolder } of contentsOfGuide(outDir)?.foreign ?? []) {
    const [from, to] = [path.join(outDir, address), path.join(nextDir, address)];
    const standing = found(to);
    if (isFolder) {
      if (standing?.isDirectory() === false) return address;
      // Whoever removes the folder later must be able to.
      if (standing === undefined) await mkdir(to, { recursive: true, mode: lstatSync(from).mode | 0o700 });
    } else {
      if (standing !== undefined || found(path.dirname(to))?.isDirectory() === false) return address;
      await mkdir(path.dirname(to), { recursive: true });
      await linkOrCopy(from, to);
    }
  }
  return undefined;
}

/** Moves what somebody put into the last guide's folder while the next was published, or replaced there, to the published one. */
export async function bringHome(lastDir: string, outDir: string): Promise<void> {
  const last = contentsOfGuide(lastDir);
  const now = contentsOfGuide(outDir);
  if (last === undefined || now === undefined) return;
  const own = new Set(now.own);
  for (const { address, isFolder } of last.foreign) {
    const [from, to] = [path.join(lastDir, address), path.join(outDir, address)];
    const standing = found(to);
    if (isFolder) {
      if (standing === undefined) await mkdir(to, { recursive: true });
      continue;
    }
    const entry = lstatSync(from);
    const isNewer =
      standing === undefined || (standing.ino !== entry.ino && entry.mtimeMs > standing.mtimeMs);
    if (!isNewer || own.has(address)) continue;
    await mkdir(path.dirname(to), { recursive: true });
    await rename(from, to);
  }
}
