import type { Guide } from "../guide/guide-schema.ts";
import { layoutBoxPlan } from "./box-plan-card.ts";
import { cardPdf } from "./card-pdf.ts";
import { problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import { A6 } from "./paper.ts";
import type { Planned } from "./planned.ts";

/** Each trip's box on a file of its own, so that an unlisted trip is not given away; none for a trip without flies. */
export const planBoxCards = (guide: Guide, ruler: Ruler): Planned[] =>
  guide.trips
    .filter(({ box }) => box.rows.length > 0)
    .map((trip) => {
      const name = `box-${trip.slug}`;
      const sides = layoutBoxPlan(guide, trip, ruler);
      return {
        name,
        problems: sides.flatMap(({ misfits }) => misfits).map((misfit) => problemOf(name, misfit)),
        make: (fonts) =>
          cardPdf(
            guide,
            sides.map(({ face }) => face),
            { title: `The box for ${trip.name}, A6,`, paper: A6 },
            fonts,
          ),
      };
    });
