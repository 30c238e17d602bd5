import type { Guide } from "../guide/guide-schema.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import type { Planned } from "./planned.ts";
import { layoutRigCard, RIG_CARDS } from "./rig-card.ts";

/** Both sizes of the rig card. */
export const planRigCards = (guide: Guide, ruler: Ruler): Planned[] =>
  RIG_CARDS.map((design) => {
    const { front, back } = layoutRigCard(guide, design, ruler);
    const sheet = { title: `Rig card, ${design.paper.name},`, paper: design.paper };
    return {
      name: design.slug,
      problems: [...front.misfits, ...back.misfits].map((misfit) => problemOf(design.slug, misfit)),
      make: (fonts) => cardPdf(guide, [front.face, back.face], sheet, fonts),
    };
  });
