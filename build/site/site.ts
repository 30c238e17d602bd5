import path from "node:path";
import type { UserConfig, Written } from "@11ty/eleventy";
import type { Guide } from "../guide/guide-schema.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { type KeptFiles, keptNothing } from "../model/kept-files.ts";
import type { Progress } from "../model/progress.ts";
import { copyAssets, copyStatic, writeLoaded } from "./assets.ts";
import {
  addressProblems,
  type ClubTemplates,
  clubConfiguration,
  clubPartials,
  readClubTemplates,
  replacementOf,
  templateProblem,
} from "./club-templates.ts";
import eleventyConfiguration from "./eleventy.config.ts";
import { writeOpenGraphImages } from "./open-graph-images.ts";
import { guideOutputs, type Output } from "./outputs.ts";
import { loadTemplates, sitePages, TEMPLATES } from "./pages.ts";

/** Eleventy takes paths from where the program was started. */
const fromHere = (file: string): string => path.relative(process.cwd(), file);

/** Eleventy is loaded only when there is something to draw. */
async function runEleventy(
  inputDir: string,
  outDir: string,
  config: (eleventyConfig: UserConfig) => void | Promise<void>,
): Promise<readonly Written[]> {
  const { default: Eleventy } = await import("@11ty/eleventy");
  const eleventy = new Eleventy(fromHere(inputDir), fromHere(outDir), {
    configPath: false,
    quietMode: true,
    config,
  });
  eleventy.disableLogger();
  const [, written] = await eleventy.write();
  return written;
}

/** Eleventy holds what it has written until it is done; a large club's pages would fill the memory. */
const PAGES_AT_ONCE = 250;

/** How the guide's site is written. */
interface SiteOptions {
  /** The club's folder, whose `static` and `templates` belong to the site. */
  readonly clubDir?: string | undefined;
  /** A lake's slug: its page alone. */
  readonly only?: string | undefined;
  /** Pages and pictures that need not be drawn again. */
  readonly kept?: KeptFiles | undefined;
  /** Kinds of the JSON Schemas that are published beside the site. */
  readonly schemas?: readonly string[];
  /** Told of every page. */
  readonly progress?: Progress | undefined;
}

interface WrittenSite {
  /** Every file of the whole guide: the site's, those written elsewhere, and what the club's own folders add. */
  readonly outputs: readonly Output[];
  /** What the club's own templates do wrong; then the site must not be published. */
  readonly problems: readonly Diagnostic[];
}

/** The message of an error of Eleventy's, with that of the error it came from. */
function messageOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const cause = "originalError" in error ? error.originalError : undefined;
  return cause === undefined ? error.message : messageOf(cause);
}

/** Writes the pages of the club's own templates. */
async function writeClubTemplates(
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
    const hint = "see Eleventy’s documentation of the template’s language, eleventy.dev";
    return { outputs: [], problems: [templateProblem("", messageOf(error), hint)] };
  }
}

/** True for the system's own refusals, such as a full disk. */
function isSystemError(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ("errno" in error) return true;
  return "originalError" in error && isSystemError(error.originalError);
}

/**
 * Writes the guide's pages and what they load.
 * @param outDir where the guide is written; files already there that are not pages stay
 * @throws when a page cannot be drawn or written
 */
export async function writeSite(
  guide: Guide,
  outDir: string,
  { clubDir, only, kept = keptNothing, schemas = [], progress }: SiteOptions = {},
): Promise<WrittenSite> {
  const club = clubDir === undefined ? undefined : await readClubTemplates(clubDir);
  const partials = club === undefined ? [] : clubPartials(club);
  const all = await loadTemplates();
  const templates = new Map(
    [...all].filter(([name]) => club === undefined || replacementOf(club, name) === undefined),
  );
  const pages = sitePages(templates, guide, only);
  const outputs = guideOutputs(guide, only === undefined ? pages : sitePages(templates, guide), schemas);
  progress?.("pages", 0, pages.length);
  await copyAssets(outDir);
  if (only === undefined) await writeLoaded(guide, outDir);
  const ownParts = club !== undefined && partials.length > 0 ? { clubTemplates: club.sources } : {};
  const toDraw = pages.filter(
    ({ address, needs }) => !kept.reuse("page", { ...needs, ...ownParts }, [address]),
  );
  let done = pages.length - toDraw.length;
  progress?.("pages", done, pages.length);
  const drawn = (): void => {
    done += 1;
    progress?.("pages", done, pages.length);
  };
  for (let i = 0; i < toDraw.length; i += PAGES_AT_ONCE) {
    const batch = new Map(toDraw.slice(i, i + PAGES_AT_ONCE).map((page) => [page.address, page] as const));
    await runEleventy(
      TEMPLATES,
      outDir,
      eleventyConfiguration({ guide, templates, pages: batch, partials, drawn }),
    );
  }
  await writeOpenGraphImages(guide, outDir, { only, kept });
  const copied = clubDir === undefined ? [] : await copyStatic(clubDir, outDir);
  const added = await writeClubTemplates(club, guide, outDir, outputs);
  return { outputs: [...outputs, ...copied, ...added.outputs], problems: added.problems };
}
