import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideTrip } from "../guide/guide-schema.ts";
import { layoutBoxPlan } from "./box-plan-card.ts";
import { type CardFiles, cardFiles } from "./card-file.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import { A6 } from "./paper.ts";

/** Each trip's box on a file of its own, so that an unlisted trip is not given away; none for a trip without flies. */
export const planBoxCards = (frame: GuideFrame, trips: readonly GuideTrip[]): CardFiles[] =>
  trips
    .filter(({ box }) => box.rows.length > 0)
    .map((trip) => {
      const name = `box-${trip.slug}`;
      return cardFiles("box card", [name], { guide: frame, trip }, ({ guide, trip }, ruler) => {
        const sides = layoutBoxPlan(guide, trip, ruler);
        return {
          problems: sides.flatMap(({ misfits }) => misfits).map((misfit) => problemOf(name, misfit)),
          ink: async (fonts) => [
            await cardPdf(
              guide,
              sides.map(({ face }) => face),
              { title: `The box for ${trip.name}, A6,`, paper: A6 },
              fonts,
            ),
          ],
        };
      });
    });
