import { paperInk } from "../draw/ink.ts";
import { seasonStrip, stripTitle } from "../draw/season-strip.tsx";
import { springDays } from "../draw/spring-days.ts";
import { stateSwatch } from "../draw/strip-legend.tsx";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { phaseName, STATE_WORDS, stateOfPhase } from "../model/phase.ts";
import {
  bestDaysText,
  cardRigs,
  fliesText,
  type Glance,
  leadingPhase,
  nowGlance,
  phaseDaysText,
  rigNumber,
  rigText,
  whenGlance,
} from "./card-words.ts";
import {
  addRule,
  addText,
  type Column,
  countLines,
  createColumn,
  group,
  overflow,
  setText,
} from "./column.ts";
import type { FaceLayout, Part } from "./face.ts";
import type { Ruler, Run } from "./flow.ts";
import { A6, CARD_MARGIN_PT } from "./paper.ts";
import {
  ascent_pt,
  DEPTH,
  GLANCE,
  leading_pt,
  NUMBER,
  SMALL,
  STRONG,
  TITLE,
  type TypeStyle,
} from "./type-styles.ts";

const LEFT = CARD_MARGIN_PT;
const WIDTH = A6.width_pt - 2 * CARD_MARGIN_PT;
const BOTTOM = A6.height_pt - CARD_MARGIN_PT;

/** Least and most height of the season strip; it takes what the words leave. */
const STRIP_PT = { least: 78, most: 190 };
/** Where a rig's number begins, and where it ends at its two sizes. */
const NUMBER_AT = 30;
const DEPTH_END = 137;
const GLANCE_END = 112;
const SWATCH_PT = { width: 14, height: 9, room: 19 };
/** Height that each of the club's fields takes on an ordinary front. */
const USUAL_PT = { name: 20, leaders: 66, patterns: 33 };

const run = (text: string, style: TypeStyle): Run => ({ text, style });

function addHeader(column: Column, guide: Guide, lake: GuideLake): void {
  const asOf = `as of ${dayMonthYear(guide.asOf)}`;
  const asOfWidth = column.ruler.width_pt(asOf, STRONG);
  const top_pt = column.y_pt;
  addText(column, [run(lake.name, TITLE)], {
    role: "H1",
    field: "name",
    width_pt: WIDTH - asOfWidth - 8,
    maxLines: 2,
  });
  const below_pt = column.y_pt;
  column.y_pt = top_pt + ascent_pt(TITLE) - ascent_pt(STRONG);
  addText(column, [run(asOf, STRONG)], { role: "P", field: "asOf", indent_pt: WIDTH - asOfWidth });
  column.y_pt = below_pt + 2;
  addRule(column, 2);
  column.y_pt += 2.6;
  addRule(column, 0.5);
  column.y_pt += 3;
}

function glanceParts(column: Column, { label, value, sureness }: Glance, indent_pt: number): Part[] {
  const options = { role: "P", field: "status", indent_pt, width_pt: WIDTH / 2 - 6 } as const;
  return [
    setText(column, [run(label, SMALL)], options),
    setText(column, [run(value, NUMBER)], options),
    setText(column, [run(sureness, GLANCE)], options),
  ];
}

/** What it is now on the left, the days to go on the right. */
function addGlance(column: Column, lake: GuideLake): void {
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
  for (const words of [STATE_WORDS[lake.now.state].advice, ...(best === null ? [] : [best])])
    addText(column, [run(words, STRONG)], { role: "P", field: "status" });
}

/** A rig: its number at a glance, then how it is made up, on the number's line or on two beside it. */
function addRig(
  column: Column,
  plan: GuideLake["plan"][number],
  rig: GuideLake["plan"][number]["rigs"][number],
  guide: Guide,
  style: TypeStyle,
): void {
  const { label, value } = rigNumber(rig, plan.band, guide.club.units);
  const top_pt = column.y_pt;
  const onNumbersLine_pt = top_pt + ascent_pt(style) - ascent_pt(SMALL);
  const numberEnd = style === DEPTH ? DEPTH_END : GLANCE_END;
  column.y_pt = onNumbersLine_pt;
  const labelled = setText(column, [run(label, SMALL)], { role: "TH", field: "rig", width_pt: NUMBER_AT });
  column.y_pt = top_pt;
  const number = setText(column, [run(value, style)], {
    role: "TD",
    field: "depthBands",
    indent_pt: NUMBER_AT,
    width_pt: numberEnd - NUMBER_AT,
  });
  const belowNumber_pt = column.y_pt;
  const room = { role: "TD", field: "leaders", indent_pt: numberEnd + 6 } as const;
  const lines = countLines(column, [run(rigText(rig), SMALL)], WIDTH - room.indent_pt);
  column.y_pt = lines > 1 ? top_pt : onNumbersLine_pt;
  const words = setText(column, [run(rigText(rig), SMALL)], room);
  column.y_pt = Math.max(belowNumber_pt, column.y_pt);
  column.parts.push(group("Table", [group("TR", [labelled, number, words])]));
}

