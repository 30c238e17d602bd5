import { readdirSync } from "node:fs";
import path from "node:path";
import { hashOf } from "./hashes.ts";

/** Every file of a folder with the hash of its bytes, every folder within it, in a fixed order. */
export type Fingerprint = readonly (readonly [file: string, sha256: string])[];

const FOLDER = "folder";

/**
 * Reads a whole folder.
 * @param hash of a file, by its whole path and by its path inside the folder
 * @param counts whether a file or folder of this name counts; all do unless said
 * @throws when something cannot be read, or is neither a file nor a folder: what a link leads to is not followed
 */
export function fingerprintOf(
  dir: string,
  hash: (whole: string, file: string) => string = hashOf,
  counts = (_name: string): boolean => true,
): Fingerprint {
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
