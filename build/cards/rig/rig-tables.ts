import type { GuideFrame } from "../../guide/guide-frame.ts";
import type { Caution, Guide } from "../../guide/guide-schema.ts";
import {
  cutLengthText,
  depthGlance,
  depthRange,
  depthText,
  depthUnit,
  diameterText,
  rounded,
} from "../../model/units.ts";
import { noBreak } from "../card-words.ts";
import { type Column, run } from "../layout/column.ts";
import { addTable, type Cell, dataCell, headCell, tableTracks } from "../layout/head-and-table.ts";
import { GLANCE, SMALL, STRONG } from "../layout/page.ts";
import { waitText } from "./plumb-card.ts";

type Rigs = Guide["rigs"];
type Leader = Rigs["leaders"][number];
/** "12 ft 3X, 6 ft 4X, 3 ft 5X". */
export const recipeText = ({ sections }: Leader, { club }: GuideFrame): string =>
  sections.map(({ length_m, size }) => noBreak(`${cutLengthText(length_m, club.units)} ${size}`)).join(", ");

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

/** Whose card it is, and what the club says of it. */
export const noticeText = ({ club, season }: GuideFrame): string =>
  [`${club.name}, ${season}.`, ...(club.notice === null ? [] : [club.notice])].join(" ");

/** Room for an angle at the head of a row. */
const ROW_HEAD_PT = 26;

/** How long an indicator swings, by holder angle and drift. */
export function addSwing(column: Column, { rigs }: GuideFrame, rows: Rigs["swing"]["rows"]): void {
  const { columns } = rigs.swing;
  const each_pt = (column.width_pt - ROW_HEAD_PT) / columns.length;
  addTable(
    column,
    [
      [headCell("From", SMALL), ...columns.map(({ rod_s }) => headCell(`${rounded(rod_s)} s`, STRONG))],
      ...rows.map(({ holder_deg, cells }) => [
        headCell(`${holder_deg}°`, STRONG),
        ...cells.map(({ text }) => dataCell(noBreak(text), SMALL)),
      ]),
    ],
    { tracks: tableTracks([ROW_HEAD_PT, ...columns.map(() => each_pt)]), field: "swing" },
  );
}

/** The plumb table in a line a depth, for a card too small for its picture. */
export function addPlumbRows(column: Column, { rigs, club }: GuideFrame): void {
  const { units } = club;
  const { plumb } = rigs;
  const widths = [20, 24, 50, 46, 46, 46, 48];
  const rope_pt = column.width_pt - widths.reduce((sum, width) => sum + width, 0);
  addTable(
    column,
    [
      [
        headCell(depthUnit(units), SMALL),
        headCell("set", SMALL),
        headCell("board", SMALL),
        ...plumb.columns.map(({ condition, from_s }) => headCell(`${condition} ${rounded(from_s)}`, STRONG)),
        headCell("wait, s", SMALL),
        headCell("rope", SMALL),
      ],
      ...plumb.depths.map(({ depth_m, set_m, board, rows, rope }) => [
        headCell(depthGlance(depth_m, units), STRONG),
        dataCell(set_m === null ? "–" : depthGlance(set_m, units), STRONG),
        dataCell(board ?? "none", SMALL),
        ...plumb.columns.map((_, i) => {
          const cell = rows.find(({ fly }) => fly === plumb.fly)?.cells[i];
          return dataCell(cell === undefined ? "–" : `${cell.text}${cell.hold ? " h" : ""}`, SMALL);
        }),
        dataCell(waitText(rows.find(({ fly }) => fly === plumb.fly)?.wait ?? null, "*"), SMALL),
        dataCell([0, 2].map((k) => depthGlance(rope[k]?.length_m ?? 0, units)).join(", "), SMALL),
      ]),
    ],
    { tracks: tableTracks([...widths, rope_pt]), field: "shot names" },
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

/** Seconds to count each line down, by depth; starred beyond the club's longest. */
export function addCounts(
  column: Column,
  guide: GuideFrame,
  depths_m: readonly number[],
  most: number,
  nameWidth_pt: number,
): void {
  const { units } = guide.club;
  const sinking = guide.rigs.lines.filter(({ counts }) => counts.length > 0);
  const shown = sinking.slice(0, most);
  const count = [shown.length, sinking.length] as const;
  const each_pt = (column.width_pt - nameWidth_pt) / Math.max(1, depths_m.length);
  addTable(
    column,
    [
      [
        headCell(`Count down, s${shareText(...count)}${elsewhereText(...count)}`, STRONG),
        ...depths_m.map((depth_m) => headCell(noBreak(depthText(depth_m, units)), STRONG)),
      ],
      ...shown.map(({ name, counts }) => [
        headCell(name, SMALL),
        ...depths_m.map((depth_m) => {
          const found = counts.find((one) => one.depth_m === depth_m);
          const seconds = found?.seconds ?? null;
          return seconds === null
            ? dataCell("–", SMALL)
            : dataCell(`${seconds}${found?.long === true ? "*" : ""}`, STRONG);
        }),
      ]),
    ],
    { tracks: tableTracks([nameWidth_pt, ...depths_m.map(() => each_pt)]), field: "line names" },
  );
}

/** How deep each board fishes as a naked line. */
export function addNaked(
  column: Column,
  { rigs: { naked }, club: { units } }: GuideFrame,
  most: number,
): void {
  const flies = naked.rows[0]?.flies.map(({ fly }) => fly) ?? [];
  const name_pt = 70;
  const each_pt = (column.width_pt - name_pt) / Math.max(1, flies.length);
  addTable(
    column,
    [
      [headCell("Leader", STRONG), ...flies.map((fly) => headCell(fly, SMALL))],
      ...naked.rows
        .slice(-most)
        .map((row) => [
          headCell(row.leader, STRONG),
          ...row.flies.map(({ depth_m, count_s }) =>
            dataCell(
              `${noBreak(depthText(depth_m, units))}${count_s === null ? "" : `, ${noBreak(`count ${count_s}`)}`}`,
              SMALL,
            ),
          ),
        ]),
    ],
    { tracks: tableTracks([name_pt, ...flies.map(() => each_pt)]), field: "leader names" },
  );
}
