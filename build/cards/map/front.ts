import { paperInk } from "../../draw/ink.ts";
import { lakeMap } from "../../draw/map/lake-map.ts";
import { markText } from "../../draw/map/zones-and-marks.ts";
import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { GuideLake } from "../../guide/guide-schema.ts";
import { GOOD_STATES, PHASES, stateOfPhase } from "../../model/phase.ts";
import {
  addDrawing,
  addText,
  type Column,
  columnOverflow,
  createColumn,
  missingGlyphs,
  type Ruler,
  run,
} from "../layout/column.ts";
import { addCardHead } from "../layout/head-and-table.ts";
import type { FaceLayout, Overflow } from "../layout/page.ts";
import { BOTTOM, inMm, LEFT, mm, SMALL, TOP, WIDTH } from "../layout/page.ts";
import { addLight, mapAccuracyText } from "./words-and-light.ts";

/** A lower map would be illegible. */
const LEAST_PT = mm(25);
const GAP_PT = 3;
/** Heights of drawings are rounded to a tenth of a point. */
const ROUNDING_PT = 0.1;
/** The phases worth fishing; turnover's water is the one to leave alone. */
const SHOWN = PHASES.filter((phase) => GOOD_STATES.includes(stateOfPhase(phase)));

type LakeMap = NonNullable<GuideLake["place"]["map"]>;
type Drawn = NonNullable<ReturnType<typeof lakeMap>>;

/** What the marks' names and number leave no room for. */
function markOverflows({ marks }: LakeMap, { room, leftOut }: Drawn, ruler: Ruler): Overflow[] {
  const words = marks.map(({ mark, name }) => markText(mark, name)).join(" ");
  const most_pt = WIDTH - paperInk.textSize * 2;
  const wide = words.split(" ").filter((word) => ruler.width_pt(word, SMALL) > most_pt);
  return [
    ...missingGlyphs([run(words, SMALL)], "marks", ruler),
    ...wide.map((word) => ({
      field: "marks",
      message: `“${word}” is wider than the card`,
      hint: "Shorten the mark’s name.",
    })),
    ...leftOut.map((mark) => ({
      field: "marks",
      message: `no room on the map for the letter of “${mark}”`,
      hint: "Mark fewer places close together.",
    })),
    ...(room < LEAST_PT
      ? [
          {
            field: "marks",
            message: `their key leaves ${Math.max(0, Math.floor(inMm(room)))} mm for the map, ${inMm(LEAST_PT)} are needed`,
            hint: "Mark fewer places, or shorten their names.",
          },
        ]
      : []),
  ];
}

/** A front, and whether it had room for the light. */
interface MapFront extends FaceLayout {
  readonly hasLight: boolean;
}

function addFoot(column: Column, map: LakeMap): void {
  addText(column, [run(mapAccuracyText(map), SMALL)], { role: "P", field: "map" });
}

/** The map as large as it fits between the lake's name and how far to trust it; the light where that leaves room. */
export function layoutMapFront(guide: GuideFrame, lake: GuideLake, map: LakeMap, ruler: Ruler): MapFront {
  const column = createColumn(ruler, LEFT, WIDTH, TOP);
  addCardHead(column, guide.asOf, { title: lake.name, side: "map: north is up", field: "name" });
  const foot = createColumn(ruler, LEFT, WIDTH, 0);
  addFoot(foot, map);
  const height = BOTTOM - column.y_pt - GAP_PT - foot.y_pt - ROUNDING_PT;
  const drawn = lakeMap(lake, {
    ink: paperInk,
    units: guide.club.units,
    width: WIDTH,
    height,
    phases: SHOWN,
  });
  const misfits: Overflow[] = [];
  if (drawn !== null) {
    addDrawing(column, drawn.drawing);
    column.y_pt += GAP_PT;
    misfits.push(...markOverflows(map, drawn, ruler));
  }
  addFoot(column, map);
  const light = createColumn(ruler, LEFT, WIDTH, column.y_pt + GAP_PT);
  addLight(light, guide, lake);
  const hasLight = light.y_pt <= BOTTOM;
  if (hasLight) {
    column.parts.push(...light.parts);
    column.decoration.push(...light.decoration);
    column.misfits.push(...light.misfits);
  }
  return {
    hasLight,
    face: { title: `${lake.name}, map`, parts: column.parts, decoration: column.decoration },
    misfits: [
      ...column.misfits,
      ...misfits,
      ...(misfits.length > 0 ? [] : columnOverflow(column, BOTTOM, { name: 20 })),
    ],
  };
}
