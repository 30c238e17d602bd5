#!/usr/bin/env node
// Starts the program compiled: as it was packed, or as the first run after an edit of the sources compiles it. Where
// nothing can be written the sources are run as they are.
import { existsSync, utimesSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { COMPILED, programHash } from "./program/program-hash.mjs";

const root = fileURLToPath(new URL("../", import.meta.url));
/** Beside the libraries, which Node looks for upwards from what imports them. */
const CACHE = path.join(root, "node_modules/.cache/lake-season-guide");

async function compiledFolder() {
  const hash = programHash(root);
  const known = [path.join(root, COMPILED, hash), path.join(CACHE, hash)].find((folder) =>
    existsSync(folder),
  );
  if (known === undefined) {
    const { compile } = await import("./program/compile.mjs");
    return compile(root, CACHE);
  }
  try {
    utimesSync(known, new Date(), new Date()); // in use: not to be removed
  } catch {}
  return known;
}

async function runSources() {
  Object.assign(process.env, { TSX_TSCONFIG_PATH: path.join(root, "tsconfig.json") }); // of threads too
  const { register } = await import("tsx/esm/api");
  register();
  await import(pathToFileURL(path.join(root, "build/cli.ts")).href);
}

const folder = await compiledFolder().catch(() => undefined);
if (folder === undefined) await runSources();
else await import(pathToFileURL(path.join(folder, "build/cli.js")).href);
