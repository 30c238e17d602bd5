import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import type { PageData, RenderFile, UserConfig } from "@11ty/eleventy";
import { clubPageText } from "../../templates/_includes/club-page-layout.tsx";
import { type PageGuide, pageGuide } from "../../templates/_includes/page-context.ts";
import { listedTrips } from "../guide/guide-contents.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { renderMarkdown } from "../guide/markdown.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import type { Output } from "./outputs.ts";
import { isSystemError, messageOf, runEleventy } from "./run-eleventy.ts";

/** The club's own Eleventy templates: `templates/` in its folder. */
export const clubTemplatesDir = (clubDir: string): string => path.join(clubDir, "templates");

const FORMATS = ["njk", "liquid", "html", "md", "11ty.js"];
/** Parts of every page that a club may write anew. */
const PARTIALS = ["masthead", "footer"] as const;
const LAYOUT = "page";

export interface ClubTemplates {
  readonly dir: string;
  /** Every file's text, by its path inside the folder. */
  readonly sources: Readonly<Record<string, string>>;
}

/** A file's name without the ending of its format; undefined for a file that is no template. */
function stemOf(file: string): string | undefined {
  const format = FORMATS.find((ending) => file.endsWith(`.${ending}`));
  return format === undefined ? undefined : file.slice(0, -format.length - 1);
}

/** Reads the club's templates; undefined for a club that has none. */
export async function readClubTemplates(clubDir: string): Promise<ClubTemplates | undefined> {
  const dir = clubTemplatesDir(clubDir);
  const entries = await readdir(dir, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(dir, path.join(entry.parentPath, entry.name)).replaceAll(path.sep, "/"))
    .sort();
  if (files.length === 0) return undefined;
  const texts = files.map(async (file) => [file, await readFile(path.join(dir, file), "utf8")] as const);
  return { dir, sources: Object.fromEntries(await Promise.all(texts)) };
}

const included = ({ sources }: ClubTemplates, name: string): string | undefined =>
  Object.keys(sources).find((file) => stemOf(file) === `_includes/${name}`);

/** The club's own partials of every page: name and file. */
export type ClubPartials = readonly (readonly [name: string, file: string])[];

export const clubPartials = (club: ClubTemplates): ClubPartials =>
  PARTIALS.flatMap((name) => {
    const file = included(club, name);
    return file === undefined ? [] : [[name, path.join(club.dir, file)] as const];
  });

/** The club's template that takes the place of the program's own of that name, such as "lake". */
export const replacementOf = ({ sources }: ClubTemplates, name: string): string | undefined =>
  Object.keys(sources).find((file) => stemOf(file) === name);

/** From a page to another address of the guide. */
function link(this: Pick<PageData, "page">, address: string): string {
  return "../".repeat(this.page.url.split("/").length - 2) + encodeURI(address);
}

/** A club's partial cannot be drawn; the message is its file. */
class PartialError extends Error {
  override readonly name = "PartialError";
}

/** The club's problem that an error of Eleventy's comes from; undefined for any other error. */
export function partialProblem(error: unknown): Diagnostic | undefined {
  if (!(error instanceof Error)) return undefined;
  if (error instanceof PartialError)
    return isSystemError(error.cause)
      ? undefined
      : templateProblem(error.message, messageOf(error.cause), LANGUAGE_HINT);
  return "originalError" in error ? partialProblem(error.originalError) : undefined;
}

/** The HTML of each partial for one page. It sees the frame of the guide and the page's address. */
export async function drawPartials(
  partials: ClubPartials,
  guide: PageGuide,
  renderFile: RenderFile | undefined,
  { page }: Pick<PageData, "page">,
): Promise<Record<string, string>> {
  const drawn = partials.map(async ([name, file]) => {
    try {
      const html = await renderFile?.call({ page }, path.relative(process.cwd(), file), { guide });
      return [name, html ?? ""] as const;
    } catch (cause) {
      throw new PartialError(`_includes/${path.basename(file)}`, { cause });
    }
  });
  return Object.fromEntries(await Promise.all(drawn));
}

/** Filters and engines that every template of the club's has, partials too. */
export async function configureClubEngines(eleventyConfig: UserConfig): Promise<void> {
  const { RenderPlugin } = await import("@11ty/eleventy");
  eleventyConfig.addPlugin(RenderPlugin);
  eleventyConfig.addFilter("link", link);
  eleventyConfig.setLiquidOptions({ outputEscape: "escape" });
  // The guide's own Markdown, and no template language before it: raw HTML and {{ }} are text.
  eleventyConfig.addExtension("md", { compile: (text) => () => renderMarkdown(text) });
}

/** Eleventy's configuration for a club's `templates/`. */
function clubConfiguration(club: ClubTemplates, guide: Guide) {
  const frame = pageGuide(guide);
  const partials = clubPartials(club);
  return async (eleventyConfig: UserConfig): Promise<void> => {
    eleventyConfig.setTemplateFormats(FORMATS);
    eleventyConfig.setUseGitIgnore(false);
    // As in guide.json: nobody comes upon an unlisted trip. Frozen, for Eleventy copies any other object.
    eleventyConfig.addGlobalData("guide", () => Object.freeze({ ...guide, trips: listedTrips(guide) }));
    await configureClubEngines(eleventyConfig);
    if (included(club, LAYOUT) !== undefined) return;
    eleventyConfig.addTemplate(`_includes/${LAYOUT}.11ty.js`, {
      async render(data) {
        return clubPageText(data, frame, await drawPartials(partials, frame, this.renderFile, data));
      },
    });
  };
}

const LANGUAGE_HINT = "see what Eleventy’s documentation says of the template’s language";

/** A template that Eleventy failed at, as a problem of the club's. */
const templateProblem = (file: string, message: string, hint: string): Diagnostic => ({
  file: `templates/${file}`,
  line: 1,
  column: 1,
  severity: "error",
  code: "template",
  message,
  hint,
});

/** The problems of club pages that stand where the program's own do. */
const addressProblems = (
  added: readonly (Pick<Output, "address"> & { readonly file: string })[],
  outputs: readonly Output[],
): Diagnostic[] => {
  const taken = new Set(outputs.map(({ address }) => address));
  return added
    .filter(({ address }) => taken.has(address))
    .map(({ address, file }) =>
      templateProblem(
        file,
        `${address} is made by the program`,
        "give it another permalink, or the name of the program’s template to take its place",
      ),
    );
};

export interface WrittenSite {
  /** Every file of the whole guide: the site's, those written elsewhere, and what the club's own folders add. */
  readonly outputs: readonly Output[];
  /** What the club's own templates do wrong; then the site must not be published. */
  readonly problems: readonly Diagnostic[];
}

/** Writes the pages of the club's own templates. */
export async function writeClubTemplates(
  club: ClubTemplates | undefined,
  guide: Guide,
  outDir: string,
  outputs: readonly Output[],
): Promise<WrittenSite> {
  if (club === undefined) return { outputs: [], problems: [] };
  try {
    const written = await runEleventy(club.dir, outDir, clubConfiguration(club, guide));
    const added = written.map(({ inputPath, outputPath }) => ({
      address: path.relative(outDir, path.resolve(outputPath)).replaceAll(path.sep, "/"),
      file: path.relative(club.dir, path.resolve(inputPath)),
    }));
    return {
      outputs: added.map(({ address }) => ({ address, kind: "page", listed: true })),
      problems: addressProblems(added, outputs),
    };
  } catch (error) {
    if (isSystemError(error)) throw error;
    return { outputs: [], problems: [templateProblem("", messageOf(error), LANGUAGE_HINT)] };
  }
}
