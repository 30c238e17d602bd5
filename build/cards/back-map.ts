import { paperInk } from "../draw/ink.ts";
import { lakeMap } from "../draw/lake-map.tsx";
import type { GuideLake } from "../guide/guide-schema.ts";
import type { UnitSystem } from "../model/units.ts";
import { LEFT, WIDTH } from "./card-frame.ts";
import { leadingPhase } from "./card-words.ts";
import type { Column } from "./column.ts";
import { mm } from "./paper.ts";

/** A lower or narrower map says nothing. */
const LEAST_PT = { height: mm(25), width: mm(40) };
const STEP_PT = mm(3);

export interface FittedMap {
  readonly svg: string;
  readonly width_pt: number;
  readonly height_pt: number;
}

/** The width and height that a drawing says of itself. */
export function drawnSize_pt(svg: string): [width_pt: number, height_pt: number] {
  const size = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  return [Number(size?.[1]), Number(size?.[2])];
}

/** The widest map of a lake that is no higher than `room_pt`, its lettering full size; null when none is worth having. */
export function fitMap(lake: GuideLake, units: UnitSystem, room_pt: number): FittedMap | null {
  if (room_pt < LEAST_PT.height) return null;
  const phase = leadingPhase(lake) ?? null;
  for (let width_pt = WIDTH; width_pt >= LEAST_PT.width; width_pt -= STEP_PT) {
    const svg = lakeMap(lake, { ink: paperInk, units, width: width_pt, phase });
    if (svg === null) return null;
    const [, height_pt] = drawnSize_pt(svg);
    if (height_pt <= room_pt) return { svg, width_pt, height_pt };
  }
  return null;
}

/** Places a map in the middle of the column. */
export function addMap(column: Column, lake: GuideLake, { svg, width_pt, height_pt }: FittedMap): void {
  column.parts.push({
    role: "Figure",
    alt: `Map of ${lake.name}, north up: shore, depths and marks.`,
    parts: [],
    pieces: [
      {
        kind: "svg",
        svg,
        x_pt: LEFT + (WIDTH - width_pt) / 2,
        y_pt: column.y_pt,
        width_pt,
        height_pt,
      },
    ],
  });
  column.y_pt += height_pt;
}
