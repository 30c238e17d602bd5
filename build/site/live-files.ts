import type { Guide } from "../guide/guide-schema.ts";
import { dataFiles } from "./data-files.ts";
import { pageText } from "./page-text.ts";
import { type SitePage, sitePages } from "./pages.tsx";

/**
 * The pages of a guide and what its own pages load, each drawn when it is asked for: to look at before anything is written.
 * @returns what gives the text of a file by its address inside the guide, such as "lakes/ember/index.html"; undefined for
 * what is no page, and for what is the same for every guide
 */
export function liveFiles(guide: Guide): (address: string) => string | undefined {
  let pages: ReadonlyMap<string, SitePage> | undefined;
  let data: ReadonlyMap<string, string> | undefined;
  return (address) => {
    pages ??= new Map(sitePages(guide).map((page) => [page.address, page]));
    const page = pages.get(address);
    if (page !== undefined) return pageText(page);
    data ??= new Map(dataFiles(guide).map((file) => [file.address, file.text]));
    return data.get(address);
  };
}
