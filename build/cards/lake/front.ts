import { paperInk } from "../../draw/ink.ts";
import { springDays } from "../../draw/strip/date-axis.ts";
import { stateSwatch } from "../../draw/strip/legend.ts";
import { seasonStrip } from "../../draw/strip/season-strip.ts";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideLake } from "../../guide/guide-schema.ts";
import { iceLeftText } from "../../guide/ice-left.ts";
import { dayMonth } from "../../model/calendar.ts";
import { type Phase, phaseName, STATE_WORDS, stateOfPhase } from "../../model/phase.ts";
import {
  bestDaysText,
  cardRigs,
  fliesText,
  type Glance,
  leadingPhase,
  lightText,
  noBreak,
  nowGlance,
  phaseDaysText,
  rigNumber,
  rigText,
  whenGlance,
} from "../card-words.ts";
import {
  addDrawing,
  addRule,
  addText,
  type Column,
  columnOverflow,
  countLines,
  createColumn,
  group,
  type Ruler,
  type Run,
  run,
  setText,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import {
  ascent_pt,
  BOTTOM,
  DEPTH,
  type FaceLayout,
  GLANCE,
  LEFT,
  leading_pt,
  NUMBER,
  type Part,
  SMALL,
  STRONG,
  TOP,
  type TypeStyle,
  WIDTH,
} from "../layout/page.ts";

function glanceParts(column: Column, { label, value, sureness }: Glance, indent_pt: number): Part[] {
  const options = { role: "P", field: "status", indent_pt, width_pt: WIDTH / 2 - 6 } as const;
  return [
    setText(column, [run(label, SMALL)], options),
    setText(column, [run(value, NUMBER)], options),
    setText(column, [run(sureness, GLANCE)], options),
  ];
}

/** What it is now on the left, the days to go on the right. */
function addGlance(column: Column, { asOf }: GuideFrame, lake: GuideLake): void {
  const top_pt = column.y_pt;
  column.parts.push(...glanceParts(column, nowGlance(lake), 0));
  const left_pt = column.y_pt;
  column.y_pt = top_pt;
  column.parts.push(...glanceParts(column, whenGlance(lake), WIDTH / 2 + 6));
  column.y_pt = Math.max(left_pt, column.y_pt) + 1;
  column.decoration.push({
    kind: "shape",
    path: `M${LEFT + WIDTH / 2} ${top_pt + 2}V${column.y_pt - 2}`,
    stroke_pt: 0.6,
  });
  const best = bestDaysText(lake);
  const ice = iceLeftText(lake, asOf);
  if (ice !== null) addText(column, [run(ice, STRONG)], { role: "P", field: "status" });
  for (const words of [STATE_WORDS[lake.now.state].advice, ...(best === null ? [] : [best])])
    addText(column, [run(words, STRONG)], { role: "P", field: "status" });
}

/** The light of the card's day. */
function addLight(column: Column, { asOf }: GuideFrame, lake: GuideLake): void {
  const words = lightText(lake, asOf);
  if (words === null) return;
  addText(column, [run(`${noBreak(dayMonth(asOf))}  `, STRONG), run(words, SMALL)], {
    role: "P",
    field: "light",
  });
}

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
    kind: "drawing",
    drawing: stateSwatch(state, paperInk, SWATCH_PT.width, SWATCH_PT.height),
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
function addLeading(column: Column, guide: GuideFrame, lake: GuideLake): void {
  for (const plan of lake.plan) if (plan.phase === leadingPhase(lake)) addPhase(column, plan, guide, lake);
}

/** The state that a card has no room for: the one longest past, or the one farthest ahead. */
const leftOff = (lake: GuideLake): Phase =>
  leadingPhase(lake) === "later-weeks" ? "ice-off" : "later-weeks";

/** What to fish in the other phases, from `top_pt` down. */
function setOthers(ruler: Ruler, top_pt: number, guide: GuideFrame, lake: GuideLake): Column {
  const column = createColumn(ruler, LEFT, WIDTH, top_pt);
  for (const plan of lake.plan)
    if (plan.phase !== leadingPhase(lake) && plan.phase !== leftOff(lake))
      addPhase(column, plan, guide, lake);
  return column;
}

/** Least and most height of the season strip; it takes what the words leave. */
const STRIP_PT = { least: 78, most: 190 };
/** Above and below the strip. */
const GAP_PT = 4;
/** Height that each of the club's fields takes on an ordinary front. */
const USUAL_PT = { name: 20, leaders: 66, patterns: 33 };

function setHead(guide: GuideFrame, lake: GuideLake, ruler: Ruler, withLight: boolean): Column {
  const head = createColumn(ruler, LEFT, WIDTH, TOP);
  addCardHead(head, guide.asOf, { title: lake.name, field: "name" });
  addGlance(head, guide, lake);
  if (withLight) addLight(head, guide, lake);
  head.y_pt += GAP_PT / 2;
  addLeading(head, guide, lake);
  head.y_pt += GAP_PT;
  return head;
}

/**
 * The front: name, the glance, the day's light and what to fish in the phase that is on or comes next, so that the depth
 * to set stands in the upper half; then the season strip and the other phases. Where the strip would be left too low the
 * light is left to the lake's page.
 */
export function layoutFront(guide: GuideFrame, lake: GuideLake, ruler: Ruler): FaceLayout {
  const othersHeight_pt = setOthers(ruler, 0, guide, lake).y_pt;
  const roomBelow_pt = (head: Column): number => BOTTOM - head.y_pt - GAP_PT - othersHeight_pt;
  const full = setHead(guide, lake, ruler, true);
  const head = roomBelow_pt(full) < STRIP_PT.least ? setHead(guide, lake, ruler, false) : full;
  const strip = seasonStrip(lake, guide, {
    ink: paperInk,
    width: WIDTH,
    height: Math.max(STRIP_PT.least, Math.min(STRIP_PT.most, roomBelow_pt(head))),
    ...springDays(lake, guide),
    compact: false,
  });
  addDrawing(head, strip);
  const others = setOthers(ruler, head.y_pt + GAP_PT, guide, lake);
  for (const [field, height_pt] of head.heights_pt)
    others.heights_pt.set(field, (others.heights_pt.get(field) ?? 0) + height_pt);
  return {
    face: {
      title: `${lake.name}, front`,
      parts: [...head.parts, ...others.parts],
      decoration: [...head.decoration, ...others.decoration],
    },
    misfits: [...head.misfits, ...others.misfits, ...columnOverflow(others, BOTTOM, USUAL_PT)],
  };
}
