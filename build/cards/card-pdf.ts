import type { Guide } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { makeDocument } from "./document.ts";
import { drawFace } from "./draw-face.ts";
import type { Fonts } from "./fonts.ts";
import type { PaperSize } from "./paper.ts";
import type { CardFaces } from "./sheets.ts";

/** Cards as a document of two pages of their size each, fronts before backs. */
export const cardPdf = (
  guide: Guide,
  cards: readonly Pick<CardFaces, "front" | "back">[],
  { title, paper }: { readonly title: string; readonly paper: PaperSize },
  fonts: Fonts,
): Promise<Buffer> =>
  makeDocument(
    { title: `${title} as of ${dayMonthYear(guide.asOf)}`, author: guide.club.name, asOf: guide.asOf },
    fonts,
    (document, root) => {
      for (const face of cards.flatMap(({ front, back }) => [front, back])) {
        document.addPage({ size: [paper.width_pt, paper.height_pt], margin: 0 });
        document.outline.addItem(face.title);
        drawFace(document, root, face);
      }
    },
  );
