import { readdir, readFile, realpath, stat } from "node:fs/promises";
import path from "node:path";
import type { Diagnostic } from "../model/diagnostic.ts";
import { didYouMean } from "./did-you-mean.ts";
import { errorAt, type Fault, startOf, warningAt } from "./problem.ts";
import { SLUG, slugOf } from "./slug.ts";

/** The folders of a club folder and the ending their files have. */
export const FOLDERS = {
  lakes: ".yaml",
  patterns: ".yaml",
  reports: ".yaml",
  trips: ".yaml",
  pages: ".md",
} as const;
export type FolderName = keyof typeof FOLDERS;
const FOLDER_NAMES = Object.keys(FOLDERS) as FolderName[];
const TOP_FILES = ["club.yaml", "rigs.yaml"];

/** A file of the club folder, read. */
export interface ClubFile {
  /** Relative to the club folder, with forward slashes. */
  readonly file: string;
  /** The file name without its ending; what it should be renamed to where it cannot be an address. */
  readonly slug: string;
  readonly text: string;
}

export interface ClubFiles {
  readonly club?: ClubFile;
  readonly rigs?: ClubFile;
  readonly lakes: readonly ClubFile[];
  readonly patterns: readonly ClubFile[];
  readonly reports: readonly ClubFile[];
  readonly trips: readonly ClubFile[];
  readonly pages: readonly ClubFile[];
  /** Every lake file's slug, also of files that could not be read. */
  readonly lakeSlugs: readonly string[];
}

const MAX_BYTES = 2_000_000;
const UTF_8 = new TextDecoder("utf-8", { fatal: true });

const isIgnored = (name: string): boolean =>
  name.startsWith(".") || name === "README.md" || /\.(geojson|csv)$/.test(name);

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error ? String(error.code) : "";

/** Reads a folder without ever leaving it. */
class Folder {
  readonly problems: Diagnostic[] = [];
  readonly #root: string;

  private constructor(root: string) {
    this.#root = root;
  }

  static async open(dir: string): Promise<Folder | Fault> {
    try {
      const root = await realpath(dir);
      if ((await stat(root)).isDirectory()) return new Folder(root);
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

  /** The real place of a file or folder inside the club folder; undefined, with a problem, when it leads out. */
  async #inside(file: string): Promise<string | undefined> {
    try {
      const real = await realpath(path.join(this.#root, file));
      const relative = path.relative(this.#root, real);
      if (relative === ".." || relative.startsWith(`..${path.sep}`) || path.isAbsolute(relative))
        return this.refuse(file, {
          code: "outside-folder",
          message: "this is a link that leads out of the club folder",
          hint: "copy what it leads to into the club folder instead",
        });
      return real;
    } catch {
      return this.refuse(file, UNREADABLE);
    }
  }

  /** Names in a folder of the club folder, sorted; none when it is not there. */
  async list(folder: string): Promise<string[]> {
    const real = await this.#inside(folder);
    if (real === undefined) return [];
    try {
      const names = await readdir(real);
      return names.filter((name) => !isIgnored(name)).sort();
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

  async read(file: string): Promise<string | undefined> {
    const real = await this.#inside(file);
    if (real === undefined) return undefined;
    try {
      const found = await stat(real);
      if (!found.isFile())
        return this.refuse(file, {
          code: "not-a-file",
          message: "this is not a plain file",
          hint: "move it out of the club folder",
        });
      if (found.size > MAX_BYTES)
        return this.refuse(file, {
          code: "file-too-large",
          message: `the file has ${Math.round(found.size / 1e6)} MB; a club file may have 2 MB`,
          hint: "keep photos and other data out of the club folder, and split a long text",
        });
      return UTF_8.decode(await readFile(real));
    } catch (error) {
      return this.refuse(file, error instanceof TypeError ? NOT_UTF8 : UNREADABLE);
    }
  }
}

const UNREADABLE: Fault = {
  code: "unreadable",
  message: "this cannot be read",
  hint: "check that it is there and who may read it",
};
const NOT_UTF8: Fault = {
  code: "not-utf8",
  message: "the file is not saved as UTF-8 text",
  hint: "save it again in your editor with the encoding UTF-8",
};

async function readFolder(folder: Folder, name: FolderName): Promise<{ files: ClubFile[]; slugs: string[] }> {
  const ending = FOLDERS[name];
  const files: ClubFile[] = [];
  const slugs: string[] = [];
  for (const entry of await folder.list(name)) {
    const file = `${name}/${entry}`;
    if (!entry.endsWith(ending)) {
      const stem = slugOf(entry.replace(/\.[^.]*$/, ""));
      folder.warn(file, {
        code: "unknown-file",
        message: `only ${ending} files are read in ${name}`,
        hint:
          /\.ya?ml$/i.test(entry) || /\.(md|markdown)$/i.test(entry)
            ? `rename it to ${stem}${ending}`
            : "move it out of the club folder",
      });
      continue;
    }
    const stem = entry.slice(0, -ending.length);
    const slug = SLUG.test(stem) ? stem : slugOf(stem) || "some-name";
    slugs.push(slug);
    if (slug !== stem)
      folder.refuse(file, {
        code: "bad-file-name",
        message: `“${entry}” cannot be used as an address`,
        hint: `rename it to ${slug}${ending}: small letters a to z, digits, and single hyphens between them`,
      });
    const text = await folder.read(file);
    if (text !== undefined) files.push({ file, slug, text });
  }
  return { files, slugs };
}

/** Reads every file of the club folder that belongs there. */
export async function readClubFiles(dir: string): Promise<{ files?: ClubFiles; problems: Diagnostic[] }> {
  const folder = await Folder.open(dir);
  if (!(folder instanceof Folder)) return { problems: [errorAt(startOf("."), folder)] };
  const top = await folder.list(".");
  for (const name of top) {
    if ([...TOP_FILES, ...FOLDER_NAMES].includes(name)) continue;
    const meant = didYouMean(name, [...TOP_FILES, ...FOLDER_NAMES]);
    folder.warn(name, {
      code: "unknown-file",
      message: `“${name}” is not read`,
      hint:
        meant === undefined
          ? `a club folder holds ${TOP_FILES.join(", ")} and the folders ${FOLDER_NAMES.join(", ")}`
          : `did you mean “${meant}”?`,
    });
  }
  const single = async (file: string): Promise<ClubFile | undefined> => {
    const text = top.includes(file) ? await folder.read(file) : undefined;
    return text === undefined ? undefined : { file, slug: file.replace(/\.yaml$/, ""), text };
  };
  const inFolder = async (name: FolderName) =>
    top.includes(name) ? readFolder(folder, name) : { files: [], slugs: [] };
  if (!top.includes("club.yaml"))
    folder.refuse("club.yaml", {
      code: "missing-file",
      message: "there is no club.yaml in this folder",
      hint: "write one with name, season, asOf, timezone and units, or begin with: npm run new -- club NAME",
    });
  const club = await single("club.yaml");
  const rigs = await single("rigs.yaml");
  const lakes = await inFolder("lakes");
  return {
    files: {
      ...(club === undefined ? {} : { club }),
      ...(rigs === undefined ? {} : { rigs }),
      lakes: lakes.files,
      patterns: (await inFolder("patterns")).files,
      reports: (await inFolder("reports")).files,
      trips: (await inFolder("trips")).files,
      pages: (await inFolder("pages")).files,
      lakeSlugs: lakes.slugs,
    },
    problems: folder.problems,
  };
}
