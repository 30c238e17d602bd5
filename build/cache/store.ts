import { randomUUID } from "node:crypto";
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

/** Files under names, in one folder, of which the least lately used are dropped. Whatever fails is as if it were not there. */
export interface Store {
  /** The file of this name as it was last written. */
  get(name: string): Buffer | undefined;
  /** True where there is such a file. */
  has(name: string): boolean;
  /** Writes the file whole or not at all, also when another run writes it at the same time. */
  put(name: string, bytes: Buffer): void;
  /** Drops the least lately used files until the rest holds no more than `most_bytes`, and what killed runs left. */
  trim(most_bytes: number): void;
}

/** Only files named like this are ever read or removed: the folder may be somebody's own. */
const ENTRY = /^[0-9a-f]{64}\.result$/;
const HALF_WRITTEN = /^[0-9a-f]{64}\.[0-9a-f-]{36}\.part$/;
/** A run that still writes after so long is dead. */
const DEAD_AFTER_MS = 3_600_000;
/** No result is near so large; a file that is was not written by this program. */
const LARGEST_BYTES = 64_000_000;

/** Does what can be done without, and says whether it worked. */
function attempt<T>(action: () => T): T | undefined {
  try {
    return action();
  } catch {
    return undefined;
  }
}

interface Kept {
  readonly file: string;
  readonly size: number;
  readonly used_ms: number;
}

function keptIn(dir: string, wanted: RegExp): Kept[] {
  const names = attempt(() => readdirSync(dir)) ?? [];
  return names
    .filter((name) => wanted.test(name))
    .flatMap((name) => {
      const file = path.join(dir, name);
      const found = attempt(() => lstatSync(file));
      return found?.isFile() ? [{ file, size: found.size, used_ms: found.mtimeMs }] : [];
    });
}

function dropOldest(kept: readonly Kept[], most_bytes: number): void {
  let bytes = kept.reduce((sum, { size }) => sum + size, 0);
  for (const { file, size } of kept.toSorted((a, b) => a.used_ms - b.used_ms)) {
    if (bytes <= most_bytes) return;
    attempt(() => rmSync(file));
    bytes -= size;
  }
}

/**
 * The store in a folder, which is made when the first file is put.
 * @param now_ms the clock, to tell which file was used last
 */
export function openStore(dir: string, now_ms: () => number): Store {
  const fileOf = (key: string): string => path.join(dir, `${key}.result`);
  return {
    get: (key) =>
      attempt(() => {
        const file = fileOf(key);
        const found = lstatSync(file);
        if (!found.isFile() || found.size > LARGEST_BYTES) return undefined;
        const bytes = readFileSync(file);
        attempt(() => utimesSync(file, now_ms() / 1000, now_ms() / 1000));
        return bytes;
      }),
    has: (key) => attempt(() => lstatSync(fileOf(key)).isFile()) ?? false,
    put: (key, bytes) => {
      const half = path.join(dir, `${key}.${randomUUID()}.part`);
      attempt(() => {
        mkdirSync(dir, { recursive: true, mode: 0o700 });
        writeFileSync(half, bytes, { flag: "wx" });
        renameSync(half, fileOf(key));
      });
      attempt(() => rmSync(half, { force: true }));
    },
    trim: (most_bytes) => {
      for (const { file, used_ms } of keptIn(dir, HALF_WRITTEN))
        if (now_ms() - used_ms > DEAD_AFTER_MS) attempt(() => rmSync(file));
      dropOldest(keptIn(dir, ENTRY), most_bytes);
    },
  };
}
