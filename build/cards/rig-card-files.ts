import type { GuideFrame } from "../guide/guide-frame.ts";
import { type CardFiles, type CardKind, cardFiles } from "./card-file.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import type { FaceLayout } from "./face.ts";
import { A6, type PaperSize, SHEET_NAMES } from "./paper.ts";
import { layoutRigCard, RIG_CARD_DESIGNS } from "./rig-card.ts";
import { layoutRigDrawings } from "./rig-drawings-card.ts";
import { sheetsPdfs } from "./sheets.ts";

const DRAWINGS = "rig-drawings-a6";

/** One card about rigs, and the file it has to itself. */
interface RigFile {
  readonly file: string;
  readonly name: string;
  readonly paper: PaperSize;
  readonly sides: { readonly front: FaceLayout; readonly back: FaceLayout };
}

/** Both sizes of the rig card, the rig drawings, and sheets of those of them that are A6. */
export const RIG_CARDS: CardKind<{ guide: GuideFrame }> = {
  kind: "rig cards",
  place: ({ guide }, { ruler }) => {
    const all: RigFile[] = [
      ...RIG_CARD_DESIGNS.map((design) => ({
        file: design.slug,
        name: "Rig card",
        paper: design.paper,
        sides: layoutRigCard(guide, design, ruler),
      })),
      { file: DRAWINGS, name: "Rig drawings", paper: A6, sides: layoutRigDrawings(guide, ruler) },
    ];
    const cards = all
      .filter(({ paper }) => paper === A6)
      .map(({ name, sides: { front, back } }) => ({ name, front: front.face, back: back.face }));
    return {
      problems: all.flatMap(({ file, sides: { front, back } }) =>
        [...front.misfits, ...back.misfits].map((misfit) => problemOf(file, misfit)),
      ),
      ink: async (fonts) => [
        ...(await Promise.all(
          all.map(({ name, paper, sides: { front, back } }) =>
            cardPdf(guide, [front.face, back.face], { title: `${name}, ${paper.name},`, paper }, fonts),
          ),
        )),
        ...(await sheetsPdfs(guide, { what: "Rig cards", cards, count: cards.length }, fonts)),
      ],
    };
  },
};

export const planRigCards = (guide: GuideFrame): CardFiles =>
  cardFiles(
    RIG_CARDS,
    [...RIG_CARD_DESIGNS.map(({ slug }) => slug), DRAWINGS, ...SHEET_NAMES.map((sheet) => `rigs-${sheet}`)],
    { guide },
  );
