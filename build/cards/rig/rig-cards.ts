import { paperInk } from "../../draw/ink.ts";
import { leaderAtDeepest } from "../../draw/rig/hung-rig.ts";
import { leanDrawing } from "../../draw/rig/lean.ts";
import { rigDrawing } from "../../draw/rig/rig-drawing.ts";
import { swingDrawing } from "../../draw/rig/swing-plan.ts";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import { CARD, onPaper, PAPERS } from "../../model/addresses.ts";
import { type CardFiles, type CardKind, cardFiles, overflowProblem } from "../card-kind.ts";
import { LOCAL_RULES_TEXT } from "../card-words.ts";
import { addDrawing, type Column, type Ruler } from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import { A6, CARD_MARGIN_PT, type FaceLayout, frameOf, mm, type PaperSize } from "../layout/page.ts";
import { cardPdf } from "../pdf/card-pdf.ts";
import { sheetsPdfs } from "../pdf/sheets.ts";
import { addParagraph, layoutRigCard, layoutSide, RIG_CARD_DESIGNS } from "./rig-card.ts";

/** The drift of the swing that is drawn, seconds a rod length: a middling one of the table. */
const DRAWN_DRIFT_S = 60;
/** Both drawings of the back are this wide, so that they stand one below the other. */
const BACK_WIDTH_PT = mm(74);
const LEAN_PT = mm(60);
const SWING_PT = mm(46);
/** Left free below the hanging rig. */
const FOOT_PT = mm(2);

function addRig(column: Column, { rigs, club: { units } }: GuideFrame, bottom_pt: number): void {
  const longest = rigs.leaders
    .flatMap((leader) => leaderAtDeepest(leader, rigs.offBottom, units) ?? [])
    .sort((a, b) => b.leader.tied - a.leader.tied || b.set_m - a.set_m)[0];
  if (longest === undefined) {
    addParagraph(column, "No leader in the box serves a set depth.");
    return;
  }
  const options = { ink: paperInk, units, width: column.width_pt, height: bottom_pt - FOOT_PT - column.y_pt };
  addDrawing(column, rigDrawing(longest, options));
}

function addLeanAndSwing(column: Column, { rigs, club: { units } }: GuideFrame): void {
  const { lean } = rigs;
  const options = { ink: paperInk, units, width: BACK_WIDTH_PT };
  if (lean === null) addParagraph(column, "No rig carried holds its fly down in chop.");
  else addDrawing(column, leanDrawing(lean, { ...options, height: LEAN_PT }));
  column.y_pt += 6;
  const swing = { swing: rigs.swing, rod_m: rigs.rod_m, rod_s: DRAWN_DRIFT_S };
  addDrawing(column, swingDrawing(swing, { ...options, height: SWING_PT }));
}

/** The rigs drawn to scale, on a card of their own beside the tables: hanging on the front, leaning and swinging on the back. */
export function layoutRigDrawings(guide: GuideFrame, ruler: Ruler) {
  const frame = frameOf(A6, CARD_MARGIN_PT);
  return {
    front: layoutSide("Rig drawings, front", frame, ruler, {}, (column) => {
      addCardHead(column, guide.asOf, { title: "The rig to scale", field: "rig" });
      addParagraph(column, LOCAL_RULES_TEXT, "cautions");
      addRig(column, guide, frame.bottom_pt);
    }),
    back: layoutSide("Rig drawings, back", frame, ruler, {}, (column) => {
      addCardHead(column, guide.asOf, { title: "Lean and swing", field: "rig" });
      addLeanAndSwing(column, guide);
    }),
  };
}

/** One card about rigs, and the file it has to itself. */
interface RigFile {
  readonly file: string;
  readonly name: string;
  readonly paper: PaperSize;
  readonly sides: { readonly front: FaceLayout; readonly back: FaceLayout };
}

/** Both sizes of the rig card, the rig drawings, and sheets of those of them that are A6. */
export const RIG_CARDS: CardKind<{ guide: GuideFrame }> = {
  kind: "rig cards",
  place: ({ guide }, { ruler }) => {
    const all: RigFile[] = [
      ...RIG_CARD_DESIGNS.map((design) => ({
        file: design.slug,
        name: design.name,
        paper: design.paper,
        sides: layoutRigCard(guide, design, ruler),
      })),
      { file: CARD.rigDrawings, name: "Rig drawings", paper: A6, sides: layoutRigDrawings(guide, ruler) },
    ];
    const cards = all
      .filter(({ paper }) => paper === A6)
      .map(({ name, sides: { front, back } }) => ({ name, front: front.face, back: back.face }));
    return {
      problems: all.flatMap(({ file, sides: { front, back } }) =>
        [...front.misfits, ...back.misfits].map((misfit) => overflowProblem(file, misfit)),
      ),
      ink: async (fonts) => [
        ...(await Promise.all(
          all.map(({ name, paper, sides: { front, back } }) =>
            cardPdf(guide, [front.face, back.face], { title: `${name}, ${paper.name},`, paper }, fonts),
          ),
        )),
        ...(await sheetsPdfs(guide, { what: "Rig cards", cards, count: cards.length }, fonts)),
      ],
    };
  },
};

export const planRigCards = (guide: GuideFrame): CardFiles =>
  cardFiles(
    RIG_CARDS,
    [
      ...RIG_CARD_DESIGNS.map(({ slug }) => slug),
      CARD.rigDrawings,
      ...PAPERS.map((paper) => onPaper(CARD.rigs, paper)),
    ],
    { guide },
  );
