import { spawnSync } from "node:child_process";
import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";

const mounted = (dir: string, options: string): boolean =>
  spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", dir]).status === 0;
const unmount = (dir: string): void => {
  spawnSync("umount", [dir]);
  rmdirSync(dir);
};

/** True where file systems may be mounted: Linux, as root. */
export function canMount(): boolean {
  if (process.platform !== "linux") return false;
  const dir = mkdtempSync(path.join(tmpdir(), "mount-"));
  const could = mounted(dir, "size=64k");
  unmount(dir);
  return could;
}

/** A file system of its own while `use` works on it. `options`: tmpfs(5), such as size=900k or nr_inodes=40. */
export async function onSmallDisk<T>(options: string, use: (dir: string) => Promise<T>): Promise<T> {
  const dir = mkdtempSync(path.join(tmpdir(), "disk-"));
  if (!mounted(dir, options)) throw new Error("a small file system cannot be mounted here");
  try {
    return await use(dir);
  } finally {
    unmount(dir);
  }
}

/** The same file system, from now on only readable. */
export function makeReadOnly(dir: string): void {
  if (spawnSync("mount", ["-o", "remount,ro", dir]).status !== 0)
    throw new Error("cannot be made read-only here");
}
