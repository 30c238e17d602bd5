import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideLake } from "../../guide/guide-schema.ts";
import { type SheetVolume, sheetsName } from "../../guide/sheet-volumes.ts";
import { CARD, onPaper, PAPERS } from "../../model/addresses.ts";
import {
  type CardFiles,
  type CardKind,
  type CardLayout,
  type CardTools,
  cardFiles,
  type LakeLayout,
  overflowProblem,
} from "../card-kind.ts";
import type { Ruler } from "../layout/column.ts";
import { A6 } from "../layout/page.ts";
import { layoutMapBack } from "../map/back.ts";
import { layoutMapFront } from "../map/front.ts";
import { cardPdf } from "../pdf/card-pdf.ts";
import { sheetsPdfs } from "../pdf/sheets.ts";
import { layoutBack } from "./back.ts";
import { layoutFront } from "./front.ts";
import { cardSearch, layoutSearchBack, layoutSearchFront } from "./search-card.ts";

/** Places everything on both sides of a lake's card, and says what does not fit. Inks nothing. */
export function layoutCard(guide: GuideFrame, lake: GuideLake, ruler: Ruler): CardLayout {
  const front = layoutFront(guide, lake, ruler);
  const back = layoutBack(guide, lake, ruler);
  return {
    name: lake.name,
    front: front.face,
    back: back.face,
    problems: [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(lake.slug, misfit)),
  };
}

/** True for a lake whose map has a card. */
const hasMapCard = ({ place: { map, wind } }: GuideLake): boolean => map !== null && wind !== null;

/** Places everything on both sides of the card of a lake's map; none for a lake without a shape. */
export function layoutMapCard(guide: GuideFrame, lake: GuideLake, ruler: Ruler): CardLayout | undefined {
  const { map, wind } = lake.place;
  if (map === null || wind === null) return undefined;
  const front = layoutMapFront(guide, lake, map, ruler);
  const back = layoutMapBack(guide, lake, wind, { ruler, withLight: !front.hasLight });
  return {
    name: `${lake.name}, map`,
    front: front.face,
    back: back.face,
    problems: [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(lake.slug, misfit)),
  };
}

/** Places everything on both sides of the card of a lake's search; none where the club names no place. */
function layoutSearchCard(guide: GuideFrame, lake: GuideLake, ruler: Ruler): CardLayout | undefined {
  const search = cardSearch(lake);
  if (search === undefined) return undefined;
  const front = layoutSearchFront(guide, lake, search, ruler);
  const back = layoutSearchBack(guide, lake, search, ruler);
  return {
    name: `${lake.name}, search`,
    front: front.face,
    back: back.face,
    problems: [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(lake.slug, misfit)),
  };
}

/** A lake's own card and, where its shape is known and places are named, those of its map and its search. */
const layoutLake = (guide: GuideFrame, lake: GuideLake, ruler: Ruler): LakeLayout => ({
  lake,
  cards: [
    layoutCard(guide, lake, ruler),
    layoutMapCard(guide, lake, ruler),
    layoutSearchCard(guide, lake, ruler),
  ].flatMap((card) => card ?? []),
});

/** A lake's cards, its map's and its search's behind its own. */
export const LAKE_CARDS: CardKind<{ guide: GuideFrame; lake: GuideLake }> = {
  kind: "lake cards",
  place: ({ guide, lake }, { ruler }) => {
    const layout = layoutLake(guide, lake, ruler);
    const { cards } = layout;
    const title = `${lake.name}: ${cards.length > 1 ? "lake cards" : "lake card"}`;
    return {
      problems: cards.flatMap(({ problems }) => problems),
      lakes: [layout],
      ink: async (fonts) => {
        const faces = cards.flatMap(({ front, back }) => [front, back]);
        return [await cardPdf(guide, faces, { title, paper: A6 }, fonts)];
      },
    };
  },
};

export const planLakeCards = (guide: GuideFrame, lake: GuideLake): CardFiles =>
  cardFiles(LAKE_CARDS, [CARD.lake(lake.slug)], { guide, lake });

/** The cards of each lake in turn: those placed already, the others placed when their turn comes. */
function* layoutsOf(
  guide: GuideFrame,
  lakes: readonly GuideLake[],
  { ruler, lakes: placed }: CardTools,
): Generator<CardLayout> {
  for (const lake of lakes)
    yield* (placed.find((layout) => layout.lake === lake) ?? layoutLake(guide, lake, ruler)).cards;
}

/** The sheets of a volume of lakes' cards. What does not fit is reported with the lake's own file. */
export const LAKE_SHEETS: CardKind<{
  guide: GuideFrame;
  number: number | null;
  lakes: readonly GuideLake[];
}> = {
  kind: "sheets of lake cards",
  place: ({ guide, number, lakes }, tools) => ({
    problems: [],
    ink: (fonts) =>
      sheetsPdfs(
        guide,
        {
          what: number === null ? "Lake cards" : `Lake cards, volume ${number}`,
          cards: layoutsOf(guide, lakes, tools),
          count:
            lakes.length +
            lakes.filter(hasMapCard).length +
            lakes.filter((lake) => cardSearch(lake) !== undefined).length,
        },
        fonts,
      ),
  }),
};

export const planSheets = (guide: GuideFrame, volume: SheetVolume<GuideLake>): CardFiles =>
  cardFiles(
    LAKE_SHEETS,
    PAPERS.map((paper) => onPaper(sheetsName(volume), paper)),
    { guide, ...volume },
  );
