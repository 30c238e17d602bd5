import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideLake } from "../guide/guide-schema.ts";
import { dayMonth } from "../model/calendar.ts";
import { STATE_WORDS } from "../model/phase.ts";
import { LEFT, WIDTH } from "./card-frame.ts";
import { bestDaysText, type Glance, lightText, nowGlance, whenGlance, whole } from "./card-words.ts";
import { addText, type Column, setText } from "./column.ts";
import type { Part } from "./face.ts";
import { run } from "./flow.ts";
import { GLANCE, NUMBER, SMALL, STRONG } from "./type-styles.ts";

function glanceParts(column: Column, { label, value, sureness }: Glance, indent_pt: number): Part[] {
  const options = { role: "P", field: "status", indent_pt, width_pt: WIDTH / 2 - 6 } as const;
  return [
    setText(column, [run(label, SMALL)], options),
    setText(column, [run(value, NUMBER)], options),
    setText(column, [run(sureness, GLANCE)], options),
  ];
}

/** What it is now on the left, the days to go on the right. */
export function addGlance(column: Column, lake: GuideLake): void {
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

/** The light of the card's day. */
export function addLight(column: Column, { asOf }: GuideFrame, lake: GuideLake): void {
  const words = lightText(lake, asOf);
  if (words === null) return;
  addText(column, [run(`${whole(dayMonth(asOf))}  `, STRONG), run(words, SMALL)], {
    role: "P",
    field: "light",
  });
}
