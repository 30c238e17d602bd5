import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** The files that decide what the program makes of a club folder. */
const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const FOLDERS = ["build", "templates", "content"];
const FILES = ["package.json", "package-lock.json"];

function filesIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const file = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return filesIn(file);
    return entry.isFile() ? [file] : [];
  });
}

/** A copy of the program may lack its lock file; that, too, makes it another program. */
function textOf(file: string): Buffer | string {
  try {
    return readFileSync(file);
  } catch {
    return "absent";
  }
}

/**
 * Names the program as it stands on this machine: the hash of its own sources, of the versions of its libraries, and of
 * the engine that runs it, whose sine may differ in the last digit. An edit of any of them is another program.
 * @param root the folder that holds package.json
 * @throws when the sources cannot be listed
 */
export function programIdentity(root = ROOT): string {
  const hash = createHash("sha256").update(JSON.stringify([process.versions.v8, process.arch]));
  const files = [
    ...FOLDERS.flatMap((folder) => filesIn(path.join(root, folder))),
    ...FILES.map((file) => path.join(root, file)),
  ];
  for (const file of files.sort()) {
    const text = textOf(file);
    hash.update(JSON.stringify([path.relative(root, file), text.length])).update(text);
  }
  return hash.digest("hex");
}
