import { existsSync, lstatSync } from "node:fs";
import { copyFile, lstat, mkdir, open, readdir, realpath, rename, rm } from "node:fs/promises";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { ADDRESS } from "../model/addresses.ts";
import { beginFileList, contentsOfGuide, finishFileList, isOwnFolder } from "./file-list.ts";
import { bringHome, carryOver } from "./foreign-files.ts";
import { OutputHeld, type OutputLock, takeLock } from "./output-lock.ts";
import { swapFolders } from "./swap-folders.ts";

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

/** The output could not be written; what was published before is untouched. */
export class PublishError extends Error {
  override readonly name = "PublishError";
}

/** How long a build waits for another one into the same folder. */
const LOCK_TIMEOUT_MS = 15_000;

interface PublishOptions {
  /** Start from a copy of what is published, to replace a part of it. */
  readonly keep?: boolean;
  /** Which addresses must not be read out of the list of files; asked when all is written. */
  readonly isUnlisted?: (address: string) => boolean;
  /** How long to wait for another build. */
  readonly patience_ms?: number;
}

function refuseForeignFolder(outDir: string): void {
  if (!existsSync(outDir) || isOwnFolder(outDir)) return;
  throw new PublishError(
    `${outDir} holds files that are not a guide (${ADDRESS.fileList} would list them), and publishing would replace them. Give an empty or a new folder with --out.`,
  );
}

function refuseNothingToKeep(outDir: string): void {
  if (contentsOfGuide(outDir) === undefined)
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

const isThere = (file: string): boolean => lstatSync(file, { throwIfNoEntry: false }) !== undefined;

/** A folder of that name which this program did not make is somebody's. */
function refuseForeignSiblings(outDir: string): void {
  const { next, last, trash } = siblingPaths(outDir);
  for (const sibling of [next, last, trash])
    if (isThere(sibling) && !isOwnFolder(sibling))
      throw new PublishError(
        `${sibling} is not of this program, which needs that name to publish ${outDir}: move it away, or give another folder with --out.`,
      );
}

/** Deletes a folder of this program's; its list last, so that a rest of it is still known. */
async function removed(dir: string): Promise<void> {
  if (!isOwnFolder(dir)) return;
  const options = { recursive: true, force: true, maxRetries: 3 };
  for (const name of await readdir(dir))
    if (name !== ADDRESS.fileList) await rm(path.join(dir, name), options);
  await rm(dir, options);
}

/** Mends what a stopped run left: puts the last guide back if the swap was cut in two, and clears the rest. */
async function recoverLeftovers(outDir: string): Promise<void> {
  const { next, last, trash } = siblingPaths(outDir);
  if (!existsSync(outDir) && isOwnFolder(last)) await rename(last, outDir);
  for (const leftover of [next, last]) {
    await removed(trash);
    if (!isOwnFolder(leftover) || isThere(trash)) continue;
    await bringHome(leftover, outDir);
    // Away under another name first: an exchange that the stopped run had still asked for then finds nothing to take.
    await rename(leftover, trash);
  }
  await removed(trash);
}

/** Copies the published guide's own files. */
async function copyOwn(outDir: string, nextDir: string): Promise<void> {
  for (const address of contentsOfGuide(outDir)?.own ?? []) {
    if (address === ADDRESS.fileList) continue;
    const to = path.join(nextDir, address);
    await mkdir(path.dirname(to), { recursive: true });
    await copyFile(path.join(outDir, address), to);
  }
}

/** The folder itself, where `outDir` is a link to it. */
const behindLinks = (outDir: string): Promise<string> => realpath(outDir).catch(() => path.resolve(outDir));

const QUIET_ROUNDS = 5;
const MOST_ROUNDS = 50;
const ROUND_MS = 20;

/**
 * Deletes the folder that this run began. Of many pages that were under way when one could not be written, some may
 * still be written, into a folder made anew: it is looked for until it stays away.
 */
async function removedForGood(next: string): Promise<void> {
  for (let [round, quiet] = [0, 0]; quiet < QUIET_ROUNDS && round < MOST_ROUNDS; round++, quiet++) {
    if ((await lstat(next).catch(() => undefined)) !== undefined) {
      await rm(next, { recursive: true, force: true, maxRetries: 3 }).catch(() => undefined);
      quiet = -1;
    }
    await sleep(ROUND_MS);
  }
}

async function swapIn(
  outDir: string,
  { keep = false, isUnlisted = () => false }: PublishOptions,
  write: (stagingDir: string) => Promise<boolean>,
  lock: OutputLock,
): Promise<boolean> {
  const { next, last } = siblingPaths(outDir);
  await recoverLeftovers(outDir);
  refuseForeignFolder(outDir);
  refuseForeignSiblings(outDir);
  if (keep) refuseNothingToKeep(outDir);
  await mkdir(next);
  try {
    beginFileList(next);
    if (keep) await copyOwn(outDir, next);
    if (!(await write(next))) return false;
    finishFileList(next, isUnlisted);
    await flushFiles(next);
    if (!lock.isHeld()) throw new PublishError(`another build took ${outDir} over: run the command again.`);
    const inTheWay = await carryOver(outDir, next);
    if (inTheWay !== undefined)
      throw new PublishError(
        `${path.join(outDir, inTheWay)} is not of the last guide, and the next one has a file there: move it away. Nothing written, ${outDir} is as it was.`,
      );
    swapFolders(next, outDir, last);
    return true;
  } catch (error) {
    await removedForGood(next);
    throw error;
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
 * {@link swapFolders} for the one exception where the system cannot exchange folders. What is not on the old guide's
 * list of files is somebody else's, and is there in the new one too. A second build into the same folder waits for the
 * first one.
 * @param write fills the folder it is given; false leaves the published guide as it was
 * @returns what `write` returned
 * @throws PublishError when the output cannot be written; what `write` throws
 */
export async function publish(
  outDir: string,
  write: (stagingDir: string) => Promise<boolean>,
  options: PublishOptions = {},
): Promise<boolean> {
  const folder = await behindLinks(outDir);
  try {
    await mkdir(path.dirname(folder), { recursive: true });
    const lock = await takeLock(siblingPaths(folder).lock, options.patience_ms ?? LOCK_TIMEOUT_MS);
    try {
      return await swapIn(folder, options, write, lock);
    } finally {
      lock.release();
    }
  } catch (error) {
    throw inWords(outDir, error);
  }
}
