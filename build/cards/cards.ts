import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import type { Progress } from "../model/progress.ts";
import { layoutBack } from "./back.ts";
import { planBoxCards } from "./box-plan-files.ts";
import { cardPdf } from "./card-pdf.ts";
import { type CardProblem, problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import { createRuler, type Fonts, parseFonts } from "./fonts.ts";
import { layoutFront } from "./front.ts";
import { planLabels } from "./labels-files.ts";
import { layoutMapBack } from "./map-back.ts";
import { layoutMapFront } from "./map-front.ts";
import { A6, SHEET_NAMES } from "./paper.ts";
import type { Planned } from "./planned.ts";
import { planReportSlips } from "./report-slip-files.ts";
import { planRigCards } from "./rig-card-files.ts";
import { planRigDrawings } from "./rig-drawings-card.ts";
import { type CardFaces, sheetsPdf } from "./sheets.ts";
import { planTripCards } from "./trip-card.ts";

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

/** Places everything on both sides of the card of a lake's map; none for a lake without a shape. */
export function layoutMapCard(guide: Guide, lake: GuideLake, ruler: Ruler): CardLayout | undefined {
  const { map, wind } = lake.place;
  if (map === null || wind === null) return undefined;
  const front = layoutMapFront(guide, lake, map, ruler);
  const back = layoutMapBack(guide, lake, wind, { ruler, withLight: !front.hasLight });
  return {
    slug: lake.slug,
    name: `${lake.name}, map`,
    front: front.face,
    back: back.face,
    problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(lake.slug, misfit)),
  };
}

/** An error that says which card it is about. */
function ofCard(name: string, error: unknown): Error {
  const said = error instanceof Error ? error.message : String(error);
  return new Error(`cards/${name}.pdf cannot be made: ${said}`, { cause: error });
}

async function inked({ name, make }: Planned, fonts: Fonts): Promise<Buffer> {
  try {
    return await make(fonts);
  } catch (error) {
    throw ofCard(name, error);
  }
}

/** A lake's own card and, where its shape is known, that of its map. */
function layoutLake(guide: Guide, lake: GuideLake, ruler: Ruler): readonly [CardLayout, ...CardLayout[]] {
  try {
    const card = layoutCard(guide, lake, ruler);
    const map = layoutMapCard(guide, lake, ruler);
    return map === undefined ? [card] : [card, map];
  } catch (error) {
    throw ofCard(lake.slug, error);
  }
}

/** Every lake's cards and, unless only one is wanted, the sheets of all of them. */
function planLakeCards(guide: Guide, ruler: Ruler, only: string | undefined): Planned[] {
  const cards = guide.lakes
    .filter(({ slug }) => only === undefined || slug === only)
    .map((lake) => layoutLake(guide, lake, ruler));
  const alone = cards.map(
    (own): Planned => ({
      name: own[0].slug,
      problems: own.flatMap(({ problems }) => problems),
      make: (fonts) =>
        cardPdf(
          guide,
          own.flatMap(({ front, back }) => [front, back]),
          { title: `${own[0].name}: ${own.length > 1 ? "lake and map cards" : "lake card"}`, paper: A6 },
          fonts,
        ),
    }),
  );
  const sheets = SHEET_NAMES.map(
    (sheet): Planned => ({
      name: `sheets-${sheet}`,
      problems: [],
      make: (fonts) => sheetsPdf(guide, "Lake cards", cards.flat(), sheet, fonts),
    }),
  );
  return only === undefined ? [...alone, ...sheets] : alone;
}

const planCards = (guide: Guide, ruler: Ruler, only?: string): Planned[] => {
  const lakes = planLakeCards(guide, ruler, only);
  return only === undefined
    ? [
        ...lakes,
        ...planRigCards(guide, ruler),
        planRigDrawings(guide, ruler),
        ...planLabels(guide, ruler),
        ...planReportSlips(guide, ruler),
        ...planBoxCards(guide, ruler),
        ...planTripCards(guide, ruler),
      ]
    : lakes;
};

/** Two cards that would be one file: a lake's slug that is also the name of a sheet, a rig card or a label sheet. */
const namesTaken = (planned: readonly Planned[]): CardProblem[] =>
  planned
    .filter(({ name }, place) => planned.findIndex((other) => other.name === name) < place)
    .map(({ name }) => ({
      ...problemOf(name, {
        field: "file name",
        message: `cards/${name}.pdf is made by the program`,
        hint: "give the lake’s file another name",
      }),
      code: "card-name-taken",
    }));

const problemsOf = (planned: readonly Planned[]): CardProblem[] => [
  ...planned.flatMap((file) => file.problems),
  ...namesTaken(planned),
];

/** What would not fit on the cards; inks nothing. */
export const cardProblems = (guide: Guide): CardProblem[] =>
  problemsOf(planCards(guide, createRuler(parseFonts())));

/**
 * Writes `cards/SLUG.pdf` for every lake, its map's card behind its own, `cards/sheets-SHEET.pdf` with all of them, the rig cards, and the
 * leader boards' labels: `cards/labels-SHEET.pdf` for the club and its listed trips, `cards/labels-TRIP-SHEET.pdf` for
 * each trip that needs any; `cards/box-TRIP.pdf`, each trip's fly box and tying list, and `cards/trip-TRIP.pdf`, its
 * own card; `cards/report-slip-a6.pdf` and `cards/report-slips-SHEET.pdf`, the slip to report on. SHEET is `a4` or `letter`.
 * @param only one lake's slug: its card alone is written, the rest stays as it is
 * @param progress told of every file of cards
 * @returns what does not fit; then nothing was written
 * @throws naming the card that cannot be made; a system error when a file cannot be written
 */
export async function writeCards(
  guide: Guide,
  outDir: string,
  only?: string,
  progress?: Progress,
): Promise<CardProblem[]> {
  progress?.("cards", 0, 0);
  const fonts = parseFonts();
  const ruler = createRuler(fonts);
  const planned = planCards(guide, ruler, only);
  const problems = problemsOf(planned);
  if (problems.length > 0) return problems;
  const dir = path.join(outDir, "cards");
  await mkdir(dir, { recursive: true });
  for (const [i, card] of planned.entries()) {
    progress?.("cards", i, planned.length);
    await writeFile(path.join(dir, `${card.name}.pdf`), await inked(card, fonts));
  }
  progress?.("cards", planned.length, planned.length);
  return [];
}
