import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { layoutBack } from "./back.ts";
import { makeDocument } from "./document.ts";
import { drawFace } from "./draw-face.ts";
import type { Misfit } from "./face.ts";
import type { Ruler } from "./flow.ts";
import { createRuler, type Fonts, parseFonts } from "./fonts.ts";
import { layoutFront } from "./front.ts";
import { A6, SHEET_SIZES, type SheetName } from "./paper.ts";
import { type CardFaces, sheetsPdf } from "./sheets.ts";

/** Something a club wrote that does not fit on a card. */
export interface CardProblem extends Diagnostic {
  /** The lake's slug. */
  readonly card: string;
  readonly field: string;
}

/** Where a field is written, for those that are not the lake's own. */
const FIELD_FILES: Readonly<Record<string, string>> = {
  notice: "club.yaml",
  leaders: "rigs.yaml",
  patterns: "patterns",
  baseUrl: "club.yaml",
};

const problemOf = (card: string, { field, message, hint }: Misfit): CardProblem => ({
  card,
  field,
  file: FIELD_FILES[field] ?? `lakes/${card}.yaml`,
  line: 1,
  column: 1,
  severity: "error",
  code: "card-overflow",
  message: `card ${card}, field ${field}: ${message}`,
  hint,
});

interface CardLayout extends CardFaces {
  readonly slug: string;
  readonly problems: readonly CardProblem[];
}

/** Places everything on both sides of a lake's card, and says what does not fit. Inks nothing. */
export function layoutCard(guide: Guide, lake: GuideLake, ruler: Ruler): CardLayout {
  const front = layoutFront(guide, lake, ruler);
  const back = layoutBack(guide, lake, ruler);
  return {
    slug: lake.slug,
    name: lake.name,
    front: front.face,
    back: back.face,
    problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(lake.slug, misfit)),
  };
}

/** One card as a document of two A6 pages. */
const cardPdf = (guide: Guide, card: CardFaces, fonts: Fonts): Promise<Buffer> =>
  makeDocument(
    {
      title: `${card.name}: lake card as of ${dayMonthYear(guide.asOf)}`,
      author: guide.club.name,
      asOf: guide.asOf,
    },
    fonts,
    (document, root) => {
      for (const face of [card.front, card.back]) {
        document.addPage({ size: [A6.width_pt, A6.height_pt], margin: 0 });
        document.outline.addItem(face.title);
        drawFace(document, root, face);
      }
    },
  );

/**
 * Writes `cards/SLUG.pdf` for every lake, and `cards/sheets-a4.pdf` and `cards/sheets-letter.pdf` with all of them.
 * @param only one lake's slug: its card alone is written, the sheets stay as they are
 * @returns what does not fit; then nothing was written
 */
export async function writeCards(guide: Guide, outDir: string, only?: string): Promise<CardProblem[]> {
  const fonts = parseFonts();
  const ruler = createRuler(fonts);
  const cards = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) => layoutCard(guide, lake, ruler));
  const problems = cards.flatMap((card) => card.problems);
  if (problems.length > 0) return problems;
  const dir = path.join(outDir, "cards");
  await mkdir(dir, { recursive: true });
  for (const card of cards)
    await writeFile(path.join(dir, `${card.slug}.pdf`), await cardPdf(guide, card, fonts));
  if (only === undefined)
    for (const sheet of Object.keys(SHEET_SIZES) as SheetName[])
      await writeFile(path.join(dir, `sheets-${sheet}.pdf`), await sheetsPdf(guide, cards, sheet, fonts));
  return [];
}
