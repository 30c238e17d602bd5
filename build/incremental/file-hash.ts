import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { FileStamp } from "../model/memoize.ts";

/** The hash of a file's bytes. @throws a system error when it cannot be read */
export type FileHash = (file: string) => string;

/** Reads every file. */
export const fileHash: FileHash = (file) => createHash("sha256").update(readFileSync(file)).digest("hex");

/** Reads a file again only when its stamp is another. */
export function openFileHash(stampOf: FileStamp): FileHash {
  const known = new Map<string, { readonly stamp: string; readonly hash: string }>();
  return (file) => {
    const stamp = stampOf(file);
    const last = known.get(file);
    if (stamp !== undefined && last?.stamp === stamp) return last.hash;
    const hash = fileHash(file);
    if (stamp === undefined) known.delete(file);
    else known.set(file, { stamp, hash });
    return hash;
  };
}

/** Every file of a folder with the hash of its bytes, every folder within it, in a fixed order. */
export type FolderHash = readonly (readonly [file: string, sha256: string])[];

/** Stands for the hash of a folder. */
export const FOLDER = "folder";

/**
 * Reads a whole folder.
 * @param hash of a file, by its absolute path and by its path inside the folder
 * @param counts whether a file or folder of this name counts; all do by default
 * @throws when something cannot be read, or is neither a file nor a folder: links are not followed
 */
export function folderHash(
  dir: string,
  hash: (absolute: string, file: string) => string = fileHash,
  counts = (_name: string): boolean => true,
): FolderHash {
  const walk = (folder: string): (readonly [string, string])[] =>
    readdirSync(path.join(dir, folder), { withFileTypes: true })
      .filter(({ name }) => counts(name))
      .flatMap((entry) => {
        const file = path.posix.join(folder, entry.name);
        if (entry.isDirectory()) return [[file, FOLDER] as const, ...walk(file)];
        if (!entry.isFile()) throw new Error(`${file} is neither a file nor a folder`);
        return [[file, hash(path.join(dir, file), file)] as const];
      });
  return walk("").sort(([one], [other]) => (one < other ? -1 : 1));
}

/** Hidden files, a version history for one, are never read. */
export const isRead = (name: string): boolean => !name.startsWith(".");

/** The club folder as it stands; undefined where it cannot be read, which the loader then reports. */
export function clubFolderHash(dataDir: string, hash: FileHash = fileHash): FolderHash | undefined {
  try {
    return folderHash(dataDir, hash, isRead);
  } catch {
    return undefined;
  }
}
