import { createHash } from "node:crypto";
import { compiledHash, programFile } from "./program-files.ts";
import { programHash } from "./program-hash.mjs";

/** Computed once in a process: the program in memory stays the one that was started, whatever happens to its sources. */
let known: string | undefined;

/**
 * Names the program as it runs on this machine: its sources, its libraries, and the engine, whose sine may differ in the
 * last digit.
 * @throws when the sources cannot be listed
 */
export function programIdentity(): string {
  known ??= createHash("sha256")
    .update(
      JSON.stringify([process.versions.v8, process.arch, compiledHash() ?? programHash(programFile("."))]),
    )
    .digest("hex");
  return known;
}