/** The flies that head the list, as many as one line holds, but one at least. */
function addFlies(column: Column, flies: GuideLake["plan"][number]["flies"]): void {
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
function addPhaseHeading(column: Column, plan: GuideLake["plan"][number], lake: GuideLake): void {
  const state = stateOfPhase(plan.phase);
  const tag = state === lake.now.state ? "now" : plan.phase === leadingPhase(lake) ? "next" : undefined;
  const top_pt = column.y_pt;
  column.decoration.push({
    kind: "svg",
    svg: stateSwatch(state, paperInk, SWATCH_PT.width, SWATCH_PT.height),
    x_pt: LEFT,
    y_pt: top_pt + 1,
    width_pt: SWATCH_PT.width,
    height_pt: SWATCH_PT.height,
  });
  addText(column, [run(`${phaseName(plan.phase)}  `, STRONG), run(phaseDaysText(lake, plan), SMALL)], {
    role: "H2",
    field: "status",
    indent_pt: SWATCH_PT.room,
    width_pt: WIDTH - SWATCH_PT.room - (tag === undefined ? 0 : column.ruler.width_pt(tag, STRONG) + 12),
  });
  if (tag !== undefined) addTag(column, tag, top_pt);
}

function addPhase(column: Column, plan: GuideLake["plan"][number], guide: Guide, lake: GuideLake): void {
  addRule(column, 0.6);
  column.y_pt += 1.5;
  addPhaseHeading(column, plan, lake);
  const leads = plan.phase === leadingPhase(lake);
  for (const [i, rig] of cardRigs(plan).entries())
    addRig(column, plan, rig, guide, leads && i === 0 ? DEPTH : GLANCE);
  addFlies(column, plan.flies);
  column.y_pt += 1.5;
}

function setPlan(ruler: Ruler, top_pt: number, guide: Guide, lake: GuideLake): Column {
  const column = createColumn(ruler, LEFT, WIDTH, top_pt);
  for (const plan of lake.plan) addPhase(column, plan, guide, lake);
  return column;
}

/** The front: name, the glance, the season strip and what to fish, phase by phase. */
export function layoutFront(guide: Guide, lake: GuideLake, ruler: Ruler): FaceLayout {
  const head = createColumn(ruler, LEFT, WIDTH, CARD_MARGIN_PT);
  addHeader(head, guide, lake);
  addGlance(head, lake);
  const stripTop_pt = head.y_pt + 4;
  const planHeight_pt = setPlan(ruler, 0, guide, lake).y_pt;
  const room_pt = BOTTOM - stripTop_pt - 4 - planHeight_pt;
  const stripHeight_pt = Math.max(STRIP_PT.least, Math.min(STRIP_PT.most, room_pt));
  const plan = setPlan(ruler, stripTop_pt + stripHeight_pt + 4, guide, lake);
  const strip: Part = {
    role: "Figure",
    alt: stripTitle(lake, guide.asOf, lake.daily),
    parts: [],
    pieces: [
      {
        kind: "svg",
        svg: seasonStrip(lake, guide, {
          ink: paperInk,
          width: WIDTH,
          height: stripHeight_pt,
          ...springDays(lake, guide),
          compact: false,
        }),
        x_pt: LEFT,
        y_pt: stripTop_pt,
        width_pt: WIDTH,
        height_pt: stripHeight_pt,
      },
    ],
  };
  for (const [field, height_pt] of head.heights_pt) plan.heights_pt.set(field, height_pt);
  return {
    face: {
      title: `${lake.name}, front`,
      parts: [...head.parts, strip, ...plan.parts],
      decoration: [...head.decoration, ...plan.decoration],
    },
    misfits: [...head.misfits, ...plan.misfits, ...overflow(plan, BOTTOM, USUAL_PT)],
  };
}
