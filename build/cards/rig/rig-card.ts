import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide } from "../../guide/guide-schema.ts";
import { CARD } from "../../model/addresses.ts";
import { agencyText } from "../card-words.ts";
import {
  addRule,
  addText,
  type Column,
  columnOverflow,
  countLines,
  createColumn,
  ROUNDING_PT,
  type Ruler,
  type Run,
  run,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import type { FaceLayout, Overflow } from "../layout/page.ts";
import {
  A6,
  CARD_MARGIN_PT,
  type CardFrame,
  frameOf,
  INDEX_CARD,
  leading_pt,
  type PaperSize,
  SMALL,
  STRONG,
} from "../layout/page.ts";
import {
  addLeaders,
  addShot,
  addSinking,
  addSwing,
  addTippet,
  depthWords,
  driftWords,
  noticeText,
  rigCautions,
  swingLine,
  swingWords,
  tippetWords,
} from "./rig-tables.ts";

type Rigs = Guide["rigs"];

/** What a size of card has room for. */
export interface RigCardDesign {
  /** The file's name without its ending. */
  readonly slug: string;
  readonly paper: PaperSize;
  readonly front: (column: Column, guide: GuideFrame, bottom_pt: number) => void;
  readonly back: (column: Column, guide: GuideFrame, bottom_pt: number) => void;
  /** Height that each field takes on an ordinary card. */
  readonly usual_pt: Readonly<Record<string, number>>;
}

const GAP_PT = 4;
const EVERY_OTHER_WORDS = "Every other depth only: between two, take the deeper.";

const addHeading = (column: Column, runs: readonly Run[]): void =>
  addText(column, runs, { role: "H2", field: "rig" });

const tippetRuns = (guide: GuideFrame): Run[] => [run("Tippet, ", STRONG), run(tippetWords(guide), SMALL)];

/** A paragraph in small type. */
export const addParagraph = (column: Column, words: string, field = "rig"): void =>
  addText(column, [run(words, SMALL)], { role: "P", field });

const fits = (column: Column, runs: readonly Run[], bottom_pt: number): boolean =>
  column.y_pt + countLines(column, runs, column.width_pt) * leading_pt(SMALL) <= bottom_pt + ROUNDING_PT;

/** What is good to have on a card but stands on the rigs page as well: set only where there is room. */
function addSpareWords(column: Column, all: readonly string[], bottom_pt: number): void {
  for (const words of all) if (fits(column, [run(words, SMALL)], bottom_pt)) addParagraph(column, words);
}

/** Under a rule, the first caution, and as many more as there is room for. */
function addCautions(column: Column, guide: GuideFrame, bottom_pt: number): void {
  addRule(column, 0.6);
  column.y_pt += 2;
  for (const [i, { short, agency }] of rigCautions(guide).entries()) {
    const runs = [run(`${short} `, STRONG), run(agencyText(agency), SMALL)];
    if (i === 0 || fits(column, runs, bottom_pt)) addText(column, runs, { role: "P", field: "cautions" });
  }
}

/** Every other row up from the deepest. */
const everyOther = <T>(rows: readonly T[]): T[] => rows.filter((_, i) => (rows.length - 1 - i) % 2 === 0);
/** The first, the middle and the last. */
const ends = <T>(rows: readonly T[]): T[] =>
  rows.filter((_, i) => i === 0 || i === Math.floor((rows.length - 1) / 2) || i === rows.length - 1);

const depthsOf = ({ shot }: Rigs): number[] => shot.rows.map(({ depth_m }) => depth_m);

/** How many rows of the swing table are shown where there is little room. */
const LEAST_SWINGS = 3;

const swingRuns = (guide: GuideFrame): Run[] => [run("Swing  ", STRONG), run(swingWords(guide), SMALL)];

/** Height of the swing table with so many rows, its words included. */
const swing_pt = (column: Column, guide: GuideFrame, rows: number): number =>
  (countLines(column, swingRuns(guide), column.width_pt) + 1 + rows) * leading_pt(SMALL);

/** Swing by holder angle: every angle where there is room, else three. */
function addSwings(column: Column, guide: GuideFrame, bottom_pt: number): void {
  const { rows } = guide.rigs.swing;
  const all = column.y_pt + swing_pt(column, guide, rows.length) <= bottom_pt;
  addHeading(column, swingRuns(guide));
  addSwing(column, guide, all ? rows : ends(rows));
}

const ON_A6: RigCardDesign = {
  slug: CARD.rig,
  paper: A6,
  usual_pt: { "shot names": 150, "leader names": 120, "line names": 120, cautions: 22, notice: 22 },
  front(column, guide, bottom_pt) {
    const { shot } = guide.rigs;
    addCardHead(column, guide.asOf, { title: "Shot against drift", field: "rig" });
    addParagraph(column, driftWords(guide));
    addShot(column, guide, shot.rows);
    column.y_pt += GAP_PT;
    for (const words of [depthWords(guide), shot.check]) addParagraph(column, words);
    addSpareWords(column, shot.assumes, bottom_pt - GAP_PT - swing_pt(column, guide, LEAST_SWINGS));
    column.y_pt += GAP_PT;
    addSwings(column, guide, bottom_pt);
  },
  back(column, guide, bottom_pt) {
    const { sinking } = guide.rigs;
    addCardHead(column, guide.asOf, { title: "Leaders and lines", field: "rig" });
    addLeaders(column, guide, 6, 55);
    column.y_pt += GAP_PT;
    addHeading(column, tippetRuns(guide));
    addTippet(column, guide, 5);
    column.y_pt += GAP_PT;
    const choice = { depths_m: depthsOf(guide.rigs), lines: 4, settling: ends(sinking.rows) };
    addSinking(column, guide, choice, 82);
    column.y_pt += 1;
    addParagraph(column, sinking.note);
    column.y_pt += GAP_PT;
    addParagraph(column, noticeText(guide), "notice");
    column.y_pt += 2;
    addCautions(column, guide, bottom_pt);
  },
};

const ON_INDEX_CARD: RigCardDesign = {
  slug: CARD.rigIndexCard,
  paper: INDEX_CARD,
  usual_pt: { "shot names": 90, "leader names": 85, "line names": 80, cautions: 22 },
  front(column, guide, bottom_pt) {
    const { shot } = guide.rigs;
    addCardHead(column, guide.asOf, { title: "Shot against drift", field: "rig" });
    addParagraph(column, `${driftWords(guide)} ${EVERY_OTHER_WORDS}`);
    addShot(column, guide, everyOther(shot.rows));
    column.y_pt += GAP_PT;
    addParagraph(column, shot.check);
    addSpareWords(column, [depthWords(guide), ...shot.assumes, noticeText(guide)], bottom_pt);
  },
  back(column, guide, bottom_pt) {
    const { rigs } = guide;
    addLeaders(column, guide, 4, 74);
    column.y_pt += GAP_PT;
    const part = (indent_pt: number, width_pt: number): Column => ({
      ...column,
      left_pt: column.left_pt + indent_pt,
      width_pt,
    });
    const left = part(0, 190);
    const right = part(202, column.width_pt - 202);
    const choice = {
      depths_m: everyOther(depthsOf(rigs)),
      lines: 3,
      settling: rigs.sinking.rows.slice(0, 1),
    };
    addSinking(left, guide, choice, 94);
    addHeading(right, tippetRuns(guide));
    addTippet(right, guide, 3);
    right.y_pt += 2;
    addHeading(right, [run("Swing  ", STRONG), run(swingLine(guide), SMALL)]);
    column.y_pt = Math.max(left.y_pt, right.y_pt) + GAP_PT;
    addCautions(column, guide, bottom_pt);
  },
};

export const RIG_CARD_DESIGNS: readonly RigCardDesign[] = [ON_A6, ON_INDEX_CARD];

/** Fills one side of a card, and says what runs over its foot. */
export function layoutSide(
  title: string,
  { left_pt, top_pt, width_pt, bottom_pt }: CardFrame,
  ruler: Ruler,
  usual_pt: RigCardDesign["usual_pt"],
  fill: (column: Column) => void,
): FaceLayout {
  const column = createColumn(ruler, left_pt, width_pt, top_pt);
  fill(column);
  const misfits: Overflow[] = [...column.misfits, ...columnOverflow(column, bottom_pt, usual_pt)];
  return { face: { title, parts: column.parts, decoration: column.decoration }, misfits };
}

/** Places everything on both sides of a rig card, and says what does not fit. Inks nothing. */
export function layoutRigCard(
  guide: GuideFrame,
  { paper, usual_pt, front, back }: RigCardDesign,
  ruler: Ruler,
) {
  const frame = frameOf(paper, CARD_MARGIN_PT);
  return {
    front: layoutSide("Rig card, front", frame, ruler, usual_pt, (column) =>
      front(column, guide, frame.bottom_pt),
    ),
    back: layoutSide("Rig card, back", frame, ruler, usual_pt, (column) =>
      back(column, guide, frame.bottom_pt),
    ),
  };
}
