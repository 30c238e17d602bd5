import { spawnSync } from "node:child_process";
import { existsSync, renameSync, statSync } from "node:fs";

/** The number of renameat2(2) in the kernel's table. Source: Linux, syscall_64.tbl (x64), asm-generic/unistd.h (arm64). */
const RENAMEAT2: Readonly<Partial<Record<string, number>>> = { x64: 316, arm64: 276 };
/** AT_FDCWD is -100 (linux/fcntl.h); RENAME_EXCHANGE is 2 (linux/fs.h). */
const EXCHANGE_IN_PERL = "exit(syscall($ARGV[0] + 0, -100, $ARGV[1], -100, $ARGV[2], 2) == 0 ? 0 : 1)";

/**
 * Lets two folders of one disk change places in a single step of the file system, which Node itself cannot ask for.
 * @returns false where that cannot be done: off Linux, without perl, or on a file system that does not know it
 */
function exchanged(one: string, other: string): boolean {
  const call = process.platform === "linux" ? RENAMEAT2[process.arch] : undefined;
  if (call === undefined) return false;
  const before = statSync(one).ino;
  spawnSync("perl", ["-e", EXCHANGE_IN_PERL, String(call), one, other], { stdio: "ignore" });
  return statSync(other).ino === before;
}

/**
 * Puts the folder `next` in the place of `out`. Where both can be exchanged there is no moment without a whole `out`,
 * and the old one is then at `next`. Elsewhere it waits at `last` between two renames that follow each other at once:
 * for some ten microseconds nothing is at `out`, and a process or machine that stops just there leaves it so until
 * the next run puts `last` back.
 * @throws a system error; then `out` is as it was, or waits at `last`
 */
export function swapFolders(next: string, out: string, last: string): void {
  if (!existsSync(out)) renameSync(next, out);
  else if (!exchanged(next, out)) {
    renameSync(out, last);
    renameSync(next, out);
  }
}
