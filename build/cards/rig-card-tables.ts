import type { GuideFrame } from "../guide/guide-frame.ts";
import type { Guide } from "../guide/guide-schema.ts";
import { depthNumber, depthRange, depthText, depthUnit } from "../model/units.ts";
import { whole } from "./card-words.ts";
import type { Column } from "./column.ts";
import { run } from "./flow.ts";
import { addGrid, type Cell, data, head, tracksOf } from "./rig-card-grid.ts";
import { diameterNumber, driftText, elsewhereText, recipeText, shareText } from "./rig-card-words.ts";
import { GLANCE, SMALL, STRONG, type TypeStyle } from "./type-styles.ts";

type Rigs = Guide["rigs"];
type ShotCell = Rigs["shot"]["rows"][number]["cells"][number];

/** Room for a depth or an angle at the head of a row, and for still water, which never asks for much. */
const ROW_HEAD_PT = 26;
const STILL_PT = 33;

/** A row's head and a column for each drift. */
function driftTracks({ width_pt }: Column, drifts: Rigs["shot"]["columns"]) {
  const moving = drifts.filter(({ rod_s }) => rod_s !== null).length;
  const still_pt = STILL_PT * (drifts.length - moving);
  const each_pt = (width_pt - ROW_HEAD_PT - still_pt) / Math.max(1, moving);
  return tracksOf([ROW_HEAD_PT, ...drifts.map(({ rod_s }) => (rod_s === null ? STILL_PT : each_pt))]);
}

const driftHead = (drift: Rigs["shot"]["columns"][number], style: TypeStyle): Cell =>
  head(driftText(drift.rod_s), drift.rod_s === null ? STRONG : style);

/** The shot in bold, a line for each size; what cannot be done in plain words. */
function shotCell(column: Column, { text, problem }: ShotCell, width_pt: number): Cell {
  const style = problem === null ? STRONG : SMALL;
  const fitting = (words: string): string =>
    column.ruler.width_pt(words, style) <= width_pt ? whole(words) : words;
  return { role: "TD", lines: text.split(" + ").map((piece) => [run(fitting(piece), style)]) };
}

/** Shot by depth and drift. */
export function addShot(column: Column, guide: GuideFrame, rows: Rigs["shot"]["rows"]): void {
  const { columns } = guide.rigs.shot;
  const tracks = driftTracks(column, columns);
  addGrid(
    column,
    [
      [head(depthUnit(guide.club.units), SMALL), ...columns.map((drift) => driftHead(drift, GLANCE))],
      ...rows.map(({ depth_m, cells }) => [
        head(depthNumber(depth_m, guide.club.units), GLANCE),
        ...cells.map((cell, i) => shotCell(column, cell, tracks[i + 1]?.width_pt ?? 0)),
      ]),
    ],
    { tracks, field: "shot names", uprights: true },
  );
}

/** How long an indicator swings, by holder angle and the same drifts; in still water it does not. */
export function addSwing(column: Column, { rigs }: GuideFrame, rows: Rigs["swing"]["rows"]): void {
  const drifts = rigs.swing.columns.filter(({ rod_s }) => rod_s !== null);
  addGrid(
    column,
    [
      [head("From", SMALL), ...drifts.map((drift) => driftHead(drift, STRONG))],
      ...rows.map(({ holder_deg, cells }) => [
        head(`${holder_deg}°`, STRONG),
        ...cells.filter(({ rod_s }) => rod_s !== null).map(({ text }) => data(whole(text), SMALL)),
      ]),
    ],
    { tracks: driftTracks(column, drifts), field: "swing" },
  );
}

/** Room for "13.5–24.5" at a glance. */
const SETS_PT = 68;
const WHOLE_PT = 30;

/** Leaders with the set depths they serve, the first `most` of them. */
export function addLeaders(column: Column, guide: GuideFrame, most: number, nameWidth_pt: number): void {
  const { units } = guide.club;
  const { leaders } = guide.rigs;
  const shown = leaders.slice(0, most);
  const make_pt = column.width_pt - nameWidth_pt - WHOLE_PT - SETS_PT;
  const count = [shown.length, leaders.length] as const;
  addGrid(
    column,
    [
      [
        head(`Leader${shareText(...count)}`, STRONG),
        head(`Taper, middle, tippet${elsewhereText(...count)}`, SMALL),
        head("Whole", SMALL),
        head(`Sets, ${depthUnit(units)}`, SMALL),
      ],
      ...shown.map((leader) => [
        head(leader.name, STRONG),
        data(recipeText(leader, guide), SMALL),
        data(whole(depthText(leader.total_m, units)), SMALL),
        leader.serves === null
          ? data("no indicator", SMALL)
          : data(depthRange(leader.serves.from_m, leader.serves.to_m, units).split(" ")[0] ?? "", GLANCE),
      ]),
    ],
    { tracks: tracksOf([nameWidth_pt, make_pt, WHOLE_PT, SETS_PT]), field: "leader names" },
  );
}

/** Whole tippet sizes with their diameters, `across` to a row. */
export function addTippet(column: Column, guide: GuideFrame, across: number): void {
  const sizes = guide.rigs.tippet.filter(({ size }) => !size.includes("."));
  const rows = Array.from({ length: Math.ceil(sizes.length / across) }, (_, i) =>
    sizes.slice(i * across, (i + 1) * across),
  );
  const width_pt = column.width_pt / across;
  addGrid(
    column,
    rows.map((row) =>
      row.map(
        ({ size, diameter_mm }): Cell => ({
          role: "TD",
          lines: [[run(whole(`${size} `), STRONG), run(diameterNumber(diameter_mm, guide), SMALL)]],
        }),
      ),
    ),
    { tracks: tracksOf(Array.from({ length: across }, () => width_pt)), field: "tippet" },
  );
}

/** Which rows and columns of the sinking tables a card shows. */
export interface SinkChoice {
  readonly depths_m: readonly number[];
  /** How many sinking lines. */
  readonly lines: number;
  readonly settling: Rigs["sinking"]["rows"];
}

/** Seconds to count each line down and seconds to wait for a rig to hang straight, by depth. */
export function addSinking(
  column: Column,
  guide: GuideFrame,
  { depths_m, lines, settling }: SinkChoice,
  nameWidth_pt: number,
): void {
  const { units } = guide.club;
  const sinking = guide.rigs.lines.filter(({ countdown }) => countdown.length > 0);
  const shown = sinking.slice(0, lines);
  const count = [shown.length, sinking.length] as const;
  const each_pt = (column.width_pt - nameWidth_pt) / Math.max(1, depths_m.length);
  const cell = (text: number | undefined, style: TypeStyle): Cell =>
    data(text === undefined ? "–" : `${text}`, style);
  addGrid(
    column,
    [
      [
        head(`Count down, s${shareText(...count)}${elsewhereText(...count)}`, STRONG),
        ...depths_m.map((depth_m) => head(whole(depthText(depth_m, units)), STRONG)),
      ],
      ...shown.map(({ name, countdown }) => [
        head(name, SMALL),
        ...depths_m.map((depth) => cell(countdown.find(({ depth_m }) => depth_m === depth)?.seconds, GLANCE)),
      ]),
      ...settling.map(({ what, depths }) => [
        head(`Settle: ${what}`, SMALL),
        ...depths_m.map((depth) => cell(depths.find(({ depth_m }) => depth_m === depth)?.settle_s, SMALL)),
      ]),
    ],
    { tracks: tracksOf([nameWidth_pt, ...depths_m.map(() => each_pt)]), field: "line names" },
  );
}
