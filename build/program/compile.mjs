import { randomUUID } from "node:crypto";
import { cp, mkdir, readdir, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { COMPILED, programHash } from "./program-hash.mjs";

/** Modules that are started or loaded by their place: the command line, threads, and what Eleventy loads. */
const ENTRY = /^build\/cli\.ts$|(-thread|\.11ty|\.11tydata|\.config)\.tsx?$/;
const SOURCE = /\.tsx?$/;
const UNUSED_FOR_MS = 7 * 24 * 3_600_000;

/**
 * @param {string} root
 * @returns {Promise<string[]>}
 */
async function entriesIn(root) {
  const files = await Promise.all(
    ["build", "templates"].map(async (folder) =>
      (await readdir(path.join(root, folder), { recursive: true })).map((file) =>
        path.posix.join(folder, ...file.split(path.sep)),
      ),
    ),
  );
  return files.flat().filter((file) => ENTRY.test(file) && !file.startsWith(COMPILED));
}

/**
 * Another program than the one in use, when it was last used long ago.
 * @param {string} folder
 */
async function removeUnused(folder) {
  for (const name of await readdir(folder)) {
    const other = path.join(folder, name);
    const { mtimeMs } = await stat(other);
    if (Date.now() - mtimeMs > UNUSED_FOR_MS) await rm(other, { recursive: true, force: true });
  }
}

/**
 * Compiles the program into a folder of its own, `folder`/HASH: modules bundled with shared chunks, libraries left where
 * they are, and beside them, in the layout of the sources, the files that are read as they are.
 * @param {string} root the folder that holds package.json
 * @param {string} folder libraries must be found from it as from `root`
 * @param {{ isPacked?: boolean }} [options] as `programHash` has it
 * @returns {Promise<string>} the program's own folder
 * @throws when a source has an error, was edited meanwhile, or nothing can be written
 */
export async function compile(root, folder, options) {
  const hash = programHash(root, options);
  const target = path.join(folder, hash);
  const staging = path.join(folder, `${hash}.${randomUUID()}`);
  try {
    await mkdir(staging, { recursive: true });
    await build({
      absWorkingDir: root,
      entryPoints: await entriesIn(root),
      outbase: root,
      outdir: staging,
      chunkNames: "build/chunks/[name]-[hash]",
      bundle: true,
      splitting: true,
      packages: "external",
      format: "esm",
      platform: "node",
      target: "node20",
      logLevel: "silent",
    });
    await cp(path.join(root, "package.json"), path.join(staging, "package.json"));
    await cp(path.join(root, "content"), path.join(staging, "content"), { recursive: true });
    await cp(path.join(root, "templates"), path.join(staging, "templates"), {
      recursive: true,
      filter: (file) => !SOURCE.test(file),
    });
    if (programHash(root, options) !== hash)
      throw new Error("the sources were edited while they were compiled");
    await rename(staging, target).catch((error) => {
      // Another process has just compiled the same.
      if (error.code !== "ENOTEMPTY" && error.code !== "EEXIST" && error.code !== "EPERM") throw error;
    });
    await removeUnused(folder).catch(() => {});
  } finally {
    await rm(staging, { recursive: true, force: true });
  }
  return target;
}

const root = fileURLToPath(new URL("../../", import.meta.url));
if (process.argv[1] === fileURLToPath(import.meta.url))
  await compile(root, path.join(root, COMPILED), { isPacked: true });
