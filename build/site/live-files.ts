import { existsSync } from "node:fs";
import type { Guide } from "../guide/guide-schema.ts";
import { clubTemplatesDir } from "./club-templates.ts";
import { loadTemplates, type SitePage, sitePages } from "./pages.ts";
import { dataFiles } from "./text-files.ts";

/** Gives the text of a file by its address inside the guide, such as "lakes/ember/index.html". */
type TextAt = (address: string) => string | undefined;

/**
 * Draws the pages of a guide, and what they load, each when it is asked for: to look at before anything is written. A club
 * that has templates of its own sees its pages as Eleventy wrote them.
 * @param clubDir the club's folder
 * @returns what gives for a guide the text of its files; undefined for what is no page, and for what is the same for every guide
 */
export async function openLiveFiles(clubDir: string): Promise<(guide: Guide) => TextAt> {
  const templates = await loadTemplates();
  return (guide) => {
    let pages: ReadonlyMap<string, SitePage> | undefined;
    let data: ReadonlyMap<string, string> | undefined;
    const hasOwn = existsSync(clubTemplatesDir(clubDir));
    return (address) => {
      pages ??= new Map(sitePages(templates, guide).map((page) => [page.address, page]));
      const page = hasOwn ? undefined : pages.get(address);
      if (page !== undefined) return page.text();
      data ??= new Map(dataFiles(guide).map((file) => [file.address, file.text]));
      return data.get(address);
    };
  };
}
