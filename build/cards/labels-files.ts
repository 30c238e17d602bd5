import type { GuideFrame } from "../guide/guide-frame.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type CardFiles, cardFiles } from "./card-file.ts";
import { problemOf } from "./card-problem.ts";
import { type Label, sharedLabels, tripLabels } from "./labels.ts";
import { layoutLabel } from "./labels-face.ts";
import { headingMisfits, labelsPdf } from "./labels-sheet.ts";
import { SHEET_NAMES } from "./paper.ts";

/** One set of labels on each kind of sheet; none of a set that is empty. */
function labelFiles(frame: GuideFrame, name: string, title: string, labels: readonly Label[]): CardFiles[] {
  if (labels.length === 0) return [];
  const names = SHEET_NAMES.map((sheet) => `${name}-${sheet}`);
  return [
    cardFiles("labels", names, { guide: frame, name, title, labels }, (needs, ruler) => {
      const { guide, name, title, labels } = needs;
      const placed = new Map([...new Set(labels)].map((label) => [label, layoutLabel(label, guide, ruler)]));
      const faces = labels.flatMap((label) => placed.get(label)?.face ?? []);
      const misfits = [
        ...headingMisfits(title, guide, labels.length, ruler),
        ...[...placed.values()].flatMap((layout) => layout.misfits),
      ];
      return {
        problems: misfits.map((misfit) => problemOf(name, misfit)),
        ink: (fonts) =>
          Promise.all(SHEET_NAMES.map((sheet) => labelsPdf(guide, { title, faces, sheet }, fonts))),
      };
    }),
  ];
}

/** The club's labels on one set of sheets; each trip's on its own, so that an unlisted trip is not given away. */
export const planLabels = (frame: GuideFrame, guide: Guide): CardFiles[] => [
  ...labelFiles(frame, "labels", "Leader labels", sharedLabels(guide)),
  ...guide.trips.flatMap((trip) =>
    labelFiles(frame, `labels-${trip.slug}`, `Leader labels for ${trip.name}`, tripLabels(trip)),
  ),
];
