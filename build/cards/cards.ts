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
import { type Label, sharedLabels, tripLabels } from "./labels.ts";
import { layoutLabel } from "./labels-face.ts";
import { labelsPdf } from "./labels-sheet.ts";
import { A6, type PaperSize, SHEET_SIZES, type SheetName } from "./paper.ts";
import { layoutRigCard, RIG_CARDS } from "./rig-card.ts";
import { type CardFaces, sheetsPdf } from "./sheets.ts";

/** Something a club wrote that does not fit on a card. */
export interface CardProblem extends Diagnostic {
  /** The card's file name without its ending: of a lake's card the slug. */
  readonly card: string;
  readonly field: string;
}

/** Where a field is written, for those that are not the lake's own. */
const FIELD_FILES: Readonly<Record<string, string>> = {
  notice: "club.yaml",
  leaders: "rigs.yaml",
  shot: "rigs.yaml",
  lines: "rigs.yaml",
  swing: "rigs.yaml",
  tippet: "rigs.yaml",
  rig: "rigs.yaml",
  cautions: "club.yaml",
  boards: "trips",
  asOf: "club.yaml",
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

const SHEETS = Object.keys(SHEET_SIZES) as SheetName[];

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

/** A card's two sides as a document of two pages of its size. */
const cardPdf = (
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

/** A file placed but not inked yet. */
interface Planned {
  /** Without its ending. */
  readonly name: string;
  readonly problems: readonly CardProblem[];
  readonly make: (fonts: Fonts) => Promise<Buffer>;
}

/** Both sizes of the rig card. */
const planRigCards = (guide: Guide, ruler: Ruler): Planned[] =>
  RIG_CARDS.map((design) => {
    const { front, back } = layoutRigCard(guide, design, ruler);
    const sheet = { title: `Rig card, ${design.paper.name},`, paper: design.paper };
    return {
      name: design.slug,
      problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(design.slug, misfit)),
      make: (fonts) => cardPdf(guide, { front: front.face, back: back.face }, sheet, fonts),
    };
  });

/** One set of labels on each kind of sheet; none of a set that is empty. */
function planLabels(
  guide: Guide,
  ruler: Ruler,
  name: string,
  title: string,
  labels: readonly Label[],
): Planned[] {
  if (labels.length === 0) return [];
  const placed = new Map([...new Set(labels)].map((label) => [label, layoutLabel(label, guide, ruler)]));
  const faces = labels.flatMap((label) => placed.get(label)?.face ?? []);
  const problems = [...placed.values()].flatMap(({ misfits }) =>
    misfits.map((misfit) => problemOf(name, misfit)),
  );
  return SHEETS.map((sheet, i) => ({
    name: `${name}-${sheet}`,
    problems: i === 0 ? problems : [],
    make: (fonts) => labelsPdf(guide, { title, faces, sheet }, fonts),
  }));
}

/** The club's labels on one set of sheets; each trip's on its own, so that an unlisted trip is not given away. */
const planAllLabels = (guide: Guide, ruler: Ruler): Planned[] => [
  ...planLabels(guide, ruler, "labels", "Leader labels", sharedLabels(guide)),
  ...guide.trips.flatMap((trip) =>
    planLabels(guide, ruler, `labels-${trip.slug}`, `Leader labels for ${trip.name}`, tripLabels(trip)),
  ),
];

/** Every lake's card and, unless only one is wanted, the sheets of all of them. */
function planLakeCards(guide: Guide, ruler: Ruler, only: string | undefined): Planned[] {
  const cards = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) => layoutCard(guide, lake, ruler));
  const alone = cards.map(
    (card): Planned => ({
      name: card.slug,
      problems: card.problems,
      make: (fonts) => cardPdf(guide, card, { title: `${card.name}: lake card`, paper: A6 }, fonts),
    }),
  );
  const sheets = SHEETS.map(
    (sheet): Planned => ({
      name: `sheets-${sheet}`,
      problems: [],
      make: (fonts) => sheetsPdf(guide, cards, sheet, fonts),
    }),
  );
  return only === undefined ? [...alone, ...sheets] : alone;
}

/**
 * Writes `cards/SLUG.pdf` for every lake, `cards/sheets-SHEET.pdf` with all of them, the rig card in its sizes, and the
 * leader boards' labels: `cards/labels-SHEET.pdf` for the club and its listed trips, `cards/labels-TRIP-SHEET.pdf` for
 * each trip that needs any. SHEET is `a4` or `letter`.
 * @param only one lake's slug: its card alone is written, the rest stays as it is
 * @returns what does not fit; then nothing was written
 */
export async function writeCards(guide: Guide, outDir: string, only?: string): Promise<CardProblem[]> {
  const fonts = parseFonts();
  const ruler = createRuler(fonts);
  const planned = planLakeCards(guide, ruler, only);
  if (only === undefined) planned.push(...planRigCards(guide, ruler), ...planAllLabels(guide, ruler));
  const problems = planned.flatMap((file) => file.problems);
  if (problems.length > 0) return problems;
  const dir = path.join(outDir, "cards");
  await mkdir(dir, { recursive: true });
  for (const { name, make } of planned) await writeFile(path.join(dir, `${name}.pdf`), await make(fonts));
  return [];
}
