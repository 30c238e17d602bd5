import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { phaseName } from "../../model/phase.ts";
import { depthNumber, depthText, depthUnit } from "../../model/units.ts";
import { leadingPhase, noBreak } from "../card-words.ts";
import { addText, type Column, type Run, run } from "../layout/column.ts";
import { addTable, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import { SMALL, STRONG } from "../layout/page.ts";
import { driftText } from "../rig/rig-tables.ts";

type Shot = Guide["rigs"]["shot"];

const ROW_HEAD_PT = 20;
/** Room for a cell's shot on one line. */
const LEAST_CELL_PT = 80;
/** One depth in one drift is no table: the rig card has it. */
const LEAST_CELLS = 2;

/** The table's depths in the water where fish are, or the first below it where none lies in it. */
function rowsIn({ rows }: Shot, band: { readonly from_m: number; readonly to_m: number }): Shot["rows"] {
  const inside = rows.filter(({ depth_m }) => depth_m >= band.from_m && depth_m <= band.to_m);
  return inside.length > 0 ? inside : rows.filter(({ depth_m }) => depth_m > band.to_m).slice(0, 1);
}

/** Some of a list, evenly, its first and last among them; of one, the last. */
const spread = <T>(all: readonly T[], most: number): T[] =>
  all.length <= most
    ? [...all]
    : all.filter((_, i) =>
        Array.from({ length: most }, (_, k) =>
          most === 1 ? all.length - 1 : Math.round((k * (all.length - 1)) / (most - 1)),
        ).includes(i),
      );

/** The lake's own part of the shot table: the depths fished in the phase that leads, and the drifts that shot can hold. */
export interface LakeShot {
  readonly words: string;
  readonly drifts: Shot["columns"];
  readonly rows: readonly { readonly depth_m: number; readonly cells: readonly string[] }[];
}

/**
 * Shot against drift for the water fished now or next, at most `most` depths of it and no more drifts than fit in a
 * width; nothing where no shot is ever called for, or for one depth in one drift alone.
 */
export function lakeShot(
  guide: GuideFrame,
  lake: GuideLake,
  most: number,
  width_pt: number,
): LakeShot | null {
  const { shot, rod_m } = guide.rigs;
  const { units } = guide.club;
  const plan = lake.plan.find(({ phase }) => phase === leadingPhase(lake));
  if (plan === undefined) return null;
  const rows = spread(rowsIn(shot, plan.band), most);
  const held = shot.columns
    .map((drift, place) => ({ drift, place }))
    .filter(
      ({ drift, place }) => drift.rod_s !== null && rows.some(({ cells }) => cells[place]?.problem === null),
    )
    .slice(0, Math.floor((width_pt - ROW_HEAD_PT) / LEAST_CELL_PT));
  if (rows.length * held.length < LEAST_CELLS) return null;
  return {
    words: `${phaseName(plan.phase).toLowerCase()}, indicator drifting one rod (${noBreak(depthText(rod_m, units))}) in`,
    drifts: held.map(({ drift }) => drift),
    rows: rows.map(({ depth_m, cells }) => ({
      depth_m,
      cells: held.map(({ place }) => cells[place]?.text ?? ""),
    })),
  };
}

/** The table, under a caution and, on a line of their own, the words that say how to read it. */
export function addLakeShot(
  column: Column,
  guide: GuideFrame,
  { words, drifts, rows }: LakeShot,
  caution: readonly Run[],
): void {
  if (caution.length > 0) addText(column, caution, { role: "P", field: "cautions" });
  addText(column, [run("Shot  ", STRONG), run(words, SMALL)], { role: "P", field: "shot names" });
  const each_pt = (column.width_pt - ROW_HEAD_PT) / drifts.length;
  addTable(
    column,
    [
      [
        headCell(depthUnit(guide.club.units), SMALL),
        ...drifts.map(({ rod_s }) => headCell(`${driftText(rod_s)} s`, STRONG)),
      ],
      ...rows.map(({ depth_m, cells }) => [
        headCell(depthNumber(depth_m, guide.club.units), STRONG),
        ...cells.map((text) => dataCell(text, SMALL)),
      ]),
    ],
    { tracks: tableTracks([ROW_HEAD_PT, ...drifts.map(() => each_pt)]), field: "shot names" },
  );
}
