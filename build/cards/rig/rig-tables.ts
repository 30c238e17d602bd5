import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Caution, Guide } from "../../guide/guide-schema.ts";
import {
  depthNumber,
  depthRange,
  depthText,
  depthUnit,
  diameterText,
  rounded,
  smallLengthText,
} from "../../model/units.ts";
import { noBreak } from "../card-words.ts";
import { type Column, run } from "../layout/column.ts";
import { addTable, type Cell, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import { GLANCE, SMALL, STRONG, type TypeStyle } from "../layout/page.ts";

type Rigs = Guide["rigs"];
type Leader = Rigs["leaders"][number];
type RodSeconds = Rigs["shot"]["columns"][number]["rod_s"];

/** What a drift column is headed by. */
export const driftText = (rod_s: RodSeconds): string => (rod_s === null ? "still" : rounded(rod_s));

/** How to find the column of a drift. */
export const driftWords = ({ rigs, club }: GuideFrame): string =>
  `Count the seconds in which the indicator drifts one rod length (${noBreak(depthText(rigs.rod_m, club.units))}). Pinch on all the shot its box names.`;

/** How to find the row of a depth. */
export const depthWords = ({ rigs, club }: GuideFrame): string => {
  const { from_m, to_m } = rigs.offBottom;
  const [from, to] = [from_m, to_m].map((length_m) => noBreak(smallLengthText(length_m, club.units)));
  return `Depth as plumbed, ${depthUnit(club.units)}; the fly hangs ${from === to ? from : `${from} to ${to}`} above the bottom.`;
};

/** "12 ft 3X, 6 ft 4X, 3 ft 5X". */
export const recipeText = ({ sections }: Leader, { club }: GuideFrame): string =>
  sections.map(({ length_m, size }) => noBreak(`${depthText(length_m, club.units)} ${size}`)).join(", ");

/** ", 4 of 6": how many of a list a card shows, where it is not all. */
const shareText = (shown: number, all: number): string => (shown < all ? `, ${shown} of ${all}` : "");

/** "; more: rigs page", where a card does not show all of a list. */
const elsewhereText = (shown: number, all: number): string => (shown < all ? "; more: rigs page" : "");

/** A diameter without its unit, which stands in the table's head: "0.010". */
const diameterNumber = (diameter_mm: number, { club }: GuideFrame): string =>
  diameterText(diameter_mm, club.units).split(" ")[0] ?? "";

/** The head of the tippet table: "in; half sizes halfway". */
export const tippetWords = ({ club }: GuideFrame): string =>
  `${diameterText(1, club.units).split(" ")[1] ?? ""}; half sizes halfway`;

/** The cautions a rig card carries, what lead shot does first, then those that always hold. */
export function rigCautions({ cautions }: Pick<Guide, "cautions">): Caution[] {
  const always = cautions.filter(({ when }) => when.includes("always"));
  return [...always.filter(({ id }) => id === "lead"), ...always.filter(({ id }) => id !== "lead")];
}

/** How to read the swing table. */
export const swingWords = ({ rigs, club }: GuideFrame): string =>
  `of a fixed rod with ${noBreak(depthText(rigs.swing.line_m, club.units))} of line out, by holder angle and drift. ${rigs.swing.note}`;

/** Swing from one holder angle in a line: "from 60°: 15 min at 120, 7 min at 60". */
export function swingLine({ rigs }: GuideFrame): string {
  const { rows } = rigs.swing;
  const row = rows[Math.floor(rows.length / 2)];
  if (row === undefined) return "";
  const times = row.cells
    .filter(({ rod_s }) => rod_s !== null)
    .map(({ rod_s, text }) => noBreak(`${text} at ${driftText(rod_s)}`));
  return `from ${row.holder_deg}°: ${times.join(", ")}.`;
}

/** Whose card it is, and what the club says of it. */
export const noticeText = ({ club, season }: GuideFrame): string =>
  [`${club.name}, ${season}.`, ...(club.notice === null ? [] : [club.notice])].join(" ");

type GuideRigs = Guide["rigs"];
type ShotCell = GuideRigs["shot"]["rows"][number]["cells"][number];

/** Room for a depth or an angle at the head of a row, and for still water, which never asks for much. */
const ROW_HEAD_PT = 26;
const STILL_PT = 33;

/** A row's head and a column for each drift. */
function driftTracks({ width_pt }: Column, drifts: GuideRigs["shot"]["columns"]) {
  const moving = drifts.filter(({ rod_s }) => rod_s !== null).length;
  const still_pt = STILL_PT * (drifts.length - moving);
  const each_pt = (width_pt - ROW_HEAD_PT - still_pt) / Math.max(1, moving);
  return tableTracks([ROW_HEAD_PT, ...drifts.map(({ rod_s }) => (rod_s === null ? STILL_PT : each_pt))]);
}

const driftHead = (drift: GuideRigs["shot"]["columns"][number], style: TypeStyle): Cell =>
  headCell(driftText(drift.rod_s), drift.rod_s === null ? STRONG : style);

/** The shot in bold, a line for each size; what cannot be done in plain words. */
function shotCell(column: Column, { text, problem }: ShotCell, width_pt: number): Cell {
  const style = problem === null ? STRONG : SMALL;
  const fitting = (words: string): string =>
    column.ruler.width_pt(words, style) <= width_pt ? noBreak(words) : words;
  return { role: "TD", lines: text.split(" + ").map((piece) => [run(fitting(piece), style)]) };
}

/** Shot by depth and drift. */
export function addShot(column: Column, guide: GuideFrame, rows: GuideRigs["shot"]["rows"]): void {
  const { columns } = guide.rigs.shot;
  const tracks = driftTracks(column, columns);
  addTable(
    column,
    [
      [headCell(depthUnit(guide.club.units), SMALL), ...columns.map((drift) => driftHead(drift, GLANCE))],
      ...rows.map(({ depth_m, cells }) => [
        headCell(depthNumber(depth_m, guide.club.units), GLANCE),
        ...cells.map((cell, i) => shotCell(column, cell, tracks[i + 1]?.width_pt ?? 0)),
      ]),
    ],
    { tracks, field: "shot names", uprights: true },
  );
}

/** How long an indicator swings, by holder angle and the same drifts; in still water it does not. */
export function addSwing(column: Column, { rigs }: GuideFrame, rows: GuideRigs["swing"]["rows"]): void {
  const drifts = rigs.swing.columns.filter(({ rod_s }) => rod_s !== null);
  addTable(
    column,
    [
      [headCell("From", SMALL), ...drifts.map((drift) => driftHead(drift, STRONG))],
      ...rows.map(({ holder_deg, cells }) => [
        headCell(`${holder_deg}°`, STRONG),
        ...cells.filter(({ rod_s }) => rod_s !== null).map(({ text }) => dataCell(noBreak(text), SMALL)),
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
  addTable(
    column,
    [
      [
        headCell(`Leader${shareText(...count)}`, STRONG),
        headCell(`Taper, middle, tippet${elsewhereText(...count)}`, SMALL),
        headCell("Whole", SMALL),
        headCell(`Sets, ${depthUnit(units)}`, SMALL),
      ],
      ...shown.map((leader) => [
        headCell(leader.name, STRONG),
        dataCell(recipeText(leader, guide), SMALL),
        dataCell(noBreak(depthText(leader.total_m, units)), SMALL),
        leader.serves === null
          ? dataCell("no indicator", SMALL)
          : dataCell(depthRange(leader.serves.from_m, leader.serves.to_m, units).split(" ")[0] ?? "", GLANCE),
      ]),
    ],
    { tracks: tableTracks([nameWidth_pt, make_pt, WHOLE_PT, SETS_PT]), field: "leader names" },
  );
}

/** Whole tippet sizes with their diameters, `across` to a row. */
export function addTippet(column: Column, guide: GuideFrame, across: number): void {
  const sizes = guide.rigs.tippet.filter(({ size }) => !size.includes("."));
  const rows = Array.from({ length: Math.ceil(sizes.length / across) }, (_, i) =>
    sizes.slice(i * across, (i + 1) * across),
  );
  const width_pt = column.width_pt / across;
  addTable(
    column,
    rows.map((row) =>
      row.map(
        ({ size, diameter_mm }): Cell => ({
          role: "TD",
          lines: [[run(noBreak(`${size} `), STRONG), run(diameterNumber(diameter_mm, guide), SMALL)]],
        }),
      ),
    ),
    { tracks: tableTracks(Array.from({ length: across }, () => width_pt)), field: "tippet" },
  );
}

/** Which rows and columns of the sinking tables a card shows. */
interface SinkChoice {
  readonly depths_m: readonly number[];
  /** How many sinking lines. */
  readonly lines: number;
  readonly settling: GuideRigs["sinking"]["rows"];
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
    dataCell(text === undefined ? "–" : `${text}`, style);
  addTable(
    column,
    [
      [
        headCell(`Count down, s${shareText(...count)}${elsewhereText(...count)}`, STRONG),
        ...depths_m.map((depth_m) => headCell(noBreak(depthText(depth_m, units)), STRONG)),
      ],
      ...shown.map(({ name, countdown }) => [
        headCell(name, SMALL),
        ...depths_m.map((depth) => cell(countdown.find(({ depth_m }) => depth_m === depth)?.seconds, GLANCE)),
      ]),
      ...settling.map(({ what, depths }) => [
        headCell(`Settle: ${what}`, SMALL),
        ...depths_m.map((depth) => cell(depths.find(({ depth_m }) => depth_m === depth)?.settle_s, SMALL)),
      ]),
    ],
    { tracks: tableTracks([nameWidth_pt, ...depths_m.map(() => each_pt)]), field: "line names" },
  );
}
