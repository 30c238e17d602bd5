import { type Drawing, textNodes } from "../../draw/drawing.ts";
import { flyBox, rowsThatFit } from "../../draw/fly-box.ts";
import { type Ink, paperInk } from "../../draw/ink.ts";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideTrip } from "../../guide/guide-schema.ts";
import { boxSum, dressingText, toTieText } from "../../guide/trip-words.ts";
import { dayRange } from "../../model/calendar.ts";
import { agencyText, LOCAL_RULES_TEXT, noBreak } from "../card-words.ts";
import {
  addDrawing,
  addText,
  type Column,
  columnOverflow,
  countLines,
  createColumn,
  type Ruler,
  type Run,
  run,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import type { FaceLayout, Overflow } from "../layout/page.ts";
import { A6, CARD_MARGIN_PT, frameOf, GLANCE, inMm, leading_pt, SMALL, STRONG } from "../layout/page.ts";
import { noticeText } from "../rig/rig-tables.ts";

type Box = GuideTrip["box"];

const FRAME = frameOf(A6, CARD_MARGIN_PT);
const GAP_PT = 4;
const TICK_PT = 6;
/** Between a box to tick and the words beside it. */
const BESIDE_TICK_PT = 11;

/** A paragraph, and whether a box to tick stands before it. */
interface Line {
  readonly runs: readonly Run[];
  readonly role: "H2" | "P";
  readonly tick: boolean;
  readonly gap_pt: number;
}

const line = (runs: readonly Run[], change: Partial<Line> = {}): Line => ({
  runs,
  role: "P",
  tick: false,
  gap_pt: 0,
  ...change,
});

/** A new side under the card's head. */
function startSide(guide: GuideFrame, title: string, ruler: Ruler): Column {
  const column = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, FRAME.top_pt);
  addCardHead(column, guide.asOf, { title, field: "patterns" });
  return column;
}

const sideOf = (title: string, column: Column): FaceLayout => ({
  face: { title, parts: column.parts, decoration: column.decoration },
  misfits: [...column.misfits, ...columnOverflow(column, FRAME.bottom_pt, {})],
});

/** Sizes of lettering for the box, the largest that gets it on one side is taken; the last has an x-height of 1.5 mm. */
const LETTERING_PT = [GLANCE.size_pt, 12.5, 10.5, SMALL.size_pt, 8.6];

interface BoxOptions {
  readonly ink: Ink;
  readonly width: number;
}

/** Names that run past the right edge of the drawing, measured in the card's own type. */
function drawingOverflows({ children, width }: Drawing, { ink }: BoxOptions, ruler: Ruler): Overflow[] {
  const lines = textNodes(children).filter(({ attributes }) => attributes["text-anchor"] === undefined);
  return lines.flatMap(({ attributes: { x }, runs }) => {
    const text = runs.map((one) => one.text).join("");
    const over_pt = x + ruler.width_pt(text, { ...SMALL, size_pt: ink.textSize }) - width;
    return over_pt <= 0
      ? []
      : [
          {
            field: "patterns",
            message: `“${text}” is ${Math.ceil(inMm(over_pt))} mm too wide`,
            hint: "Shorten the pattern’s name or its colour.",
          },
        ];
  });
}

/** The head of a side of the box: whose it is and how much it holds. */
function startBox(guide: GuideFrame, trip: GuideTrip, ruler: Ruler): Column {
  const column = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, FRAME.top_pt);
  addCardHead(column, guide.asOf, { title: trip.name, side: noBreak("the box"), field: "trip names" });
  const days = run(`${noBreak(dayRange(trip.from, trip.to))}  `, STRONG);
  addText(column, [days, run(`${boxSum(trip.box)}.`, SMALL)], { role: "P", field: "patterns" });
  return column;
}

/** The largest lettering in which all rows fit on one side; if there is none, the smallest in which every name fits. */
function boxOptions(rows: Box["rows"], room_pt: number, ruler: Ruler): BoxOptions {
  const all = LETTERING_PT.map(
    (textSize): BoxOptions => ({ ink: { ...paperInk, textSize }, width: FRAME.width_pt }),
  ).filter((options) => drawingOverflows(flyBox(rows, options), options, ruler).length === 0);
  const onOneSide = all.find((options) => rowsThatFit(rows, options, room_pt) >= rows.length);
  return onOneSide ?? all.at(-1) ?? { ink: paperInk, width: FRAME.width_pt };
}

/** Everything to tie, and from what. */
const tyingLines = ({ tying, materials }: Box): Line[] => [
  ...tying.flatMap((entry): Line[] => [
    line([run(entry.name, STRONG)], { role: "H2", gap_pt: GAP_PT / 2 }),
    ...entry.flies.map((fly) => line([run(toTieText(fly), SMALL)], { tick: true })),
    ...(entry.dressing.length === 0 ? [] : [line([run(`${dressingText(entry)}.`, SMALL)])]),
  ]),
  line([run("Materials", STRONG)], { role: "H2", gap_pt: 2 * GAP_PT }),
  ...materials.map(({ text }) => line([run(text, SMALL)], { tick: true })),
];

