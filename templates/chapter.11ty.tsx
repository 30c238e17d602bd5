import type { Guide, GuidePage } from "../build/guide/guide-schema.ts";
import { printedOf } from "../build/guide/print-files.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { ChapterPage } from "./_includes/chapter-page.tsx";
import type { Rendered } from "./_includes/page-template.ts";

interface Data {
  readonly guide: Guide;
  readonly chapter: GuidePage;
}

export const data = {
  pagination: { data: "guide.chapters", size: 1, alias: "chapter" },
  permalink: ({ chapter }: Data) => ADDRESS.chapter(chapter.slug),
  inputs: ({ guide, chapter }: Data) => ({
    chapter,
    scored:
      chapter.slug === "methods"
        ? { backtest: guide.backtest, clearDays: guide.clearDays, reporting: guide.reporting }
        : null,
    printed: chapter.slug === "printing" ? printedOf(guide) : null,
  }),
} as const;

/** A standing chapter. */
export const render = (page: Rendered<typeof data>) => <ChapterPage {...page} />;
