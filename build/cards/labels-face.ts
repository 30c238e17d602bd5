import type { GuideFrame } from "../guide/guide-frame.ts";
import { depthRange, depthText } from "../model/units.ts";
import { frameOf } from "./card-frame.ts";
import { whole } from "./card-words.ts";
import { addRule, addText, countLines, createColumn, overflow } from "./column.ts";
import type { FaceLayout } from "./face.ts";
import { type Ruler, run } from "./flow.ts";
import type { Label } from "./labels.ts";
import { LABEL, mm } from "./paper.ts";
import { ascent_pt, GLANCE, SMALL, STRONG } from "./type-styles.ts";

/** Nothing stands nearer to a label's edge: the safe margin of 3 mm, and a little for words set to the right. */
const MARGIN_PT = mm(3.2);
const WHY_LINES = 2;
/** Room for a pencil, below the last line's descenders. */
const BLANK_PT = mm(5.5);
const USUAL_PT = { "leader names": 29, "trip names": 22 };

/** A label: name and set depths, what it is made of, what it is for, and a line to write on. */
export function layoutLabel(
  { leader, why }: Label,
  { club }: Pick<GuideFrame, "club">,
  ruler: Ruler,
): FaceLayout {
  const { left_pt, top_pt, width_pt, bottom_pt } = frameOf(LABEL, MARGIN_PT);
  const column = createColumn(ruler, left_pt, width_pt, top_pt);
  const atRight = (pieces: readonly ReturnType<typeof run>[], role: "P"): number => {
    const wide_pt = pieces.reduce((sum, { text, style }) => sum + ruler.width_pt(text, style), 0);
    addText(column, pieces, { role, field: "leader names", indent_pt: width_pt - wide_pt });
    return wide_pt;
  };
  const sets =
    leader.serves === null
      ? [run("no\u00a0indicator", STRONG)]
      : [
          run("Sets\u00a0\u00a0", SMALL),
          run(whole(depthRange(leader.serves.from_m, leader.serves.to_m, club.units)), GLANCE),
        ];
  const sets_pt = sets.reduce((sum, { text, style }) => sum + ruler.width_pt(text, style), 0);
  addText(column, [run(leader.name, GLANCE)], {
    role: "H2",
    field: "leader names",
    width_pt: width_pt - sets_pt - 4,
    maxLines: 1,
  });
  const second_pt = column.y_pt;
  column.y_pt = top_pt + (leader.serves === null ? ascent_pt(GLANCE) - ascent_pt(STRONG) : 0);
  atRight(sets, "P");
  column.y_pt = second_pt;
  const total = [run(whole(`whole ${depthText(leader.total_m, club.units)}`), STRONG)];
  const total_pt = atRight(total, "P");
  column.y_pt = second_pt;
  addText(column, [run(leader.label.slice(1, -1).map(whole).join(" + "), SMALL)], {
    role: "P",
    field: "leader names",
    width_pt: width_pt - total_pt - 4,
    maxLines: 1,
  });
  const words = why.find((text) => countLines(column, [run(text, SMALL)], width_pt) <= WHY_LINES);
  addText(column, [run(words ?? why.at(-1) ?? "", SMALL)], {
    role: "P",
    field: "trip names",
    maxLines: WHY_LINES,
  });
  const misfits = [...column.misfits, ...overflow(column, bottom_pt - BLANK_PT, USUAL_PT)];
  column.y_pt = bottom_pt;
  addRule(column, 0.5);
  return { face: { title: leader.name, parts: column.parts, decoration: column.decoration }, misfits };
}
