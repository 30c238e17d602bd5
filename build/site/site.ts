import type { Guide } from "../guide/guide-schema.ts";
import { type LastOutputs, noOutputs } from "../incremental/outputs.ts";
import type { Progress } from "../model/progress.ts";
import { copyAssets, copyStatic, writeLoaded } from "./assets.ts";
import {
  clubPartials,
  partialProblem,
  readClubTemplates,
  replacementOf,
  type WrittenSite,
  writeClubTemplates,
} from "./club-templates.ts";
import eleventyConfiguration from "./eleventy.config.ts";
import { writeOpenGraphImages } from "./open-graph-images.ts";
import { guideOutputs } from "./outputs.ts";
import { loadTemplates, sitePages, TEMPLATES } from "./pages.ts";
import { runEleventy } from "./run-eleventy.ts";

/** Eleventy holds what it has written until it is done; a large club's pages would fill the memory. */
const PAGES_AT_ONCE = 250;

/** How the guide's site is written. */
interface SiteOptions {
  /** The club's folder, whose `static` and `templates` belong to the site. */
  readonly clubDir?: string | undefined;
  /** A lake's slug: its page alone. */
  readonly only?: string | undefined;
  /** Pages and pictures that need not be drawn again. */
  readonly kept?: LastOutputs | undefined;
  /** Kinds of the JSON Schemas that are published beside the site. */
  readonly schemas?: readonly string[];
  /** Told of every page. */
  readonly progress?: Progress | undefined;
}

/**
 * Writes the guide's pages and what they load.
 * @param outDir where the guide is written; files already there that are not pages stay
 * @throws when a page cannot be drawn or written
 */
export async function writeSite(
  guide: Guide,
  outDir: string,
  { clubDir, only, kept = noOutputs, schemas = [], progress }: SiteOptions = {},
): Promise<WrittenSite> {
  const club = clubDir === undefined ? undefined : await readClubTemplates(clubDir);
  const partials = club === undefined ? [] : clubPartials(club);
  const templates = await loadTemplates();
  const own = new Map(
    [...templates].filter(([name]) => club === undefined || replacementOf(club, name) === undefined),
  );
  const pages = sitePages(own, guide, only);
  const outputs = guideOutputs(guide, only === undefined ? pages : sitePages(own, guide), schemas);
  progress?.("pages", 0, pages.length);
  await copyAssets(outDir);
  if (only === undefined) await writeLoaded(guide, outDir);
  const ownParts = club !== undefined && partials.length > 0 ? { clubTemplates: club.sources } : {};
  const toDraw = pages.filter(
    ({ address, inputs }) => !kept.reuse("page", { ...inputs, ...ownParts }, [address]),
  );
  let done = pages.length - toDraw.length;
  progress?.("pages", done, pages.length);
  const drawn = (): void => {
    done += 1;
    progress?.("pages", done, pages.length);
  };
  try {
    for (let i = 0; i < toDraw.length; i += PAGES_AT_ONCE) {
      const batch = new Map(toDraw.slice(i, i + PAGES_AT_ONCE).map((page) => [page.address, page] as const));
      const configuration = eleventyConfiguration({ guide, templates, pages: batch, partials, drawn });
      await runEleventy(TEMPLATES, outDir, configuration);
    }
  } catch (error) {
    const problem = partialProblem(error);
    if (problem === undefined) throw error;
    return { outputs, problems: [problem] };
  }
  await writeOpenGraphImages(guide, outDir, { only, kept });
  const copied = clubDir === undefined ? [] : await copyStatic(clubDir, outDir);
  const added = await writeClubTemplates(club, guide, outDir, outputs);
  return { outputs: [...outputs, ...copied, ...added.outputs], problems: added.problems };
}
