import { lstat, open, readdir } from "node:fs/promises";
import path from "node:path";

/** More at once is no faster: the disk writes them together. */
const AT_ONCE = 16;

/**
 * Has the disk hold every file below `dir` before anybody relies on it: a machine that loses its power after a rename
 * may otherwise find the new names with empty files. Costs about 0.2 ms a file on a solid-state disk. A file that has
 * another name besides was taken over from the last guide, and the disk holds it already.
 * @throws a system error, such as a disk found full only now
 */
export async function flushFiles(dir: string): Promise<void> {
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
