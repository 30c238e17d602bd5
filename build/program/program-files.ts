import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

// The program runs as TypeScript sources or compiled, in a folder of the same layout: compiled modules are .js files.

function rootFrom(dir: string): string {
  if (existsSync(path.join(dir, "package.json"))) return dir;
  const parent = path.dirname(dir);
  if (parent === dir) throw new Error("the program's package.json is missing");
  return rootFrom(parent);
}

const HERE = fileURLToPath(import.meta.url);
const ROOT = rootFrom(path.dirname(HERE));
const isCompiled = HERE.endsWith(".js");

/**
 * The absolute path of a file or folder that comes with the program and is not compiled.
 * @param file from the program's own folder: "content/notices.txt"
 */
export const programFile = (file: string): string => path.join(ROOT, file);

/** The folder of page templates: `*.11ty.tsx` in the sources, `*.11ty.js` in the compiled program; assets lie in both. */
export const templatesFolder = (): string => programFile("templates");

/**
 * Where a module of the program is, to be run or loaded by its place; `compile.mjs` must know it as an entry.
 * @param source its source file, from the program's own folder: "build/cards/card-thread.ts"
 */
export const programModule = (source: string): URL =>
  pathToFileURL(programFile(isCompiled ? source.replace(/\.tsx?$/, ".js") : source));

/** The name of the compiled program's folder is the hash of its sources; undefined where the sources themselves run. */
export const compiledHash = (): string | undefined => (isCompiled ? path.basename(ROOT) : undefined);
