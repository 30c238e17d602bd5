import { type BigIntStats, lstatSync } from "node:fs";
import type { FileStamp } from "../model/memoize.ts";

/** File systems keep time in steps of up to two seconds (FAT): a file written within one may change again under the same time. */
const SETTLED_MS = 2500n;

function statOf(file: string): BigIntStats | undefined {
  try {
    const found = lstatSync(file, { bigint: true });
    return found.isFile() ? found : undefined;
  } catch {
    return undefined;
  }
}

/** True where the time is long enough ago, by this machine's clock. */
const isSettled = (time_ms: bigint): boolean => BigInt(Date.now()) - time_ms > SETTLED_MS;

/** The stamp of a plain file that others may change: any change of its bytes, name or rights gives another one. */
export const fileStamp: FileStamp = (file) => {
  const found = statOf(file);
  if (found === undefined || !isSettled(found.mtimeMs) || !isSettled(found.ctimeMs)) return undefined;
  return [found.dev, found.ino, found.size, found.mtimeNs, found.ctimeNs].join(" ");
};

/** The stamp of a file that only this program writes, and never into: the same before and after it is published. */
export const ownFileStamp: FileStamp = (file) => {
  const found = statOf(file);
  return found && [found.dev, found.ino, found.size, found.mtimeNs].join(" ");
};
