import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { KeptFiles } from "../model/kept-files.ts";
import type { Cache } from "./cache.ts";
import { openDigest } from "./digest.ts";
import type { Fingerprint } from "./fingerprint.ts";

/** Each file of a guide, the name of what it was made of, and the hash of its bytes. */
type Made = readonly (readonly [address: string, madeOf: string, sha256: string])[];

const KIND = "files of the last guide";

export interface LastFiles extends KeptFiles {
  /** Takes note of what the new guide's files were made of. */
  note(made: Fingerprint): void;
}

function bytesOf(file: string): Buffer | undefined {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

/**
 * The files that stand in the output folder, for a new guide to take over. A file counts only while its bytes are those
 * that this program made: what was edited, cut short or lost is made anew.
 * @param outDir where the last guide is published; its whole path
 * @param nextDir where the new one is written
 */
export function openLastFiles(outDir: string, nextDir: string, cache: Cache): LastFiles {
  const last = new Map(
    ((cache.recall(KIND, outDir) ?? []) as Made).map(([address, ...made]) => [address, made] as const),
  );
  const digest = openDigest();
  const next = new Map<string, string>();
  const standing = (address: string, madeOf: string): Buffer | undefined => {
    const [lastOf, sha256] = last.get(address) ?? [];
    const bytes = lastOf === madeOf ? bytesOf(path.join(outDir, address)) : undefined;
    return bytes !== undefined && createHash("sha256").update(bytes).digest("hex") === sha256
      ? bytes
      : undefined;
  };
  return {
    reuse(kind, needs, addresses) {
      const madeOf = digest(kind, needs);
      for (const address of addresses) next.set(address, madeOf);
      const files: (readonly [string, Buffer])[] = [];
      for (const address of addresses) {
        const bytes = standing(address, madeOf);
        if (bytes === undefined) return false;
        files.push([path.join(nextDir, address), bytes]);
      }
      for (const [file, bytes] of files) {
        mkdirSync(path.dirname(file), { recursive: true });
        writeFileSync(file, bytes);
      }
      return true;
    },
    note(made) {
      const files: Made = made.flatMap(([file, sha256]) => {
        const madeOf = next.get(file);
        return madeOf === undefined ? [] : [[file, madeOf, sha256] as const];
      });
      cache.keep(KIND, outDir, files);
    },
  };
}
