import type { GuideFrame } from "../guide/guide-frame.ts";
import { CARD, onPaper, PAPERS } from "../model/addresses.ts";
import { FOODS, ICE_STATES, LOOKS, METHODS } from "../model/club.ts";
import { PHASE_WORDS } from "../model/phase.ts";
import { depthUnit, type UnitSystem } from "../model/units.ts";
import { type CardFiles, type CardKind, cardFiles, overflowProblem } from "./card-kind.ts";
import { LOCAL_RULES_TEXT } from "./card-words.ts";
import { addText, type Column, type Ruler, type Run, run } from "./layout/column.ts";
import { addCardHead } from "./layout/head-and-table.ts";
import {
  A6,
  CARD_MARGIN_PT,
  type FaceLayout,
  frameOf,
  leading_pt,
  mm,
  SMALL,
  STRONG,
} from "./layout/page.ts";
import { cardPdf } from "./pdf/card-pdf.ts";
import { CARDS_PER_SHEET, sheetsPdfs } from "./pdf/sheets.ts";
import { addParagraph, layoutSide } from "./rig/rig-card.ts";

/** Height of a box to write in: a printed label, and room for a pencil in a cold hand. */
const BOX_PT = mm(11.5);
const LABEL_INDENT_PT = 3;
const TICK_PT = 8;
const CATCH_ROWS = 7;
const CATCH_ROW_PT = mm(8);
const FISH = 6;
const FISH_PT = mm(10);
const FOOD_ROW_PT = mm(6.2);
/** Blank paper under the label of the notes. */
const NOTES_LEAST_PT = mm(20);

/** One field of the report file: its key, and what to write. */
interface Field {
  readonly key: string;
  readonly say: string;
  /** Share of the row. */
  readonly share: number;
}

const temperatureUnit = (units: UnitSystem): string => (units === "imperial" ? "degF" : "degC");

const label = ({ key, say }: Pick<Field, "key" | "say">): Run[] => [
  run(key, STRONG),
  ...(say === "" ? [] : [run(`, ${say}`, SMALL)]),
];

function outline(column: Column, left_pt: number, width_pt: number, height_pt: number): void {
  column.decoration.push({
    kind: "shape",
    path: `M${column.left_pt + left_pt} ${column.y_pt}h${width_pt}v${height_pt}h${-width_pt}Z`,
    stroke_pt: 0.5,
  });
}

/** A row of boxes, each with its field's key in the corner. */
function addBoxes(column: Column, fields: readonly Field[], height_pt: number): void {
  const whole = fields.reduce((sum, { share }) => sum + share, 0);
  const top_pt = column.y_pt;
  let left_pt = 0;
  for (const field of fields) {
    const width_pt = (column.width_pt * field.share) / whole;
    column.y_pt = top_pt;
    outline(column, left_pt, width_pt, height_pt);
    addText(column, label(field), {
      role: "P",
      field: "slip",
      indent_pt: left_pt + LABEL_INDENT_PT,
      width_pt: width_pt - LABEL_INDENT_PT,
      maxLines: 1,
    });
    left_pt += width_pt;
  }
  column.y_pt = top_pt + height_pt;
}

const BETWEEN_CHOICES_PT = 11;

/** A field with a square to tick before each of its words, on one line. */
function addChoice(column: Column, key: string, words: readonly string[]): void {
  const { ruler } = column;
  const top_pt = column.y_pt;
  const row_pt = mm(7.5);
  outline(column, 0, column.width_pt, row_pt);
  const line_pt = top_pt + (row_pt - leading_pt(SMALL)) / 2;
  let left_pt = LABEL_INDENT_PT;
  const place = (text: string, style: Run["style"]): void => {
    column.y_pt = line_pt;
    addText(column, [run(text, style)], { role: "P", field: "slip", indent_pt: left_pt });
    left_pt += ruler.width_pt(text, style);
  };
  place(key, STRONG);
  left_pt = Math.max(left_pt + 10, mm(14));
  for (const word of words) {
    column.y_pt = top_pt + (row_pt - TICK_PT) / 2;
    outline(column, left_pt, TICK_PT, TICK_PT);
    left_pt += TICK_PT + 4;
    place(word, SMALL);
    left_pt += BETWEEN_CHOICES_PT;
  }
  column.y_pt = top_pt + row_pt;
}

const CATCH_FIELDS: readonly Field[] = [
  { key: "pattern", say: "", share: 40 },
  { key: "way", say: "", share: 32 },
  { key: "fish", say: "", share: 10 },
  { key: "hours", say: "", share: 14 },
];

