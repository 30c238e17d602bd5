import type { GuideFrame } from "../guide/guide-frame.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { makeDocument } from "./document.ts";
import { drawFace } from "./draw-face.ts";
import type { Face } from "./face.ts";
import type { Fonts } from "./fonts.ts";
import type { PaperSize } from "./paper.ts";

/** The sides of a card, or of a few that belong together, as a document with a page of its size for each. */
export const cardPdf = (
  guide: GuideFrame,
  faces: readonly Face[],
  { title, paper }: { readonly title: string; readonly paper: PaperSize },
  fonts: Fonts,
): Promise<Buffer> =>
  makeDocument(
    { title: `${title} as of ${dayMonthYear(guide.asOf)}`, author: guide.club.name, asOf: guide.asOf },
    fonts,
    (document, root) => {
      for (const face of faces) {
        document.addPage({ size: [paper.width_pt, paper.height_pt], margin: 0 });
        document.outline.addItem(face.title);
        drawFace(document, root, face);
      }
    },
  );
