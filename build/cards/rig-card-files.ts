import type { GuideFrame } from "../guide/guide-frame.ts";
import { type CardFiles, cardFiles } from "./card-file.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import { layoutRigCard, RIG_CARDS } from "./rig-card.ts";

/** Both sizes of the rig card. */
export const planRigCards = (frame: GuideFrame): CardFiles[] =>
  RIG_CARDS.map((design) =>
    cardFiles(`rig card ${design.slug}`, [design.slug], { guide: frame }, ({ guide }, ruler) => {
      const { front, back } = layoutRigCard(guide, design, ruler);
      const sheet = { title: `Rig card, ${design.paper.name},`, paper: design.paper };
      return {
        problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(design.slug, misfit)),
        ink: async (fonts) => [await cardPdf(guide, [front.face, back.face], sheet, fonts)],
      };
    }),
  );
