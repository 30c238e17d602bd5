import { copyFileSync, linkSync, mkdirSync } from "node:fs";
import path from "node:path";
import { ADDRESS } from "../model/addresses.ts";
import type { Inputs } from "../model/memoize.ts";
import type { Cache } from "./cache.ts";
import { type FolderHash, fileHash, folderHash } from "./file-hash.ts";
import { ownFileStamp } from "./file-stamp.ts";

/** Files of the last guide. */
export interface LastOutputs {
  /**
   * Puts the last guide's files into the new one when they were made from the same inputs and stand as they were made.
   * @param kind what is made; two ways to make a file never share a kind
   * @param addresses inside the guide
   * @returns false when they must be made
   */
  reuse(kind: string, inputs: Inputs, addresses: readonly string[]): boolean;
}

/** No guide was made before. */
export const noOutputs: LastOutputs = { reuse: () => false };

/** Each file of a guide, the hash of the inputs it was made from, and the hash of its bytes. */
export type Outputs = readonly (readonly [address: string, inputHash: string, sha256: string])[];

/** What the outputs of a guide are kept as, under the absolute path of its folder. */
export const OUTPUTS = "outputs of the last guide";

interface OutputsInProgress extends LastOutputs {
  /** Keeps the list of the new guide's outputs. @returns every file of the new guide but for its file list, with its hash */
  keep(): FolderHash;
}

/** A second name for a file, where the disk can give one; else a copy. */
function linkOrCopy(file: string, target: string): void {
  mkdirSync(path.dirname(target), { recursive: true });
  try {
    linkSync(file, target);
  } catch {
    copyFileSync(file, target);
  }
}

/**
 * The files that stand in the output folder, for a new guide to reuse. A file counts only while its bytes are those that
 * this program made: what was edited, cut short or lost is made anew.
 * @param outDir where the last guide is published; its absolute path
 * @param nextDir where the new one is written
 */
export function openOutputs(outDir: string, nextDir: string, cache: Cache): OutputsInProgress {
  const last = new Map(
    ((cache.recall(OUTPUTS, outDir) ?? []) as Outputs).map(([address, ...made]) => [address, made] as const),
  );
  const inputHashes = new Map<string, string>();
  const reused = new Map<string, string>();
  /** The hash of a published file; a process that wrote it itself need not read it while its stamp is the same. */
  const hashAt = (address: string): string | undefined => {
    const file = path.join(outDir, address);
    const stamp = ownFileStamp(file);
    try {
      return stamp === undefined
        ? undefined
        : cache.memoizeLast(`published ${file}`, [stamp], () => fileHash(file));
    } catch {
      return undefined;
    }
  };
  return {
    reuse(kind, inputs, addresses) {
      const inputHash = cache.inputHash(kind, inputs);
      for (const address of addresses) inputHashes.set(address, inputHash);
      const standing: [string, string][] = [];
      for (const address of addresses) {
        const [lastHash, sha256] = last.get(address) ?? [];
        if (lastHash !== inputHash || sha256 === undefined || hashAt(address) !== sha256) return false;
        standing.push([address, sha256]);
      }
      for (const [address, sha256] of standing) {
        linkOrCopy(path.join(outDir, address), path.join(nextDir, address));
        reused.set(address, sha256);
      }
      return true;
    },
    keep() {
      const files = folderHash(
        nextDir,
        (absolute, address) => reused.get(address) ?? fileHash(absolute),
        (name) => name !== ADDRESS.fileList,
      );
      const outputs: Outputs = files.flatMap(([address, sha256]) => {
        const inputHash = inputHashes.get(address);
        return inputHash === undefined ? [] : [[address, inputHash, sha256] as const];
      });
      cache.keep(OUTPUTS, outDir, outputs);
      return files;
    },
  };
}
