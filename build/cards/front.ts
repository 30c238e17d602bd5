import { paperInk } from "../draw/ink.ts";
import { seasonStrip, stripTitle } from "../draw/season-strip.tsx";
import { springDays } from "../draw/spring-days.ts";
import type { GuideFrame } from "../guide/guide-frame.ts";
import type { GuideLake } from "../guide/guide-schema.ts";
import { BOTTOM, LEFT, TOP, WIDTH } from "./card-frame.ts";
import { addCardHead } from "./card-head.ts";
import { type Column, createColumn, overflow } from "./column.ts";
import type { FaceLayout, Part } from "./face.ts";
import type { Ruler } from "./flow.ts";
import { addGlance, addLight } from "./front-head.ts";
import { addLeading, setOthers } from "./front-plan.ts";

/** Least and most height of the season strip; it takes what the words leave. */
const STRIP_PT = { least: 78, most: 190 };
/** Above and below the strip. */
const GAP_PT = 4;
/** Height that each of the club's fields takes on an ordinary front. */
const USUAL_PT = { name: 20, leaders: 66, patterns: 33 };

function setHead(guide: GuideFrame, lake: GuideLake, ruler: Ruler, withLight: boolean): Column {
  const head = createColumn(ruler, LEFT, WIDTH, TOP);
  addCardHead(head, guide.asOf, { title: lake.name, field: "name" });
  addGlance(head, lake);
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
  const stripTop_pt = head.y_pt;
  const room_pt = roomBelow_pt(head);
  const stripHeight_pt = Math.max(STRIP_PT.least, Math.min(STRIP_PT.most, room_pt));
  const others = setOthers(ruler, stripTop_pt + stripHeight_pt + GAP_PT, guide, lake);
  const days = springDays(lake, guide);
  const shown = lake.daily.filter(({ date }) => date >= days.from && date <= days.to);
  const strip: Part = {
    role: "Figure",
    alt: stripTitle(lake, guide.asOf, shown),
    parts: [],
    pieces: [
      {
        kind: "svg",
        svg: seasonStrip(lake, guide, {
          ink: paperInk,
          width: WIDTH,
          height: stripHeight_pt,
          ...days,
          compact: false,
        }),
        x_pt: LEFT,
        y_pt: stripTop_pt,
      },
    ],
  };
  for (const [field, height_pt] of head.heights_pt)
    others.heights_pt.set(field, (others.heights_pt.get(field) ?? 0) + height_pt);
  return {
    face: {
      title: `${lake.name}, front`,
      parts: [...head.parts, strip, ...others.parts],
      decoration: [...head.decoration, ...others.decoration],
    },
    misfits: [...head.misfits, ...others.misfits, ...overflow(others, BOTTOM, USUAL_PT)],
  };
}
