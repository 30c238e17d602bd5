import type { Guide } from "../guide/guide-schema.ts";
import { dataFiles } from "./data-files.ts";
import { pageText } from "./page-text.ts";
import { sitePages } from "./pages.tsx";

/**
 * The pages of a guide and what its own pages load, each drawn when it is asked for: to look at before anything is written.
 * @returns what gives the text of a file by its address inside the guide, such as "lakes/ember/index.html"; undefined for
 * what is no page, and for what is the same for every guide
 */
export function liveFiles(guide: Guide): (address: string) => string | undefined {
  let files: ReadonlyMap<string, () => string> | undefined;
  return (address) => {
    files ??= new Map([
      ...sitePages(guide).map((page) => [page.address, () => pageText(page)] as const),
      ...dataFiles(guide).map(({ address: own, text }) => [own, () => text] as const),
    ]);
    return files.get(address)?.();
  };
}