function addFront(column: Column, guide: GuideFrame): void {
  const { units } = guide.club;
  addCardHead(column, guide.asOf, { title: "Report slip", field: "rig" });
  addBoxes(
    column,
    [
      { key: "lake", say: "", share: 3 },
      { key: "date", say: "year-month-day", share: 2 },
    ],
    BOX_PT,
  );
  addChoice(column, "ice", ICE_STATES);
  addChoice(column, "phase", PHASE_WORDS);
  addChoice(column, "looks", LOOKS);
  addBoxes(
    column,
    [
      { key: "water", say: temperatureUnit(units), share: 1 },
      { key: "deep", say: `${temperatureUnit(units)} at ${depthUnit(units)}`, share: 1.3 },
      { key: "clarity", say: depthUnit(units), share: 1 },
      { key: "oxygen", say: "mg/L", share: 1 },
    ],
    BOX_PT,
  );
  addBoxes(
    column,
    [
      { key: "rods", say: "how many fished", share: 1 },
      { key: "hours", say: "each rod", share: 1 },
    ],
    BOX_PT,
  );
  column.y_pt += 5;
  addText(
    column,
    [run("caught", STRONG), run(", each fly and way, without fish too; hours of all rods together", SMALL)],
    {
      role: "H2",
      field: "slip",
    },
  );
  addBoxes(column, CATCH_FIELDS, leading_pt(SMALL) + 1);
  for (let row = 0; row < CATCH_ROWS; row++) {
    let left_pt = 0;
    const whole = CATCH_FIELDS.reduce((sum, { share }) => sum + share, 0);
    for (const { share } of CATCH_FIELDS) {
      const width_pt = (column.width_pt * share) / whole;
      outline(column, left_pt, width_pt, CATCH_ROW_PT);
      left_pt += width_pt;
    }
    column.y_pt += CATCH_ROW_PT;
  }
  column.y_pt += 3;
  addParagraph(column, `Ways: ${METHODS.join(", ")}.`, "slip");
}

/** One row of the samples: what was found, and a box for each fish. */
function addFood(column: Column, words: string, height_pt: number, heads: readonly string[] = []): void {
  const top_pt = column.y_pt;
  const names_pt = column.width_pt - FISH * FISH_PT;
  const line_pt = top_pt + (height_pt - leading_pt(SMALL)) / 2;
  outline(column, 0, names_pt, height_pt);
  const at = (text: string, indent_pt: number): void => {
    column.y_pt = line_pt;
    addText(column, [run(text, SMALL)], { role: "P", field: "slip", indent_pt });
  };
  at(words, LABEL_INDENT_PT);
  for (let fish = 0; fish < FISH; fish++) {
    column.y_pt = top_pt;
    const left_pt = names_pt + fish * FISH_PT;
    outline(column, left_pt, FISH_PT, height_pt);
    const head = heads[fish];
    if (head !== undefined) at(head, left_pt + LABEL_INDENT_PT);
  }
  column.y_pt = top_pt + height_pt;
}

function addBack(column: Column, guide: GuideFrame, bottom_pt: number): void {
  addCardHead(column, guide.asOf, { title: "What they had eaten", field: "rig" });
  addText(
    column,
    [run("samples", STRONG), run(", how many of each in each fish; an empty throat: ring its number", SMALL)],
    { role: "H2", field: "slip" },
  );
  addFood(
    column,
    "fish number",
    FOOD_ROW_PT,
    Array.from({ length: FISH }, (_, i) => `${i + 1}`),
  );
  for (const food of FOODS) if (food !== "nothing in particular") addFood(column, food, FOOD_ROW_PT);
  column.y_pt += 3;
  const caution = guide.cautions.find(({ id }) => id === "throat-sample");
  const words = caution === undefined ? "" : `${caution.short} (${caution.agency}) `;
  addParagraph(column, `${words}${LOCAL_RULES_TEXT}`, "cautions");
  column.y_pt += 3;
  const closing = `Copy into reports/${guide.season}.yaml: each box is a key of that name.`;
  const closing_pt = leading_pt(SMALL);
  const notes_pt = Math.max(NOTES_LEAST_PT, bottom_pt - column.y_pt - closing_pt - 5);
  addBoxes(column, [{ key: "notes", say: "", share: 1 }], notes_pt);
  column.y_pt += 3;
  addParagraph(column, closing, "slip");
}

/** Both sides of the slip that members fill in by pencil: a box for each key of a row of the report file. */
export function layoutReportSlip(guide: GuideFrame, ruler: Ruler): { front: FaceLayout; back: FaceLayout } {
  const frame = frameOf(A6, CARD_MARGIN_PT);
  return {
    front: layoutSide("Report slip, front", frame, ruler, {}, (column) => addFront(column, guide)),
    back: layoutSide("Report slip, back", frame, ruler, {}, (column) =>
      addBack(column, guide, frame.bottom_pt),
    ),
  };
}

/** The report slip alone, and a sheet full of them. */
export const REPORT_SLIPS: CardKind<{ guide: GuideFrame }> = {
  kind: "report slips",
  place: ({ guide }, { ruler }) => {
    const { front, back } = layoutReportSlip(guide, ruler);
    const slip = { name: "report slip", front: front.face, back: back.face };
    const cards = Array.from({ length: CARDS_PER_SHEET }, () => slip);
    return {
      problems: [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(CARD.reportSlip, misfit)),
      ink: async (fonts) => [
        await cardPdf(guide, [slip.front, slip.back], { title: "Report slip, A6,", paper: A6 }, fonts),
        ...(await sheetsPdfs(guide, { what: "Report slips", cards, count: cards.length }, fonts)),
      ],
    };
  },
};

export const planReportSlips = (guide: GuideFrame): CardFiles =>
  cardFiles(REPORT_SLIPS, [CARD.reportSlip, ...PAPERS.map((paper) => onPaper(CARD.reportSlips, paper))], {
    guide,
  });
