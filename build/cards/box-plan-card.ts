import { flyBox, flyBoxTitle, rowsThatFit } from "../draw/fly-box.tsx";
import { paperInk } from "../draw/ink.ts";
import { boxSum, dressingText, varietyText } from "../guide/box-words.ts";
import type { Guide, GuideTrip } from "../guide/guide-schema.ts";
import { dayRange } from "../model/calendar.ts";
import { drawnSize_pt } from "./back-map.ts";
import { frameOf } from "./card-frame.ts";
import { whole } from "./card-words.ts";
import { addText, type Column, countLines, createColumn, overflow } from "./column.ts";
import type { FaceLayout, Misfit } from "./face.ts";
import { type Ruler, type Run, run } from "./flow.ts";
import { A6, CARD_MARGIN_PT, inMm } from "./paper.ts";
import { addHead } from "./rig-card.ts";
import { leading_pt, SMALL, STRONG } from "./type-styles.ts";

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
function startSide(guide: Guide, title: string, ruler: Ruler): Column {
  const column = createColumn(ruler, FRAME.left_pt, FRAME.width_pt, FRAME.top_pt);
  addHead(column, guide, title);
  return column;
}

const sideOf = (title: string, column: Column): FaceLayout => ({
  face: { title, parts: column.parts, decoration: column.decoration },
  misfits: [...column.misfits, ...overflow(column, FRAME.bottom_pt, {})],
});

/** Words of a drawing that run past its right edge, measured in the card's own type. */
function drawingMisfits(svg: string, width_pt: number, ruler: Ruler): Misfit[] {
  return [...svg.matchAll(/<text x="([\d.]+)" y="[\d.]+">([^<]*)<\/text>/g)].flatMap(([, x, text = ""]) => {
    const over_pt = Number(x) + ruler.width_pt(text, SMALL) - width_pt;
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

/** The box, drawn on as many sides as its rows need. */
function boxSides(guide: Guide, trip: GuideTrip, ruler: Ruler): FaceLayout[] {
  const { rows } = trip.box;
  const sides: FaceLayout[] = [];
  for (let from = 0; from < rows.length; ) {
    const column = startSide(guide, "The box", ruler);
    addText(column, [run(`${trip.name}, `, STRONG), run(whole(dayRange(trip.from, trip.to)), STRONG)], {
      role: "P",
      field: "trip names",
    });
    addText(column, [run(`${boxSum(trip.box)}.`, SMALL)], { role: "P", field: "patterns" });
    column.y_pt += GAP_PT;
    const options = { ink: paperInk, width: FRAME.width_pt };
    const to = Math.min(rows.length, from + rowsThatFit(rows, options, FRAME.bottom_pt - column.y_pt));
    const svg = flyBox(rows, { ...options, part: [from, to] });
    const [width_pt, height_pt] = drawnSize_pt(svg);
    column.misfits.push(...drawingMisfits(svg, width_pt, ruler));
    column.parts.push({
      role: "Figure",
      alt: flyBoxTitle(rows.slice(from, to)),
      parts: [],
      pieces: [{ kind: "svg", svg, x_pt: column.left_pt, y_pt: column.y_pt, width_pt, height_pt }],
    });
    column.y_pt += height_pt;
    sides.push(sideOf(`The box for ${trip.name}, rows ${from + 1} to ${to}`, column));
    from = to;
  }
  return sides;
}

/** Everything on the backs, in order. */
const tyingLines = ({ tying, materials }: Box): Line[] => [
  ...tying.flatMap((entry): Line[] => [
    line([run(entry.name, STRONG)], { role: "H2", gap_pt: GAP_PT / 2 }),
    ...entry.flies.map((fly) =>
      line([run(`${fly.count} of ${whole(varietyText(fly))}`, SMALL)], { tick: true }),
    ),
    ...(entry.dressing.length === 0 ? [] : [line([run(`${dressingText(entry)}.`, SMALL)])]),
  ]),
  line([run("Materials", STRONG)], { role: "H2", gap_pt: 2 * GAP_PT }),
  ...materials.map(({ text }) => line([run(text, SMALL)], { tick: true })),
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

/** The flies to tie and their materials; what one side does not hold goes on to the next, a heading with what follows it. */
function tyingSides(guide: Guide, trip: GuideTrip, ruler: Ruler): FaceLayout[] {
  const title = `To tie for ${trip.name}`;
  const lines = tyingLines(trip.box);
  const sides: FaceLayout[] = [];
  let column = startSide(guide, "To tie", ruler);
  if (trip.box.tying.length === 0) {
    addText(column, [run("Nothing: every fly of the plan is in the club’s box.", SMALL)], {
      role: "P",
      field: "patterns",
    });
    return [sideOf(title, column)];
  }
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
export const layoutBoxPlan = (guide: Guide, trip: GuideTrip, ruler: Ruler): FaceLayout[] => [
  ...boxSides(guide, trip, ruler),
  ...tyingSides(guide, trip, ruler),
];
