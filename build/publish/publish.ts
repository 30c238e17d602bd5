import { access, cp, mkdir, readdir, readFile, rename, rm } from "node:fs/promises";
import path from "node:path";

/** The output could not be written; what was published before is untouched. */
export class PublishError extends Error {
  override readonly name = "PublishError";
}

const exists = (file: string): Promise<boolean> =>
  access(file).then(
    () => true,
    () => false,
  );

/** True for a folder that an earlier run of this program published. */
async function isEarlierGuide(dir: string): Promise<boolean> {
  try {
    const head = (await readFile(path.join(dir, "guide.json"), "utf8")).slice(0, 200);
    return head.includes('"name":"lake-season-guide"');
  } catch {
    return false;
  }
}

async function refuseForeignFolder(outDir: string): Promise<void> {
  if (!(await exists(outDir)) || (await readdir(outDir)).length === 0 || (await isEarlierGuide(outDir)))
    return;
  throw new PublishError(
    `${outDir} holds files that are not a guide, and publishing would replace them. Give an empty or a new folder with --out.`,
  );
}

/** Where the next guide is written and where the last one waits during the swap: beside the output, on its disk. */
const beside = (outDir: string) => {
  const hidden = (kind: string): string =>
    path.join(path.dirname(outDir), `.${path.basename(outDir)}.${kind}`);
  return { next: hidden("next"), last: hidden("last") };
};

/** Mends what a killed run left: puts the last guide back if the swap was cut in two, and clears the rest. */
async function mendLeftovers(outDir: string): Promise<void> {
  const { next, last } = beside(outDir);
  if (!(await exists(outDir)) && (await exists(last))) await rename(last, outDir);
  await rm(next, { recursive: true, force: true });
  await rm(last, { recursive: true, force: true });
}

async function refuseNothingToKeep(outDir: string): Promise<void> {
  if (!(await isEarlierGuide(outDir)))
    throw new PublishError(`${outDir} holds no guide yet: build the whole guide first, without --only.`);
}

async function swapIn(
  outDir: string,
  keep: boolean,
  write: (stagingDir: string) => Promise<boolean>,
): Promise<boolean> {
  const { next, last } = beside(outDir);
  await mkdir(path.dirname(outDir), { recursive: true });
  await mendLeftovers(outDir);
  await refuseForeignFolder(outDir);
  if (keep) await refuseNothingToKeep(outDir);
  try {
    await mkdir(next);
    if (keep) await cp(outDir, next, { recursive: true });
    if (!(await write(next))) return false;
    if (await exists(outDir)) await rename(outDir, last);
    await rename(next, outDir);
    return true;
  } finally {
    await mendLeftovers(outDir);
  }
}

const isSystemError = (error: unknown): error is NodeJS.ErrnoException =>
  error instanceof Error && "errno" in error;

/**
 * Writes a whole guide beside the published one and swaps it in when `write` succeeded.
 * @param keep start from a copy of what is published, to replace a part of it
 * @param write fills the folder it is given; false leaves the published guide as it was
 * @returns what `write` returned
 * @throws PublishError when the output cannot be written; what `write` throws
 */
export async function publish(
  outDir: string,
  keep: boolean,
  write: (stagingDir: string) => Promise<boolean>,
): Promise<boolean> {
  try {
    return await swapIn(outDir, keep, write);
  } catch (error) {
    if (isSystemError(error))
      throw new PublishError(`cannot write ${outDir}: ${error.message}`, { cause: error });
    throw error;
  }
}
