import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { MarkOf } from "../model/again.ts";

/** The hash of a file's bytes. @throws a system error when it cannot be read */
export type HashOf = (file: string) => string;

/** Reads every file. */
export const hashOf: HashOf = (file) => createHash("sha256").update(readFileSync(file)).digest("hex");

/** Reads a file again only when it is not what it was. */
export function openHashes(markOf: MarkOf): HashOf {
  const known = new Map<string, { readonly mark: string; readonly hash: string }>();
  return (file) => {
    const mark = markOf(file);
    const last = known.get(file);
    if (mark !== undefined && last?.mark === mark) return last.hash;
    const hash = hashOf(file);
    if (mark === undefined) known.delete(file);
    else known.set(file, { mark, hash });
    return hash;
  };
}
