import { type BigIntStats, lstatSync } from "node:fs";

/** File systems tell time in steps of up to two seconds (FAT): what was written within one may change again under the same time. */
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

/** The mark of a plain file that others may change: any change of its bytes, name or rights makes another one. */
export function markOf(file: string): string | undefined {
  const found = statOf(file);
  if (found === undefined || !isSettled(found.mtimeMs) || !isSettled(found.ctimeMs)) return undefined;
  return [found.dev, found.ino, found.size, found.mtimeNs, found.ctimeNs].join(" ");
}