/** How the numbers were made, whose card it is, and the first caution that always holds. */
const closingLines = (guide: GuideFrame, { losses }: Box): Line[] => [
  line([run(losses.words, SMALL)], { gap_pt: 2 * GAP_PT }),
  line([run(noticeText(guide), SMALL)], { gap_pt: GAP_PT }),
  line([run(LOCAL_RULES_TEXT, STRONG)]),
  ...guide.cautions
    .filter(({ when }) => when.includes("always"))
    .slice(0, 1)
    .map(({ short, agency }) =>
      line([run(`${short} `, STRONG), run(agencyText(agency), SMALL)], { gap_pt: GAP_PT }),
    ),
];

function addLine(column: Column, { runs, role, tick }: Line): void {
  const { left_pt, y_pt } = column;
  const top_pt = y_pt + (leading_pt(SMALL) - TICK_PT) / 2;
  if (tick)
    column.decoration.push({
      kind: "shape",
      path: `M${left_pt + 0.5} ${top_pt}h${TICK_PT}v${TICK_PT}h${-TICK_PT}Z`,
      stroke_pt: 0.7,
    });
  addText(column, runs, { role, field: "patterns", ...(tick ? { indent_pt: BESIDE_TICK_PT } : {}) });
}

/** Height of a line where it is set, without the gap before it. */
const heightOf = (column: Column, { runs, tick }: Line): number =>
  countLines(column, runs, column.width_pt - (tick ? BESIDE_TICK_PT : 0)) * leading_pt(SMALL);

/**
 * The box, drawn on as many sides as its rows need, each filled before the next; where nothing is to be tied, the last of
 * them says so, and closes the card.
 */
function boxSides(guide: GuideFrame, trip: GuideTrip, ruler: Ruler): FaceLayout[] {
  const { rows, tying } = trip.box;
  const closing =
    tying.length > 0
      ? []
      : [
          line([run("Nothing to tie: every fly of the plan is in the club’s box.", STRONG)], {
            gap_pt: GAP_PT,
          }),
          ...closingLines(guide, trip.box),
        ];
  const start = startBox(guide, trip, ruler);
  const closing_pt = closing.reduce((sum, next) => sum + next.gap_pt + heightOf(start, next), 0);
  const room_pt = FRAME.bottom_pt - start.y_pt - closing_pt;
  const options = boxOptions(rows, room_pt, ruler);
  const perSide = rowsThatFit(rows, options, room_pt);
  const sides = Math.ceil(rows.length / perSide);
  return Array.from({ length: sides }, (_, side) => {
    const column = startBox(guide, trip, ruler);
    const [from, to] = [side * perSide, Math.min((side + 1) * perSide, rows.length)];
    const drawing = flyBox(rows, { ...options, part: [from, to] });
    column.misfits.push(...drawingOverflows(drawing, options, ruler));
    addDrawing(column, drawing);
    if (side === sides - 1)
      for (const next of closing) {
        column.y_pt += next.gap_pt;
        addLine(column, next);
      }
    return sideOf(`The box for ${trip.name}, rows ${from + 1} to ${to}`, column);
  });
}

/** The flies to tie and their materials; what one side does not hold goes on to the next, a heading with what follows it. */
function tyingSides(guide: GuideFrame, trip: GuideTrip, ruler: Ruler): FaceLayout[] {
  const title = `To tie for ${trip.name}`;
  const lines = [...tyingLines(trip.box), ...closingLines(guide, trip.box)];
  const sides: FaceLayout[] = [];
  let column = startSide(guide, "To tie", ruler);
  for (const [i, next] of lines.entries()) {
    const after = next.role === "H2" ? lines[i + 1] : undefined;
    const wanted_pt = heightOf(column, next) + (after === undefined ? 0 : heightOf(column, after));
    if (column.y_pt + next.gap_pt + wanted_pt > FRAME.bottom_pt) {
      sides.push(sideOf(title, column));
      column = startSide(guide, "To tie, more", ruler);
    } else column.y_pt += next.gap_pt;
    addLine(column, next);
  }
  return [...sides, sideOf(title, column)];
}

/** Places a trip's box and its tying list, side after side, and says what does not fit. Inks nothing. */
export const layoutBoxPlan = (guide: GuideFrame, trip: GuideTrip, ruler: Ruler): FaceLayout[] => [
  ...boxSides(guide, trip, ruler),
  ...(trip.box.tying.length === 0 ? [] : tyingSides(guide, trip, ruler)),
];
