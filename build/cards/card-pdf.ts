import type { Guide } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { makeDocument } from "./document.ts";
import { drawFace } from "./draw-face.ts";
import type { Fonts } from "./fonts.ts";
import type { PaperSize } from "./paper.ts";
import type { CardFaces } from "./sheets.ts";

/** A card's two sides as a document of two pages of its size. */
export const cardPdf = (
  guide: Guide,
  card: Pick<CardFaces, "front" | "back">,
  { title, paper }: { readonly title: string; readonly paper: PaperSize },
  fonts: Fonts,
): Promise<Buffer> =>
  makeDocument(
    { title: `${title} as of ${dayMonthYear(guide.asOf)}`, author: guide.club.name, asOf: guide.asOf },
    fonts,
    (document, root) => {
      for (const face of [card.front, card.back]) {
        document.addPage({ size: [paper.width_pt, paper.height_pt], margin: 0 });
        document.outline.addItem(face.title);
        drawFace(document, root, face);
      }
    },
  );
