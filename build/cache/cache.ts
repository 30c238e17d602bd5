import { createHash } from "node:crypto";
import { homedir } from "node:os";
import path from "node:path";
import { type Again, type MarkOf, makeAnew } from "../model/again.ts";
import { computeAlways, type Remember } from "../model/remember.ts";
import { type Digest, openDigest } from "./digest.ts";
import { sealed, unsealed } from "./entry.ts";
import { type HashOf, hashOf } from "./hashes.ts";
import { programIdentity } from "./identity.ts";
import { cacheFolder } from "./place.ts";
import { openStore } from "./store.ts";

/** A thousand lakes and their past seasons take about a fifth of it. */
const MOST_BYTES = 200_000_000;

/** Results of earlier runs. */
export interface Cache {
  /** False where nothing is kept. */
  readonly keeps: boolean;
  readonly remember: Remember;
  /** What was kept under these needs; undefined when nothing was. */
  recall(kind: string, needs: unknown): unknown;
  /** Whether something is kept under these needs, read or not. */
  has(kind: string, needs: unknown): boolean;
  /** Keeps plain data until it is recalled. */
  keep(kind: string, needs: unknown, value: unknown): void;
  /** Names needs by what they hold. */
  readonly digest: Digest;
  /** Hashes files of the club folder. */
  readonly hashes: HashOf;
  /** What keeps parts in memory; nothing does in a process that builds once. */
  readonly again: Again;
  readonly markOf: MarkOf;
  /** Call it when a run is over: keeps the cache within its bounds. */
  close(): void;
}

/** A process that builds once sees nothing twice. */
const inOneRun = (): Pick<Cache, "digest" | "hashes" | "again" | "markOf"> => ({
  digest: openDigest(),
  hashes: hashOf,
  again: makeAnew,
  markOf: () => undefined,
});

export interface CacheOptions {
  /** Names the program; another program meets none of its results. */
  readonly identity: string;
  readonly most_bytes?: number;
}

const noCache = (): Cache => ({
  ...inOneRun(),
  remember: computeAlways,
  keeps: false,
  recall: () => undefined,
  has: () => false,
  keep: () => {},
  close: () => {},
});

/** The key of a result. Needs that differ only in the order of their keys are different: that costs time, never truth. */
const keyOf = (identity: string, kind: string, needs: unknown): string =>
  createHash("sha256")
    .update(JSON.stringify([identity, kind, needs]))
    .digest("hex");

/** Results kept in a folder, by the hash of all they depend on. What cannot be read is made anew, what cannot be written is not kept. */
export function cacheIn(dir: string, { identity, most_bytes = MOST_BYTES }: CacheOptions): Cache {
  const store = openStore(dir, Date.now);
  let hasGrown = false;
  const read = (key: string): { readonly value: unknown } | undefined => {
    const entry = store.get(key);
    return entry === undefined ? undefined : unsealed(key, entry);
  };
  const write = (key: string, value: unknown): void => {
    store.put(key, sealed(key, value));
    hasGrown = true;
  };
  return {
    ...inOneRun(),
    remember: <Needs, Result>(kind: string, needs: Needs, compute: (needs: Needs) => Result): Result => {
      const key = keyOf(identity, kind, needs);
      const kept = read(key);
      if (kept !== undefined) return kept.value as Result;
      const result = compute(needs);
      write(key, result);
      return result;
    },
    keeps: true,
    has: (kind, needs) => store.has(keyOf(identity, kind, needs)),
    recall: (kind, needs) => read(keyOf(identity, kind, needs))?.value,
    keep: (kind, needs, value) => write(keyOf(identity, kind, needs), value),
    close: () => {
      if (hasGrown) store.trim(most_bytes);
      hasGrown = false;
    },
  };
}

/** Taken once a run: the program in memory stays the one that was started, whatever happens to its sources. */
let ownIdentity: string | undefined;

/** The user's home; an account without one has no cache. */
function home(): string {
  try {
    return homedir();
  } catch {
    return "";
  }
}

/** @param asked the folder to keep results in; false to keep none; undefined for where the operating system keeps such things */
export function openCache(asked: string | false | undefined): Cache {
  if (asked === false) return noCache();
  const dir =
    asked === undefined
      ? cacheFolder({ platform: process.platform, env: process.env, home: home() })
      : path.resolve(asked);
  if (dir === undefined) return noCache();
  try {
    ownIdentity ??= programIdentity();
  } catch {
    return noCache();
  }
  return cacheIn(dir, { identity: ownIdentity });
}
