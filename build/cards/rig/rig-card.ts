import type { GuideFrame } from "../../guide/guide-frame.ts";
import { CARD } from "../../model/addresses.ts";
import { depthText } from "../../model/units.ts";
import { agencyText, LOCAL_RULES_TEXT, noBreak } from "../card-words.ts";
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
import { fillPlumbBack, layoutPlumbFront } from "./plumb-card.ts";
import {
  addCounts,
  addLeaders,
  addNaked,
  addPlumbRows,
  addSwing,
  addTippet,
  noticeText,
  rigCautions,
  swingWords,
  tippetWords,
} from "./rig-tables.ts";

/** What a size of card has room for. */
export interface RigCardDesign {
  /** The file's name without its ending. */
  readonly slug: string;
  /** What the card is called. */
  readonly name: string;
  readonly paper: PaperSize;
  readonly front: (guide: GuideFrame, ruler: Ruler) => FaceLayout;
  readonly back: (column: Column, guide: GuideFrame, bottom_pt: number) => void;
  /** Height that each field takes on an ordinary card. */
  readonly usual_pt: Readonly<Record<string, number>>;
}

const GAP_PT = 4;

const addHeading = (column: Column, runs: readonly Run[]): void =>
  addText(column, runs, { role: "H2", field: "rig" });

const tippetRuns = (guide: GuideFrame): Run[] => [run("Tippet, ", STRONG), run(tippetWords(guide), SMALL)];

/** A paragraph in small type. */
export const addParagraph = (column: Column, words: string, field = "rig"): void =>
  addText(column, [run(words, SMALL)], { role: "P", field });

/** True where text in small type still stands above `bottom_pt`. */
export const fits = (column: Column, runs: readonly Run[], bottom_pt: number): boolean =>
  column.y_pt + countLines(column, runs, column.width_pt) * leading_pt(SMALL) <= bottom_pt + ROUNDING_PT;

/** What is good to have on a card but stands on the rigs page as well: set only where there is room. */
function addSpareWords(column: Column, all: readonly string[], bottom_pt: number): void {
  for (const words of all) if (fits(column, [run(words, SMALL)], bottom_pt)) addParagraph(column, words);
}

/** Under a rule, the first caution, and as many more as there is room for. */
function addCautions(column: Column, guide: GuideFrame, bottom_pt: number): void {
  addRule(column, 0.6);
  column.y_pt += 2;
  addText(column, [run(LOCAL_RULES_TEXT, STRONG)], { role: "P", field: "cautions" });
  for (const [i, { short, agency }] of rigCautions(guide).entries()) {
    const runs = [run(`${short} `, STRONG), run(agencyText(agency), SMALL)];
    if (i === 0 || fits(column, runs, bottom_pt)) addText(column, runs, { role: "P", field: "cautions" });
  }
}

/** The first, the middle and the last. */
const ends = <T>(rows: readonly T[]): T[] =>
  rows.filter((_, i) => i === 0 || i === Math.floor((rows.length - 1) / 2) || i === rows.length - 1);

/** The depths that counts are given for: deeper ones are long on most lines. */
const countDepths = ({ rigs: { plumb } }: GuideFrame): number[] =>
  plumb.depths.slice(0, 6).map(({ depth_m }) => depth_m);

const swingRuns = (guide: GuideFrame): Run[] => [run("Swing  ", STRONG), run(swingWords(guide), SMALL)];

const NAKED_WORDS =
  "Floating line, long leader, no shot, no indicator, a slow pull every 5 s; depth and count.";

const ON_PLUMB_CARD: RigCardDesign = {
  slug: CARD.plumb,
  name: "Plumb card",
  paper: A6,
  usual_pt: { "shot names": 230 },
  front: layoutPlumbFront,
  back: fillPlumbBack,
};

