import type { GuidePage } from "../build/guide/guide-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { ChapterPage } from "./_includes/chapter-page.tsx";
import type { Rendered } from "./_includes/page-template.ts";

interface Data {
  readonly chapter: GuidePage;
}

export const data = {
  pagination: { data: "guide.pages", size: 1, alias: "chapter" },
  permalink: ({ chapter }: Data) => ADDRESS.clubPage(chapter.slug),
  inputs: ({ chapter }: Data) => ({ chapter }),
} as const;

/** A page from the club's folder `pages`. Its Markdown was made HTML with the Guide: search and guide.json hold it too. */
export const render = (page: Rendered<typeof data>) => <ChapterPage {...page} />;
