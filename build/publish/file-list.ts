import { createHash } from "node:crypto";
import { lstatSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { ADDRESS } from "../model/addresses.ts";

const PROGRAM = "lake-season-guide";

/**
 * Which files of a folder are a guide's own; it is published among them. Without `files` the guide is still being
 * written.
 */
interface FileList {
  readonly program: typeof PROGRAM;
  /** Addresses inside the guide. */
  readonly files?: readonly string[];
  /** Files whose addresses nobody may come upon: size in bytes, and SHA-256 of address and bytes. */
  readonly unlisted?: readonly (readonly [size: number, sha256: string])[];
}

const isListOf = (list: unknown): list is FileList => {
  if (typeof list !== "object" || list === null) return false;
  const { program, files = [], unlisted = [] } = list as Record<string, unknown>;
  return (
    program === PROGRAM &&
    Array.isArray(files) &&
    files.every((file) => typeof file === "string") &&
    Array.isArray(unlisted) &&
    unlisted.every(Array.isArray)
  );
};

/** Undefined where there is none that this program wrote. */
function readList(dir: string): FileList | undefined {
  try {
    const list: unknown = JSON.parse(readFileSync(path.join(dir, ADDRESS.fileList), "utf8"));
    return isListOf(list) ? list : undefined;
  } catch {
    return undefined;
  }
}

/** The list while it is written: a stopped run leaves the one before it whole. */
const PART = `${ADDRESS.fileList}.part`;

function writeList(dir: string, list: Omit<FileList, "program">): void {
  writeFileSync(path.join(dir, PART), `${JSON.stringify({ program: PROGRAM, ...list })}\n`);
  renameSync(path.join(dir, PART), path.join(dir, ADDRESS.fileList));
}

interface Entry {
  /** Inside the folder, with slashes. */
  readonly address: string;
  readonly isFolder: boolean;
}

/** All that a folder holds, each folder before what lies in it; links are not followed. */
function entriesOf(dir: string): Entry[] {
  const walk = (folder: string): Entry[] =>
    readdirSync(path.join(dir, folder), { withFileTypes: true }).flatMap((entry) => {
      const address = path.posix.join(folder, entry.name);
      return entry.isDirectory()
        ? [{ address, isFolder: true }, ...walk(address)]
        : [{ address, isFolder: false }];
    });
  return walk("");
}

const secretHash = (dir: string, address: string): string =>
  createHash("sha256")
    .update(`${address}\n`)
    .update(readFileSync(path.join(dir, address)))
    .digest("hex");
const sizeOf = (dir: string, address: string): number => lstatSync(path.join(dir, address)).size;

/** Marks a folder as this program's, before anything is written into it. @throws a system error */
export const beginFileList = (dir: string): void => writeList(dir, {});

/** Lists all that a folder holds as the guide's own. @throws a system error */
export function finishFileList(dir: string, isUnlisted: (address: string) => boolean): void {
  const files = entriesOf(dir)
    .filter(({ isFolder }) => !isFolder)
    .map(({ address }) => address)
    .sort();
  const hidden = files.filter(isUnlisted);
  writeList(dir, {
    files: files.filter((address) => !isUnlisted(address)),
    ...(hidden.length === 0
      ? {}
      : { unlisted: hidden.map((address) => [sizeOf(dir, address), secretHash(dir, address)] as const) }),
  });
}

/** True for a folder that this program began, and for one that holds nothing; false where there is none. */
export function isOwnFolder(dir: string): boolean {
  if (lstatSync(dir, { throwIfNoEntry: false })?.isDirectory() !== true) return false;
  return readdirSync(dir).every((name) => name === PART) || readList(dir) !== undefined;
}

/** What a published guide's folder holds. */
interface Contents {
  /** Addresses of the guide's own files, sorted; the list is one of them. */
  readonly own: readonly string[];
  /** What somebody else put there, each folder before what lies in it. Folders of the guide's own files are not among them. */
  readonly foreign: readonly Entry[];
}

/** Undefined for a folder that is no whole guide of this program. @throws a system error */
export function contentsOfGuide(dir: string): Contents | undefined {
  const list = readList(dir);
  if (list?.files === undefined) return undefined;
  const files = new Set(list.files);
  const unlisted = new Map((list.unlisted ?? []).map(([size, sha256]) => [sha256, size] as const));
  const sizes = new Set(unlisted.values());
  const isOwn = ({ address, isFolder }: Entry): boolean =>
    !isFolder &&
    (files.has(address) ||
      (sizes.has(sizeOf(dir, address)) &&
        lstatSync(path.join(dir, address)).isFile() &&
        unlisted.has(secretHash(dir, address))));
  const entries = entriesOf(dir);
  const own = entries.filter(isOwn).map(({ address }) => address);
  const ownNames = new Set(own);
  for (const address of own)
    for (let at = path.posix.dirname(address); at !== "."; at = path.posix.dirname(at)) ownNames.add(at);
  return { own: own.sort(), foreign: entries.filter(({ address }) => !ownNames.has(address)) };
}
