import { paperInk } from "../draw/ink.ts";
import { rigDrawing } from "../draw/rig-drawing.tsx";
import { leaderAtDeepest, rigTitle } from "../draw/rig-hung.ts";
import { leanDrawing, leanTitle } from "../draw/rig-lean.tsx";
import { swingDrawing, swingTitle } from "../draw/swing-plan.tsx";
import type { GuideFrame } from "../guide/guide-frame.ts";
import { frameOf } from "./card-frame.ts";
import { addCardHead } from "./card-head.ts";
import type { Column } from "./column.ts";
import { addDrawing } from "./drawing.ts";
import type { Ruler } from "./flow.ts";
import { A6, CARD_MARGIN_PT, mm } from "./paper.ts";
import { addWords, layoutSide } from "./rig-card.ts";

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
    addWords(column, "No leader in the box serves a set depth.");
    return;
  }
  const options = { ink: paperInk, units, width: column.width_pt, height: bottom_pt - FOOT_PT - column.y_pt };
  addDrawing(column, rigDrawing(longest, options), rigTitle(longest, units));
}

function addLeanAndSwing(column: Column, { rigs, club: { units } }: GuideFrame): void {
  const { example } = rigs.shot;
  const options = { ink: paperInk, units, width: BACK_WIDTH_PT };
  if (example === null) addWords(column, "No rig carried holds its fly down in a drift.");
  else addDrawing(column, leanDrawing(example, { ...options, height: LEAN_PT }), leanTitle(example, units));
  column.y_pt += 6;
  const swing = { swing: rigs.swing, rod_m: rigs.rod_m, rod_s: DRAWN_DRIFT_S };
  addDrawing(column, swingDrawing(swing, { ...options, height: SWING_PT }), swingTitle(swing, units));
}

/** The rigs drawn to scale, on a card of their own beside the tables: hanging on the front, leaning and swinging on the back. */
export function layoutRigDrawings(guide: GuideFrame, ruler: Ruler) {
  const frame = frameOf(A6, CARD_MARGIN_PT);
  return {
    front: layoutSide("Rig drawings, front", frame, ruler, {}, (column) => {
      addCardHead(column, guide.asOf, { title: "The rig to scale", field: "rig" });
      addRig(column, guide, frame.bottom_pt);
    }),
    back: layoutSide("Rig drawings, back", frame, ruler, {}, (column) => {
      addCardHead(column, guide.asOf, { title: "Lean and swing", field: "rig" });
      addLeanAndSwing(column, guide);
    }),
  };
}
