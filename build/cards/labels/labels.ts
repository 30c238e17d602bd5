import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideTrip } from "../../guide/guide-schema.ts";
import { CARD, onPaper, PAPERS } from "../../model/addresses.ts";
import { cutLengthText, depthRange, depthText } from "../../model/units.ts";
import { type CardFiles, type CardKind, cardFiles, overflowProblem } from "../card-kind.ts";
import { noBreak } from "../card-words.ts";
import {
  addRule,
  addText,
  columnOverflow,
  countLines,
  createColumn,
  type Ruler,
  run,
} from "../layout/column.ts";
import { ascent_pt, type FaceLayout, frameOf, GLANCE, LABEL, mm, SMALL, STRONG } from "../layout/page.ts";
import { headingOverflows, labelsPdf } from "./label-sheet.ts";

type Leader = Guide["rigs"]["leaders"][number];

/** One label, to be stuck on one board. */
interface Label {
  readonly leader: Leader;
  /** What the leader is for, the fullest wording first; the first that fits is printed. */
  readonly why: readonly string[];
}

const repeat = (label: Label, count: number): Label[] => Array.from({ length: count }, () => label);

/** Which lakes call for a leader. */
function clubWhy({ lakes }: Guide, { name, serves }: Leader): string[] {
  if (serves === null) return ["Not for an indicator."];
  const names = lakes
    .filter(({ boards }) => boards.boards.some(({ leader }) => leader.name === name))
    .map((lake) => lake.name);
  if (names.length === 0) return ["No lake's plan calls for it: write below what it is for."];
  const many = names.length === lakes.length ? `all ${lakes.length}` : `${names.length} of ${lakes.length}`;
  return [`For ${names.join(", ")}.`, `For ${many} lakes: see each lake's page.`];
}

/** A label for each board of the club's own, and one for each leader that is not tied yet. */
const clubLabels = (guide: Guide): Label[] =>
  guide.rigs.leaders.flatMap((leader) =>
    repeat({ leader, why: clubWhy(guide, leader) }, Math.max(1, leader.tied)),
  );

/** A label for each board that a trip needs. */
const tripLabels = ({ name, gear }: GuideTrip): Label[] =>
  gear.boards.boards.flatMap(({ leader, why, needed }) =>
    repeat({ leader, why: [why, `For ${name}: see the trip's page.`] }, needed),
  );

/** The club's labels and those of every trip that may be seen by all. */
const sharedLabels = (guide: Guide): Label[] => [
  ...clubLabels(guide),
  ...guide.trips.filter(({ unlisted }) => !unlisted).flatMap(tripLabels),
];

/** Nothing stands nearer to a label's edge: the safe margin of 3 mm, and a little for words set to the right. */
const MARGIN_PT = mm(3.2);
const WHY_LINES = 2;
/** Room for a pencil, below the last line's descenders. */
const BLANK_PT = mm(5.5);
const USUAL_PT = { "leader names": 29, "trip names": 22 };

/** "12 ft taper to 3X + 6 ft of 4X + 3 ft of 5X", and shorter: "12 ft 3X + 6 ft 4X + 3 ft 5X". */
const recipeTexts = ({ label, sections }: Leader, units: Guide["club"]["units"]): string[] => [
  label.slice(1, -1).map(noBreak).join(" + "),
  sections.map(({ length_m, size }) => noBreak(`${cutLengthText(length_m, units)} ${size}`)).join(" + "),
];

/** A label: name and set depths, what it is made of, what it is for, and a line to write on. */
export function layoutLabel(
  { leader, why }: Label,
  { club }: Pick<GuideFrame, "club">,
  ruler: Ruler,
): FaceLayout {
  const { left_pt, top_pt, width_pt, bottom_pt } = frameOf(LABEL, MARGIN_PT);
  const column = createColumn(ruler, left_pt, width_pt, top_pt);
  const atRight = (pieces: readonly ReturnType<typeof run>[], role: "P"): number => {
    const wide_pt = pieces.reduce((sum, { text, style }) => sum + ruler.width_pt(text, style), 0);
    addText(column, pieces, { role, field: "leader names", indent_pt: width_pt - wide_pt });
    return wide_pt;
  };
  const sets =
    leader.serves === null
      ? [run("no\u00a0indicator", STRONG)]
      : [
          run("Sets\u00a0\u00a0", SMALL),
          run(noBreak(depthRange(leader.serves.from_m, leader.serves.to_m, club.units)), GLANCE),
        ];
  const sets_pt = sets.reduce((sum, { text, style }) => sum + ruler.width_pt(text, style), 0);
  addText(column, [run(leader.name, GLANCE)], {
    role: "H2",
    field: "leader names",
    width_pt: width_pt - sets_pt - 4,
    maxLines: 1,
  });
  const second_pt = column.y_pt;
  column.y_pt = top_pt + (leader.serves === null ? ascent_pt(GLANCE) - ascent_pt(STRONG) : 0);
  atRight(sets, "P");
  column.y_pt = second_pt;
  const total = [run(noBreak(`whole ${depthText(leader.total_m, club.units)}`), STRONG)];
  const total_pt = atRight(total, "P");
  column.y_pt = second_pt;
  const recipes = recipeTexts(leader, club.units).map((text) => [run(text, SMALL)]);
  const recipe = recipes.find((runs) => countLines(column, runs, width_pt - total_pt - 4) === 1);
  addText(column, recipe ?? recipes.at(-1) ?? [], {
    role: "P",
    field: "leader names",
    width_pt: width_pt - total_pt - 4,
    maxLines: 1,
  });
  const words = why.find((text) => countLines(column, [run(text, SMALL)], width_pt) <= WHY_LINES);
  addText(column, [run(words ?? why.at(-1) ?? "", SMALL)], {
    role: "P",
    field: "trip names",
    maxLines: WHY_LINES,
  });
  const misfits = [...column.misfits, ...columnOverflow(column, bottom_pt - BLANK_PT, USUAL_PT)];
  column.y_pt = bottom_pt;
  addRule(column, 0.5);
  return { face: { title: leader.name, parts: column.parts, decoration: column.decoration }, misfits };
}

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
      ...headingOverflows(title, guide, labels.length, ruler),
      ...[...placed.values()].flatMap((layout) => layout.misfits),
    ];
    return {
      problems: misfits.map((misfit) => overflowProblem(name, misfit)),
      ink: (fonts) => Promise.all(PAPERS.map((sheet) => labelsPdf(guide, { title, faces, sheet }, fonts))),
    };
  },
};

/** None of a set that is empty. */
function labelFiles(guide: GuideFrame, name: string, title: string, labels: readonly Label[]): CardFiles[] {
  if (labels.length === 0) return [];
  const names = PAPERS.map((paper) => onPaper(name, paper));
  return [cardFiles(LABELS, names, { guide, name, title, labels })];
}

/** The club's labels on one set of sheets; each trip's on its own, so that an unlisted trip is not given away. */
export const planLabels = (frame: GuideFrame, guide: Guide): CardFiles[] => [
  ...labelFiles(frame, CARD.labels, "Leader labels", sharedLabels(guide)),
  ...guide.trips.flatMap((trip) =>
    labelFiles(frame, CARD.tripLabels(trip.slug), `Leader labels for ${trip.name}`, tripLabels(trip)),
  ),
];
