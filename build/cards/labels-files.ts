import type { GuideFrame } from "../guide/guide-frame.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { type CardFiles, type CardKind, cardFiles } from "./card-file.ts";
import { problemOf } from "./card-problem.ts";
import { type Label, sharedLabels, tripLabels } from "./labels.ts";
import { layoutLabel } from "./labels-face.ts";
import { headingMisfits, labelsPdf } from "./labels-sheet.ts";
import { SHEET_NAMES } from "./paper.ts";

type LabelNeeds = {
  readonly guide: GuideFrame;
  readonly name: string;
  readonly title: string;
  readonly labels: readonly Label[];
};

/** One set of labels on each kind of sheet. */
export const LABELS: CardKind<LabelNeeds> = {
  kind: "labels",
  place: ({ guide, name, title, labels }, { ruler }) => {
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
  },
};

/** None of a set that is empty. */
function labelFiles(guide: GuideFrame, name: string, title: string, labels: readonly Label[]): CardFiles[] {
  if (labels.length === 0) return [];
  const names = SHEET_NAMES.map((sheet) => `${name}-${sheet}`);
  return [cardFiles(LABELS, names, { guide, name, title, labels })];
}

/** The club's labels on one set of sheets; each trip's on its own, so that an unlisted trip is not given away. */
export const planLabels = (frame: GuideFrame, guide: Guide): CardFiles[] => [
  ...labelFiles(frame, "labels", "Leader labels", sharedLabels(guide)),
  ...guide.trips.flatMap((trip) =>
    labelFiles(frame, `labels-${trip.slug}`, `Leader labels for ${trip.name}`, tripLabels(trip)),
  ),
];
