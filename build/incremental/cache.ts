import { createHash } from "node:crypto";
import { homedir } from "node:os";
import path from "node:path";
import {
  type FileStamp,
  type Inputs,
  type Memoize,
  type MemoizeLast,
  unmemoized,
  unmemoizedLast,
} from "../model/memoize.ts";
import { programIdentity } from "../program/program-identity.ts";
import { cacheFolder } from "./cache-folder.ts";
import { type FileHash, fileHash, openFileHash } from "./file-hash.ts";
import { fileStamp } from "./file-stamp.ts";
import { type InputHash, openInputHash } from "./input-hash.ts";
import { openStore } from "./store.ts";

/** A thousand lakes and their past seasons take about a fifth of it. */
const MOST_BYTES = 200_000_000;

/** Results of earlier runs. */
export interface Cache {
  /** False where nothing is kept. */
  readonly keeps: boolean;
  readonly memoize: Memoize;
  /** What was kept under these inputs; undefined when nothing was. */
  recall(kind: string, inputs: unknown): unknown;
  /** Whether something is kept under these inputs, readable or not. */
  has(kind: string, inputs: unknown): boolean;
  /** Keeps plain data until it is recalled. */
  keep(kind: string, inputs: unknown, value: unknown): void;
  /** Call it when a run is over: keeps the cache within its bounds. */
  close(): void;
  readonly inputHash: InputHash;
  /** Hashes files of the club folder. */
  readonly fileHash: FileHash;
  /** Keeps results in memory; a process that builds once keeps none. */
  readonly memoizeLast: MemoizeLast;
  readonly fileStamp: FileStamp;
}

/** A process that builds once sees nothing twice. */
const forOneRun = (): Pick<Cache, "inputHash" | "fileHash" | "memoizeLast" | "fileStamp"> => ({
  inputHash: openInputHash(),
  fileHash,
  memoizeLast: unmemoizedLast,
  fileStamp: () => undefined,
});

export interface CacheOptions {
  /** Names the program; another program meets none of its results. */
  readonly identity: string;
  readonly most_bytes?: number;
}

const noCache = (): Cache => ({
  ...forOneRun(),
  memoize: unmemoized,
  keeps: false,
  recall: () => undefined,
  has: () => false,
  keep: () => {},
  close: () => {},
});

/** The key of a result. Inputs that differ only in the order of their keys are different: that costs time, never truth. */
const keyOf = (identity: string, kind: string, inputs: unknown): string =>
  createHash("sha256")
    .update(JSON.stringify([identity, kind, inputs]))
    .digest("hex");

/** Results kept in a folder, by the hash of all they depend on. What cannot be read is made anew, what cannot be written is not kept. */
export function cacheIn(dir: string, { identity, most_bytes = MOST_BYTES }: CacheOptions): Cache {
  const store = openStore(dir);
  let hasGrown = false;
  const put = (key: string, value: unknown): void => {
    store.put(key, value);
    hasGrown = true;
  };
  return {
    ...forOneRun(),
    memoize: <In, Result>(kind: string, inputs: In, compute: (inputs: In) => Result): Result => {
      const key = keyOf(identity, kind, inputs);
      const kept = store.get(key);
      if (kept !== undefined) return kept.value as Result;
      const result = compute(inputs);
      put(key, result);
      return result;
    },
    keeps: true,
    has: (kind, inputs) => store.has(keyOf(identity, kind, inputs)),
    recall: (kind, inputs) => store.get(keyOf(identity, kind, inputs))?.value,
    keep: (kind, inputs, value) => put(keyOf(identity, kind, inputs), value),
    close: () => {
      if (hasGrown) store.trim(most_bytes);
      hasGrown = false;
    },
  };
}

/** The user's home; an account without one has no cache. */
function home(): string {
  try {
    return homedir();
  } catch {
    return "";
  }
}

/** @param wanted the folder to keep results in; false to keep none; undefined for the operating system's cache folder */
export function openCache(wanted: string | false | undefined): Cache {
  if (wanted === false) return noCache();
  const dir =
    wanted === undefined
      ? cacheFolder({ platform: process.platform, env: process.env, home: home() })
      : path.resolve(wanted);
  if (dir === undefined) return noCache();
  try {
    return cacheIn(dir, { identity: programIdentity() });
  } catch {
    return noCache();
  }
}

/** Begins to keep the last result of each name. */
export function openMemoizeLast(): MemoizeLast {
  const last = new Map<string, { readonly inputs: readonly unknown[]; readonly result: unknown }>();
  return <Result>(name: string, inputs: readonly unknown[], compute: () => Result): Result => {
    const known = last.get(name);
    if (
      known?.inputs.length === inputs.length &&
      inputs.every((input, i) => Object.is(input, known.inputs[i]))
    )
      return known.result as Result;
    const result = compute();
    last.set(name, { inputs, result });
    return result;
  };
}

/**
 * A cache for a process that builds one guide after another: it keeps what it found or made in memory too, and returns
 * the very same objects, which are then recognised without hashing. Nothing it returns may be changed.
 */
export function inMemory(cache: Cache): Cache {
  const { inputHash } = cache;
  let recent = new Map<string, unknown>();
  let older = new Map<string, unknown>();
  const memoize: Memoize = <In, Result>(
    kind: string,
    inputs: In,
    compute: (inputs: In) => Result,
  ): Result => {
    const key = inputHash(kind, inputs as Inputs);
    const known = recent.has(key) ? recent : older;
    const result = known.has(key) ? (known.get(key) as Result) : cache.memoize(kind, inputs, compute);
    recent.set(key, result);
    return result;
  };
  return {
    ...cache,
    memoize,
    memoizeLast: openMemoizeLast(),
    fileStamp,
    fileHash: openFileHash(fileStamp),
    close: () => {
      // What two runs did not use is forgotten.
      older = recent;
      recent = new Map();
      cache.close();
    },
  };
}
