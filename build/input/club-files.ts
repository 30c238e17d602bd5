import type { Diagnostic } from "../model/diagnostic.ts";
import { quoted } from "../model/fault.ts";
import { Folder, type FolderMemory, isData, isShape, shapeSlug } from "./folder.ts";
import { didYouMean, SLUG, slugOf } from "./names.ts";
import { errorAt, startOf } from "./problem.ts";

/** The folders of a club folder and the endings their files have, the usual one first. */
const FOLDERS = {
  lakes: [".yaml"],
  patterns: [".yaml"],
  reports: [".yaml", ".csv"],
  trips: [".yaml"],
  pages: [".md"],
} as const satisfies Record<string, readonly [string, ...string[]]>;
/** Names no file or folder can have there, whatever its ending. Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const WINDOWS_DEVICE = /^(con|prn|aux|nul|com[1-9]|lpt[1-9])$/;
type FolderName = keyof typeof FOLDERS;
const FOLDER_NAMES = Object.keys(FOLDERS) as FolderName[];
const TOP_FILES = ["club.yaml", "rigs.yaml"];
/** Belong to the site and are not read here. */
const SITE_FOLDERS = ["static", "templates"];

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
  /** Shorelines and soundings beside the lake files: GeoJSON and CSV. */
  readonly shapes: readonly ClubFile[];
  /** Every lake file's slug, also of files that could not be read. */
  readonly lakeSlugs: readonly string[];
  /** The same for patterns. */
  readonly patternSlugs: readonly string[];
}

function unknownFileHint(entry: string, endings: readonly [string, ...string[]]): string {
  const stem = slugOf(entry.replace(/\.[^.]*$/, ""));
  const meant = endings.find((ending) => entry.toLowerCase().endsWith(ending));
  if (meant !== undefined) return `rename it to ${stem}${meant}`;
  if (/\.(ya?ml|md|markdown)$/i.test(entry)) return `rename it to ${stem}${endings[0]}`;
  return endings.includes(".csv") && /\.(xlsx?|ods|numbers|tsv|txt)$/i.test(entry)
    ? `save it from the spreadsheet as “CSV UTF-8”, under the name ${stem}.csv`
    : "move it out of the club folder";
}

/** The slug of a file that has but another spelling of the usual ending; undefined for any other file. */
function meantSlug(entry: string, ending: string): string | undefined {
  const spelt = ending === ".md" ? /\.(md|markdown)$/i : /\.ya?ml$/i;
  const slug = slugOf(entry.replace(spelt, ""));
  return spelt.test(entry) && slug !== "" ? slug : undefined;
}

async function readFolder(folder: Folder, name: FolderName): Promise<{ files: ClubFile[]; slugs: string[] }> {
  const endings: readonly [string, ...string[]] = FOLDERS[name];
  const files: ClubFile[] = [];
  const slugs: string[] = [];
  const listed = await folder.list(name, name === "reports" ? isData : undefined);
  for (const entry of listed) {
    const file = `${name}/${entry}`;
    const ending = endings.find((known) => entry.endsWith(known));
    if (ending === undefined) {
      const fault = {
        code: "unknown-file",
        message: `only ${endings.join(" and ")} files are read in ${name}`,
        hint: unknownFileHint(entry, endings),
      };
      const meant = meantSlug(entry, endings[0]);
      if (meant === undefined || listed.includes(meant + endings[0])) folder.warn(file, fault);
      else {
        folder.refuse(file, fault);
        slugs.push(meant);
      }
      continue;
    }
    const stem = entry.slice(0, -ending.length);
    const slug = SLUG.test(stem) ? stem : slugOf(stem) || "some-name";
    slugs.push(slug);
    // A file of reports has a stricter name of its own, its season, which its reader checks.
    if (slug !== stem && name !== "reports")
      folder.refuse(file, {
        code: "bad-file-name",
        message: `${quoted(entry)} cannot be used as an address`,
        hint: `rename it to ${slug}${ending}: small letters a to z, digits, and single hyphens between them`,
      });
    else if (WINDOWS_DEVICE.test(stem))
      folder.refuse(file, {
        code: "bad-file-name",
        message: `${quoted(entry)} cannot be a file on Windows, where ${stem} is a device`,
        hint: `rename it to ${stem}-${name === "lakes" ? "lake" : name}${ending}`,
      });
    const text = await folder.read(file);
    if (text !== undefined) files.push({ file, slug, text });
  }
  return { files, slugs };
}

async function readShapes(folder: Folder): Promise<ClubFile[]> {
  const shapes: ClubFile[] = [];
  for (const entry of await folder.list("lakes", isShape)) {
    const file = `lakes/${entry}`;
    const text = await folder.read(file);
    if (text !== undefined) shapes.push({ file, slug: shapeSlug(entry), text });
  }
  return shapes;
}

/** Reads every file of the club folder that belongs there. */
export async function readClubFiles(
  dir: string,
  memory: FolderMemory = {},
): Promise<{ files?: ClubFiles; problems: Diagnostic[] }> {
  const folder = await Folder.open(dir, memory);
  if (!(folder instanceof Folder)) return { problems: [errorAt(startOf("."), folder)] };
  const top = await folder.list(".");
  for (const name of top) {
    if ([...TOP_FILES, ...FOLDER_NAMES, ...SITE_FOLDERS].includes(name)) continue;
    const meant = didYouMean(name, [...TOP_FILES, ...FOLDER_NAMES]);
    folder.warn(name, {
      code: "unknown-file",
      message: `${quoted(name)} is not read`,
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
  const patterns = await inFolder("patterns");
  return {
    files: {
      ...(club === undefined ? {} : { club }),
      ...(rigs === undefined ? {} : { rigs }),
      lakes: lakes.files,
      patterns: patterns.files,
      reports: (await inFolder("reports")).files,
      trips: (await inFolder("trips")).files,
      pages: (await inFolder("pages")).files,
      shapes: lakes.slugs.length === 0 ? [] : await readShapes(folder),
      lakeSlugs: lakes.slugs,
      patternSlugs: patterns.slugs,
    },
    problems: folder.problems,
  };
}
