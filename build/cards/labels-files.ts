import type { Guide } from "../guide/guide-schema.ts";
import { problemOf } from "./card-problem.ts";
import type { Ruler } from "./flow.ts";
import { type Label, sharedLabels, tripLabels } from "./labels.ts";
import { layoutLabel } from "./labels-face.ts";
import { headingMisfits, labelsPdf } from "./labels-sheet.ts";
import { SHEET_NAMES } from "./paper.ts";
import type { Planned } from "./planned.ts";

/** One set of labels on each kind of sheet; none of a set that is empty. */
function labelFiles(
  guide: Guide,
  ruler: Ruler,
  name: string,
  title: string,
  labels: readonly Label[],
): Planned[] {
  if (labels.length === 0) return [];
  const placed = new Map([...new Set(labels)].map((label) => [label, layoutLabel(label, guide, ruler)]));
  const faces = labels.flatMap((label) => placed.get(label)?.face ?? []);
  const misfits = [
    ...headingMisfits(title, guide, labels.length, ruler),
    ...[...placed.values()].flatMap((layout) => layout.misfits),
  ];
  const problems = misfits.map((misfit) => problemOf(name, misfit));
  return SHEET_NAMES.map((sheet, i) => ({
    name: `${name}-${sheet}`,
    problems: i === 0 ? problems : [],
    make: (fonts) => labelsPdf(guide, { title, faces, sheet }, fonts),
  }));
}

/** The club's labels on one set of sheets; each trip's on its own, so that an unlisted trip is not given away. */
export const planLabels = (guide: Guide, ruler: Ruler): Planned[] => [
  ...labelFiles(guide, ruler, "labels", "Leader labels", sharedLabels(guide)),
  ...guide.trips.flatMap((trip) =>
    labelFiles(guide, ruler, `labels-${trip.slug}`, `Leader labels for ${trip.name}`, tripLabels(trip)),
  ),
];