const ON_A6: RigCardDesign = {
  slug: CARD.rig,
  name: "Rig card",
  paper: A6,
  usual_pt: { "leader names": 170, "line names": 120, cautions: 22, notice: 22 },
  front(guide, ruler) {
    const { naked, anchor } = guide.rigs;
    return layoutSide("Rig card, front", frameOf(A6, CARD_MARGIN_PT), ruler, ON_A6.usual_pt, (column) => {
      const bottom_pt = frameOf(A6, CARD_MARGIN_PT).bottom_pt;
      addCardHead(column, guide.asOf, { title: "Lines and leaders", field: "rig" });
      addCounts(column, guide, countDepths(guide), 5, 82);
      addParagraph(
        column,
        "Count until it ticks weed, then take off a tenth. * A long count, beyond the club's longest.",
      );
      column.y_pt += GAP_PT;
      addHeading(column, [run("Naked line  ", STRONG), run(NAKED_WORDS, SMALL)]);
      addNaked(column, guide, 4);
      addParagraph(column, naked.note);
      column.y_pt += GAP_PT;
      for (const { name, words } of anchor.holders)
        addText(column, [run(`Rod holder, ${name}  `, STRONG), run(words, SMALL)], {
          role: "P",
          field: "rig",
        });
      column.y_pt += GAP_PT;
      addSpareWords(column, [guide.rigs.plumb.check, ...guide.rigs.plumb.assumes], bottom_pt);
    });
  },
  back(column, guide, bottom_pt) {
    addCardHead(column, guide.asOf, { title: "Leaders and tippet", field: "rig" });
    addLeaders(column, guide, 6, 55);
    column.y_pt += GAP_PT;
    addHeading(column, tippetRuns(guide));
    addTippet(column, guide, 5);
    column.y_pt += GAP_PT;
    addHeading(column, swingRuns(guide));
    addSwing(column, guide, ends(guide.rigs.swing.rows));
    column.y_pt += GAP_PT;
    addParagraph(column, noticeText(guide), "notice");
    column.y_pt += 2;
    addCautions(column, guide, bottom_pt);
  },
};

const ON_INDEX_CARD: RigCardDesign = {
  slug: CARD.rigIndexCard,
  name: "Rig card",
  paper: INDEX_CARD,
  usual_pt: { "shot names": 110, "leader names": 85, "line names": 80, cautions: 22 },
  front(guide, ruler) {
    const frame = frameOf(INDEX_CARD, CARD_MARGIN_PT);
    return layoutSide("Rig card, front", frame, ruler, ON_INDEX_CARD.usual_pt, (column) => {
      addCardHead(column, guide.asOf, { title: `Plumb, read across: ${guide.rigs.plumb.fly}`, field: "rig" });
      addPlumbRows(column, guide);
      column.y_pt += 2;
      addParagraph(
        column,
        `Calm, ripple, chop: at least so many seconds for foam to pass one rod (${noBreak(depthText(guide.rigs.rod_m, guide.club.units))}). h: hold the line still. Wait: slack thrown to tight line, * long. Rope: calm, chop.`,
      );
      addSpareWords(column, [noticeText(guide)], frame.bottom_pt);
    });
  },
  back(column, guide, bottom_pt) {
    addLeaders(column, guide, 4, 74);
    column.y_pt += GAP_PT;
    const part = (indent_pt: number, width_pt: number): Column => ({
      ...column,
      left_pt: column.left_pt + indent_pt,
      width_pt,
    });
    const left = part(0, 200);
    const right = part(212, column.width_pt - 212);
    addCounts(left, guide, ends(countDepths(guide)), 3, 94);
    addHeading(right, tippetRuns(guide));
    addTippet(right, guide, 3);
    column.y_pt = Math.max(left.y_pt, right.y_pt) + GAP_PT;
    addCautions(column, guide, bottom_pt);
  },
};

export const RIG_CARD_DESIGNS: readonly RigCardDesign[] = [ON_PLUMB_CARD, ON_A6, ON_INDEX_CARD];

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
export function layoutRigCard(guide: GuideFrame, design: RigCardDesign, ruler: Ruler) {
  const frame = frameOf(design.paper, CARD_MARGIN_PT);
  return {
    front: design.front(guide, ruler),
    back: layoutSide(`${design.name}, back`, frame, ruler, design.usual_pt, (column) =>
      design.back(column, guide, frame.bottom_pt),
    ),
  };
}
