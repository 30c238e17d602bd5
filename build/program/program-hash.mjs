import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

// Plain JavaScript: the launcher needs it before anything is compiled.

const FOLDERS = ["build", "templates", "content"];
const FILES = ["package.json", "package-lock.json", "tsconfig.json"];
/** Inside the program's folder: what `npm pack` compiles. */
export const COMPILED = "build/compiled";

/**
 * @param {string} root
 * @param {string} folder
 * @returns {string[]}
 */
function filesIn(root, folder) {
  return readdirSync(path.join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const file = `${folder}/${entry.name}`;
    if (entry.name.startsWith(".") || file === COMPILED) return [];
    if (entry.isDirectory()) return filesIn(root, file);
    return entry.isFile() ? [file] : [];
  });
}

/** @param {string} file */
function textOf(file) {
  try {
    return readFileSync(file);
  } catch {
    return "absent";
  }
}

/**
 * The hash of all that decides what the program makes of a club folder: its own sources, and the versions of its
 * libraries. An edit of any of them is another program.
 * @param {string} root the folder that holds package.json
 * @param {{ isPacked?: boolean }} [options] `isPacked`: as the program will be where it is installed, without its lock file
 * @returns {string}
 * @throws when the sources cannot be listed
 */
export function programHash(root, { isPacked = false } = {}) {
  const hash = createHash("sha256");
  const files = [...FOLDERS.flatMap((folder) => filesIn(root, folder)), ...FILES];
  for (const file of files.sort()) {
    const text = isPacked && file === "package-lock.json" ? "absent" : textOf(path.join(root, file));
    hash.update(JSON.stringify([file, text.length])).update(text);
  }
  return hash.digest("hex");
}
