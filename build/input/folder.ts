import { readdir, readFile, realpath, stat } from "node:fs/promises";
import path from "node:path";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Fault } from "../model/fault.ts";
import { type FileStamp, type MemoizeLast, unmemoizedLast } from "../model/memoize.ts";
import { errorAt, startOf, warningAt } from "./problem.ts";

const UTF_8 = new TextDecoder("utf-8", { fatal: true });
const WIDE = {
  little: new TextDecoder("utf-16le", { fatal: true }),
  big: new TextDecoder("utf-16be", { fatal: true }),
} as const;

const NOT_UTF8: Fault = {
  code: "not-utf8",
  message: "the file is not saved as UTF-8 text",
  hint: "save it again in your editor with the encoding UTF-8",
};
const TABLE_NOT_UTF8: Fault = {
  ...NOT_UTF8,
  hint: "save it from the spreadsheet as “CSV UTF-8”, or choose the encoding UTF-8 where it asks",
};

/** A byte order mark of UTF-16 at the beginning, which spreadsheets write into the text files they call Unicode. */
function widthOf([first, second]: Uint8Array): keyof typeof WIDE | undefined {
  if (first === 0xff && second === 0xfe) return "little";
  return first === 0xfe && second === 0xff ? "big" : undefined;
}

/**
 * A file's text, without a byte order mark; what to say where its bytes are no UTF-8. A table may be UTF-16 if it says
 * so; it is never guessed at, for a wrong guess turns letters into other letters.
 */
export function textOf(bytes: Uint8Array, isTable: boolean): string | Fault {
  const width = isTable ? widthOf(bytes) : undefined;
  const fault = isTable ? TABLE_NOT_UTF8 : NOT_UTF8;
  try {
    const text = (width === undefined ? UTF_8 : WIDE[width]).decode(bytes);
    // UTF-16 without its mark is read as UTF-8 with a zero byte behind every letter.
    return isTable && text.includes("\u0000") ? fault : text;
  } catch (error) {
    if (error instanceof TypeError) return fault; // how a strict decoder says that the bytes are none of its own
    throw error;
  }
}

const MAX_BYTES = 2_000_000;
/** A shoreline digitised to the metre can be long. */
const MAX_SHAPE_BYTES = 25_000_000;
const SHAPE = /\.(geojson|csv)$/;

/** Neither hidden nor a word to whoever opens the folder. */
export const isData = (name: string): boolean => !name.startsWith(".") && name !== "README.md";

/** True for a lake's shoreline or soundings. */
export const isShape = (name: string): boolean => SHAPE.test(name) && !name.startsWith(".");
/** A shape's file name without its ending. */
export const shapeSlug = (name: string): string => name.replace(SHAPE, "");

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error ? String(error.code) : "";

const UNREADABLE: Fault = {
  code: "unreadable",
  message: "this cannot be read",
  hint: "check that it is there and who may read it",
};

/** How files that stand as they stood are not read again; all are unless it is given. */
export interface FolderMemory {
  readonly memoizeLast?: MemoizeLast;
  readonly fileStamp?: FileStamp;
}

type Read = { readonly text: string } | { readonly fault: Fault };

/** Reads a folder without ever leaving it. */
export class Folder {
  readonly problems: Diagnostic[] = [];
  readonly #root: string;
  readonly #memoizeLast: MemoizeLast;
  readonly #fileStamp: FileStamp;

  private constructor(
    root: string,
    { memoizeLast = unmemoizedLast, fileStamp = () => undefined }: FolderMemory,
  ) {
    this.#root = root;
    this.#memoizeLast = memoizeLast;
    this.#fileStamp = fileStamp;
  }

  static async open(dir: string, memory: FolderMemory = {}): Promise<Folder | Fault> {
    try {
      const root = await realpath(dir);
      if ((await stat(root)).isDirectory()) return new Folder(root, memory);
      return {
        code: "not-a-folder",
        message: `${dir} is a file, not a folder`,
        hint: "give the folder that holds club.yaml",
      };
    } catch (error) {
      return codeOf(error) === "ENOENT"
        ? {
            code: "missing-folder",
            message: `there is no folder ${dir}`,
            hint: "check its name, or begin one with: npm run new -- club NAME",
          }
        : { code: "unreadable", message: `the folder ${dir} cannot be read`, hint: "check who may read it" };
    }
  }

  refuse(file: string, fault: Fault): undefined {
    this.problems.push(errorAt(startOf(file), fault));
    return undefined;
  }

  warn(file: string, fault: Fault): void {
    this.problems.push(warningAt(startOf(file), fault));
  }

  /** The real place of a file or folder inside the club folder; a fault when it leads out. */
  async #inside(file: string): Promise<string | Fault> {
    try {
      const real = await realpath(path.join(this.#root, file));
      const relative = path.relative(this.#root, real);
      if (relative === ".." || relative.startsWith(`..${path.sep}`) || path.isAbsolute(relative))
        return {
          code: "outside-folder",
          message: "this is a link that leads out of the club folder",
          hint: "copy what it leads to into the club folder instead",
        };
      return real;
    } catch {
      return UNREADABLE;
    }
  }

  /** Names in a folder of the club folder, sorted; none when it is not there. */
  async list(
    folder: string,
    isWanted = (name: string): boolean => isData(name) && !SHAPE.test(name),
  ): Promise<string[]> {
    const real = await this.#inside(folder);
    if (typeof real !== "string") {
      this.refuse(folder, real);
      return [];
    }
    try {
      const names = await readdir(real);
      return names.filter(isWanted).sort();
    } catch (error) {
      if (codeOf(error) === "ENOTDIR")
        this.refuse(folder, {
          code: "not-a-folder",
          message: "this is a file; a folder belongs here",
          hint: `move the file away and make a folder “${folder}”`,
        });
      else this.refuse(folder, UNREADABLE);
      return [];
    }
  }

  async #read(file: string): Promise<Read> {
    const real = await this.#inside(file);
    if (typeof real !== "string") return { fault: real };
    try {
      const found = await stat(real);
      if (!found.isFile())
        return {
          fault: {
            code: "not-a-file",
            message: "this is not a plain file",
            hint: "move it out of the club folder",
          },
        };
      const isOfShape = file.startsWith("lakes/") && isShape(file);
      const most = isOfShape ? MAX_SHAPE_BYTES : MAX_BYTES;
      if (found.size > most)
        return {
          fault: {
            code: "file-too-large",
            message: `the file has ${Math.round(found.size / 1e6)} MB; ${isOfShape ? "a shape" : "a club file"} may have ${most / 1e6} MB`,
            hint: isOfShape
              ? "export it with fewer positions: one a metre is more than enough"
              : "keep photos and other data out of the club folder, and split a long text",
          },
        };
      const text = textOf(await readFile(real), file.endsWith(".csv"));
      return typeof text === "string" ? { text } : { fault: text };
    } catch {
      return { fault: UNREADABLE };
    }
  }

  /** What a file holds; undefined, with a problem, when it cannot be read. What could not be read is tried again. */
  async read(file: string): Promise<string | undefined> {
    const stamp = this.#fileStamp(path.join(this.#root, file));
    const kept =
      stamp === undefined
        ? undefined
        : await this.#memoizeLast(`file ${file}`, [stamp], () => this.#read(file));
    const read = kept !== undefined && "text" in kept ? kept : await this.#read(file);
    return "text" in read ? read.text : this.refuse(file, read.fault);
  }
}
