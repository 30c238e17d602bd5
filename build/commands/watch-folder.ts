import { readdirSync, readlinkSync, statSync } from "node:fs";
import path from "node:path";
import { type FileHash, isRead, openFileHash } from "../incremental/file-hash.ts";
import { fileStamp } from "../incremental/file-stamp.ts";

// The folder is looked through again and again: what the operating system tells of changes is not whole on every one of
// them, on network disks there is nothing of it, and a folder that is moved away takes its watcher with it.

const LOOK_MS = 150;
/** Of a large folder's time: one look in twenty. */
const REST_PER_LOOK = 20;
/** Editors write a file in several steps; wait for the last one. */
const SETTLE_MS = 40;
const MOST_SETTLING = 25;
/** Deeper than any club; a link may lead in a circle. */
const DEEPEST = 12;

function attempt<T>(look: () => T): T | "unreadable" {
  try {
    return look();
  } catch {
    return "unreadable";
  }
}

/** All that is read of a folder, in one text: any change of a name or a byte gives another one. Links are followed. */
function snapshotOf(dir: string, hash: FileHash): string {
  const lines: string[] = [];
  const walk = (folder: string, depth: number): void => {
    const entries = attempt(() => readdirSync(folder, { withFileTypes: true }));
    lines.push(`${folder} ${entries === "unreadable" ? entries : ""}`);
    if (entries === "unreadable" || depth === DEEPEST) return;
    for (const entry of entries.filter(({ name }) => isRead(name))) {
      const file = path.join(folder, entry.name);
      if (entry.isSymbolicLink()) lines.push(`${file} -> ${attempt(() => readlinkSync(file))}`);
      if (
        entry.isDirectory() ||
        (entry.isSymbolicLink() && attempt(() => statSync(file).isDirectory()) === true)
      )
        walk(file, depth + 1);
      else if (entry.isFile() || entry.isSymbolicLink()) lines.push(`${file} ${attempt(() => hash(file))}`);
    }
  };
  walk(dir, 0);
  return lines.join("\n");
}

/**
 * Begins to watch a folder and all in it, hidden files apart.
 * @returns what calls back after every change from now on, once for changes that follow each other at once, and what
 * ends that
 */
export function watchFolder(dir: string): (changed: () => void) => () => void {
  const hash = openFileHash(fileStamp);
  let known = snapshotOf(dir, hash);
  return (changed) => {
    let timer: NodeJS.Timeout;
    const look = (before: string | undefined, settling: number): void => {
      const begun_ms = performance.now();
      const now = snapshotOf(dir, hash);
      const took_ms = performance.now() - begun_ms;
      if (now !== known && now !== before && settling < MOST_SETTLING) {
        timer = setTimeout(look, SETTLE_MS, now, settling + 1);
        return;
      }
      if (now !== known) {
        known = now;
        changed();
      }
      timer = setTimeout(look, Math.max(LOOK_MS, REST_PER_LOOK * took_ms), undefined, 0);
    };
    timer = setTimeout(look, LOOK_MS, undefined, 0);
    return () => clearTimeout(timer);
  };
}
