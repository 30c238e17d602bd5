import { paperInk } from "../draw/ink.ts";
import { stateSwatch } from "../draw/strip-legend.tsx";
import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideLake } from "../guide/guide-schema.ts";
import { phaseName, stateOfPhase } from "../model/phase.ts";
import { LEFT, WIDTH } from "./card-frame.ts";
import { cardRigs, fliesText, leadingPhase, phaseDaysText, rigNumber, rigText } from "./card-words.ts";
import { addRule, addText, type Column, countLines, createColumn, group, setText } from "./column.ts";
import { type Ruler, type Run, run } from "./flow.ts";
import { ascent_pt, DEPTH, GLANCE, leading_pt, SMALL, STRONG, type TypeStyle } from "./type-styles.ts";

/** Where a rig's number begins, and where it ends: in the phase that leads, and in the others. */
const NUMBER_AT = 30;
const LEADING_END = 137;
const OTHER_END = 112;
const SWATCH_PT = { width: 14, height: 9, room: 19 };
type Plan = GuideLake["plan"][number];

interface NumberPlace {
  readonly style: TypeStyle;
  readonly end_pt: number;
}

/** A rig: its number at a glance, then how it is made up, on the number's line or on two beside it. */
function addRig(
  column: Column,
  plan: Plan,
  rig: Plan["rigs"][number],
  guide: GuideFrame,
  { style, end_pt }: NumberPlace,
): void {
  const { label, value } = rigNumber(rig, plan.band, guide.club.units);
  const top_pt = column.y_pt;
  const onNumbersLine_pt = top_pt + ascent_pt(style) - ascent_pt(SMALL);
  column.y_pt = onNumbersLine_pt;
  const labelled = setText(column, [run(label, SMALL)], { role: "TH", field: "rig", width_pt: NUMBER_AT });
  column.y_pt = top_pt;
  const number = setText(column, [run(value, style)], {
    role: "TD",
    field: "depthBands",
    indent_pt: NUMBER_AT,
    width_pt: end_pt - NUMBER_AT,
  });
  const belowNumber_pt = column.y_pt;
  const room = { role: "TD", field: "leaders", indent_pt: end_pt + 6 } as const;
  const lines = countLines(column, [run(rigText(rig), SMALL)], WIDTH - room.indent_pt);
  column.y_pt = lines > 1 ? top_pt : onNumbersLine_pt;
  const words = setText(column, [run(rigText(rig), SMALL)], room);
  column.y_pt = Math.max(belowNumber_pt, column.y_pt);
  column.parts.push(group("Table", [group("TR", [labelled, number, words])]));
}

/** The flies that head the list, as many as one line holds, but one at least. */
function addFlies(column: Column, flies: Plan["flies"]): void {
  const label = run("Flies  ", STRONG);
  const runs = (count: number): Run[] => [label, run(fliesText(flies.slice(0, count)), SMALL)];
  let count = flies.length;
  while (count > 1 && countLines(column, runs(count), WIDTH) > 1) count -= 1;
  if (count > 0) addText(column, runs(count), { role: "P", field: "patterns" });
}

/** White words on black at the right end of a phase's heading. */
function addTag(column: Column, text: string, top_pt: number): void {
  const width_pt = column.ruler.width_pt(text, STRONG);
  const right_pt = LEFT + WIDTH;
  column.decoration.push({
    kind: "shape",
    path: `M${right_pt - width_pt - 8} ${top_pt}H${right_pt}V${top_pt + leading_pt(STRONG)}H${right_pt - width_pt - 8}Z`,
  });
  const below_pt = column.y_pt;
  column.y_pt = top_pt;
  addText(column, [run(text, STRONG)], {
    role: "P",
    field: "status",
    indent_pt: WIDTH - width_pt - 4,
    reversed: true,
  });
  column.y_pt = below_pt;
}

/** A phase's hatching as the strip shows it, its name and its days. */
function addPhaseHeading(column: Column, plan: Plan, lake: GuideLake): void {
  const state = stateOfPhase(plan.phase);
  const tag = state === lake.now.state ? "now" : plan.phase === leadingPhase(lake) ? "next" : undefined;
  const top_pt = column.y_pt;
  column.decoration.push({
    kind: "svg",
    svg: stateSwatch(state, paperInk, SWATCH_PT.width, SWATCH_PT.height),
    x_pt: LEFT,
    y_pt: top_pt + 1,
  });
  addText(column, [run(`${phaseName(plan.phase)}  `, STRONG), run(phaseDaysText(lake, plan), SMALL)], {
    role: "H2",
    field: "status",
    indent_pt: SWATCH_PT.room,
    width_pt: WIDTH - SWATCH_PT.room - (tag === undefined ? 0 : column.ruler.width_pt(tag, STRONG) + 12),
  });
  if (tag !== undefined) addTag(column, tag, top_pt);
}

function addPhase(column: Column, plan: Plan, guide: GuideFrame, lake: GuideLake): void {
  addRule(column, 0.6);
  column.y_pt += 1.5;
  addPhaseHeading(column, plan, lake);
  const leads = plan.phase === leadingPhase(lake);
  for (const [i, rig] of cardRigs(plan).entries())
    addRig(column, plan, rig, guide, {
      style: leads && i === 0 ? DEPTH : GLANCE,
      end_pt: leads ? LEADING_END : OTHER_END,
    });
  addFlies(column, plan.flies);
  column.y_pt += 1.5;
}

/** What to fish in the phase whose numbers are wanted first. */
export function addLeading(column: Column, guide: GuideFrame, lake: GuideLake): void {
  for (const plan of lake.plan) if (plan.phase === leadingPhase(lake)) addPhase(column, plan, guide, lake);
}

/** What to fish in the other phases, from `top_pt` down. */
export function setOthers(ruler: Ruler, top_pt: number, guide: GuideFrame, lake: GuideLake): Column {
  const column = createColumn(ruler, LEFT, WIDTH, top_pt);
  for (const plan of lake.plan) if (plan.phase !== leadingPhase(lake)) addPhase(column, plan, guide, lake);
  return column;
}
