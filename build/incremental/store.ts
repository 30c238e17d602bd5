import { createHash, randomUUID } from "node:crypto";
import {
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { deserialize, serialize } from "node:v8";

/** Values under content hashes, a file each in one folder. Whatever fails is as if it were not there. */
interface Store {
  /** What was put under this key; undefined for nothing, and for a cut, a damaged or another key's file. */
  get(key: string): { readonly value: unknown } | undefined;
  /** True where something is kept under this key, readable or not. */
  has(key: string): boolean;
  /** Keeps plain data. Writes the file whole or not at all, also when another run writes it at the same time. */
  put(key: string, value: unknown): void;
  /** Drops the least recently used files until the rest holds no more than `most_bytes`, and what killed runs left. */
  trim(most_bytes: number): void;
}

/** Only files named like this are ever read or removed: the folder may be somebody's own. */
const ENTRY = /^[0-9a-f]{64}\.result$/;
const HALF_WRITTEN = /^[0-9a-f]{64}\.[0-9a-f-]{36}\.part$/;

/** True for a file that a store may have written. */
export const isStoredName = (name: string): boolean => ENTRY.test(name) || HALF_WRITTEN.test(name);

/** A run that still writes after so long is dead. */
const DEAD_AFTER_MS = 3_600_000;
/** No result is near so large; a file that is was not written by this program. */
const LARGEST_BYTES = 64_000_000;

/** `sha256` of the key and of all that follows, then the value. */
const DIGEST_BYTES = 32;

const digestOf = (key: string, payload: Buffer): Buffer =>
  createHash("sha256").update(key).update("\n").update(payload).digest();

/** A value as it is kept: written so that it reads back the same to the last bit, -0 and all. */
function encoded(key: string, value: unknown): Buffer {
  const payload = serialize(value);
  return Buffer.concat([digestOf(key, payload), payload]);
}

function decoded(key: string, entry: Buffer): { readonly value: unknown } | undefined {
  const payload = entry.subarray(DIGEST_BYTES);
  if (!digestOf(key, payload).equals(entry.subarray(0, DIGEST_BYTES))) return undefined;
  return { value: deserialize(payload) };
}

/** The result of an action that may fail; undefined when it did. */
function attempt<T>(action: () => T): T | undefined {
  try {
    return action();
  } catch {
    return undefined;
  }
}

interface StoredFile {
  readonly file: string;
  readonly size: number;
  readonly used_ms: number;
}

function storedIn(dir: string, wanted: RegExp): StoredFile[] {
  const names = attempt(() => readdirSync(dir)) ?? [];
  return names
    .filter((name) => wanted.test(name))
    .flatMap((name) => {
      const file = path.join(dir, name);
      const found = attempt(() => lstatSync(file));
      return found?.isFile() ? [{ file, size: found.size, used_ms: found.mtimeMs }] : [];
    });
}

function dropOldest(stored: readonly StoredFile[], most_bytes: number): void {
  let bytes = stored.reduce((sum, { size }) => sum + size, 0);
  for (const { file, size } of stored.toSorted((a, b) => a.used_ms - b.used_ms)) {
    if (bytes <= most_bytes) return;
    attempt(() => rmSync(file));
    bytes -= size;
  }
}

/** The store in a folder, which is made when the first value is put. */
export function openStore(dir: string): Store {
  const fileOf = (key: string): string => path.join(dir, `${key}.result`);
  return {
    get: (key) =>
      attempt(() => {
        const file = fileOf(key);
        const found = lstatSync(file);
        if (!found.isFile() || found.size > LARGEST_BYTES) return undefined;
        const bytes = readFileSync(file);
        attempt(() => utimesSync(file, Date.now() / 1000, Date.now() / 1000));
        return decoded(key, bytes);
      }),
    has: (key) => attempt(() => lstatSync(fileOf(key)).isFile()) ?? false,
    put: (key, value) => {
      const entry = encoded(key, value);
      const half = path.join(dir, `${key}.${randomUUID()}.part`);
      attempt(() => {
        mkdirSync(dir, { recursive: true, mode: 0o700 });
        writeFileSync(half, entry, { flag: "wx" });
        renameSync(half, fileOf(key));
      });
      attempt(() => rmSync(half, { force: true }));
    },
    trim: (most_bytes) => {
      for (const { file, used_ms } of storedIn(dir, HALF_WRITTEN))
        if (Date.now() - used_ms > DEAD_AFTER_MS) attempt(() => rmSync(file));
      dropOldest(storedIn(dir, ENTRY), most_bytes);
    },
  };
}
