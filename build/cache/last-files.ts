import { copyFileSync, linkSync, lstatSync, mkdirSync } from "node:fs";
import path from "node:path";
import type { KeptFiles } from "../model/kept-files.ts";
import type { Cache } from "./cache.ts";
import { type Fingerprint, fingerprintOf } from "./fingerprint.ts";
import { hashOf } from "./hashes.ts";

/** Each file of a guide, the name of what it was made of, and the hash of its bytes. */
type Made = readonly (readonly [address: string, madeOf: string, sha256: string])[];

const KIND = "files of the last guide";

export interface LastFiles extends KeptFiles {
  /** Takes note of what the new guide's files were made of. @returns every file of the new guide, with its hash */
  note(): Fingerprint;
}

/**
 * A file of the guide under the name it has before the guide is published and after: what is its own as long as nobody
 * writes into it. Undefined when it is not there, or no plain file.
 */
function ownMark(file: string): string | undefined {
  try {
    const found = lstatSync(file, { bigint: true });
    return found.isFile() ? [found.dev, found.ino, found.size, found.mtimeNs].join(" ") : undefined;
  } catch {
    return undefined;
  }
}

/** A second name for a file, where the disk can give one; else a copy. */
function takeOver(file: string, target: string): void {
  mkdirSync(path.dirname(target), { recursive: true });
  try {
    linkSync(file, target);
  } catch {
    copyFileSync(file, target);
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
  const next = new Map<string, string>();
  const takenOver = new Map<string, string>();
  /** The hash of a standing file; a process that wrote it itself need not read it while it is what it was. */
  const hashAt = (address: string): string | undefined => {
    const file = path.join(outDir, address);
    const mark = ownMark(file);
    try {
      return mark === undefined ? undefined : cache.again(`published ${file}`, [mark], () => hashOf(file));
    } catch {
      return undefined;
    }
  };
  return {
    reuse(kind, needs, addresses) {
      const madeOf = cache.digest(kind, needs);
      for (const address of addresses) next.set(address, madeOf);
      const standing: [string, string][] = [];
      for (const address of addresses) {
        const [lastOf, sha256] = last.get(address) ?? [];
        if (lastOf !== madeOf || sha256 === undefined || hashAt(address) !== sha256) return false;
        standing.push([address, sha256]);
      }
      for (const [address, sha256] of standing) {
        takeOver(path.join(outDir, address), path.join(nextDir, address));
        takenOver.set(address, sha256);
      }
      return true;
    },
    note() {
      const made = fingerprintOf(nextDir, (whole, address) => takenOver.get(address) ?? hashOf(whole));
      const files: Made = made.flatMap(([file, sha256]) => {
        const madeOf = next.get(file);
        return madeOf === undefined ? [] : [[file, madeOf, sha256] as const];
      });
      cache.keep(KIND, outDir, files);
      return made;
    },
  };
}
