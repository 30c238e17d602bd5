import { spawnSync } from "node:child_process";
import { existsSync, renameSync, statSync } from "node:fs";
import { cp, lstat, mkdir, open, readdir, readFile, realpath, rename, rm } from "node:fs/promises";
import path from "node:path";
import { ADDRESS } from "../model/addresses.ts";
import { OutputHeld, type OutputLock, takeLock } from "./output-lock.ts";

/** More at once is no faster: the disk writes them together. */
const AT_ONCE = 16;

/**
 * Has the disk hold every file below `dir` before anybody relies on it: a machine that loses its power after a rename
 * may otherwise find the new names with empty files. Costs about 0.2 ms a file on a solid-state disk. A file that has
 * another name besides was taken over from the last guide, and the disk holds it already.
 * @throws a system error, such as a disk found full only now
 */
async function flushFiles(dir: string): Promise<void> {
  const entries = await readdir(dir, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile()).values();
  const worker = async (): Promise<void> => {
    for (const { parentPath, name } of files) {
      const whole = path.join(parentPath, name);
      if ((await lstat(whole)).nlink > 1) continue;
      const file = await open(whole, "r+");
      try {
        await file.sync();
      } finally {
        await file.close();
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
}

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
function swapFolders(next: string, out: string, last: string): void {
  if (!existsSync(out)) renameSync(next, out);
  else if (!exchanged(next, out)) {
    renameSync(out, last);
    renameSync(next, out);
  }
}

/** The output could not be written; what was published before is untouched. */
export class PublishError extends Error {
  override readonly name = "PublishError";
}

/** How long a build waits for another one into the same folder. */
const LOCK_TIMEOUT_MS = 15_000;

/** True for a folder that an earlier run of this program published. */
async function isEarlierGuide(dir: string): Promise<boolean> {
  try {
    const head = (await readFile(path.join(dir, ADDRESS.data), "utf8")).slice(0, 200);
    return head.includes('"name":"lake-season-guide"');
  } catch {
    return false;
  }
}

async function refuseForeignFolder(outDir: string): Promise<void> {
  if (!existsSync(outDir) || (await readdir(outDir)).length === 0 || (await isEarlierGuide(outDir))) return;
  throw new PublishError(
    `${outDir} holds files that are not a guide, and publishing would replace them. Give an empty or a new folder with --out.`,
  );
}

async function refuseNothingToKeep(outDir: string): Promise<void> {
  if (!(await isEarlierGuide(outDir)))
    throw new PublishError(`${outDir} holds no guide yet: build the whole guide first, without --only.`);
}

/**
 * What stands beside the output, on its disk, while a guide is published: the next guide being written, the last one
 * during the swap, what is being deleted, and the lock of the build that does it.
 */
const siblingPaths = (outDir: string) => {
  const hidden = (kind: string): string =>
    path.join(path.dirname(outDir), `.${path.basename(outDir)}.${kind}`);
  return { next: hidden("next"), last: hidden("last"), trash: hidden("trash"), lock: hidden("lock") };
};

const removed = (dir: string): Promise<void> => rm(dir, { recursive: true, force: true, maxRetries: 3 });

/** Mends what a stopped run left: puts the last guide back if the swap was cut in two, and clears the rest. */
async function recoverLeftovers(outDir: string): Promise<void> {
  const { next, last, trash } = siblingPaths(outDir);
  if (!existsSync(outDir) && existsSync(last)) await rename(last, outDir);
  for (const leftover of [next, last]) {
    await removed(trash);
    // Away under another name first: an exchange that the stopped run had still asked for then finds nothing to take.
    if (existsSync(leftover)) await rename(leftover, trash);
  }
  await removed(trash);
}

/** The folder itself, where `outDir` is a link to it. */
const behindLinks = (outDir: string): Promise<string> => realpath(outDir).catch(() => path.resolve(outDir));

async function swapIn(
  outDir: string,
  keep: boolean,
  write: (stagingDir: string) => Promise<boolean>,
  lock: OutputLock,
): Promise<boolean> {
  const { next, last } = siblingPaths(outDir);
  await recoverLeftovers(outDir);
  await refuseForeignFolder(outDir);
  if (keep) await refuseNothingToKeep(outDir);
  try {
    await mkdir(next);
    if (keep) await cp(outDir, next, { recursive: true });
    if (!(await write(next))) return false;
    await flushFiles(next);
    if (!lock.isHeld()) throw new PublishError(`another build took ${outDir} over: run the command again.`);
    swapFolders(next, outDir, last);
    return true;
  } finally {
    // What cannot be deleted now, because somebody reads it, is deleted by the next run.
    await recoverLeftovers(outDir).catch(() => undefined);
  }
}

/** What the system's commonest refusals mean to whoever runs the command. */
const REFUSALS: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "that disk can only be read",
};

/** The system's refusal that an error, or one that it was made from, speaks of. */
function systemErrorIn(error: unknown): NodeJS.ErrnoException | undefined {
  if (!(error instanceof Error)) return undefined;
  if ("errno" in error) return error as NodeJS.ErrnoException;
  return systemErrorIn("originalError" in error ? error.originalError : error.cause);
}

function inWords(outDir: string, error: unknown): unknown {
  if (error instanceof OutputHeld)
    return new PublishError(`cannot write ${outDir}: ${error.message}.`, { cause: error });
  const refusal = systemErrorIn(error);
  if (refusal === undefined) return error;
  const meaning = REFUSALS[refusal.code ?? ""];
  return new PublishError(
    `cannot write ${outDir}: ${meaning === undefined ? "" : `${meaning}: `}${refusal.message}. What was published before is as it was.`,
    { cause: error },
  );
}

/**
 * Mends what a stopped run left beside the output, unless another build is at work there. Never fails: what hinders it
 * is said when publishing.
 */
export async function recoverOutput(outDir: string): Promise<void> {
  const folder = await behindLinks(outDir);
  if (!Object.values(siblingPaths(folder)).some(existsSync)) return;
  try {
    const lock = await takeLock(siblingPaths(folder).lock, 0);
    try {
      await recoverLeftovers(folder);
    } finally {
      lock.release();
    }
  } catch {
    return;
  }
}

/**
 * Writes a whole guide beside the published one and swaps it in when `write` succeeded. At every moment, also when
 * the process is killed, the disk fills or the power fails, `outDir` is one whole guide, the old or the new; see
 * {@link swapFolders} for the one exception where the system cannot exchange folders. A second build into the same
 * folder waits for the first one.
 * @param keep start from a copy of what is published, to replace a part of it
 * @param write fills the folder it is given; false leaves the published guide as it was
 * @param patience_ms how long to wait for another build
 * @returns what `write` returned
 * @throws PublishError when the output cannot be written; what `write` throws
 */
export async function publish(
  outDir: string,
  keep: boolean,
  write: (stagingDir: string) => Promise<boolean>,
  patience_ms = LOCK_TIMEOUT_MS,
): Promise<boolean> {
  const folder = await behindLinks(outDir);
  try {
    await mkdir(path.dirname(folder), { recursive: true });
    const lock = await takeLock(siblingPaths(folder).lock, patience_ms);
    try {
      return await swapIn(folder, keep, write, lock);
    } finally {
      lock.release();
    }
  } catch (error) {
    throw inWords(outDir, error);
  }
}
