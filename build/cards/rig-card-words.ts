import type { GuideFrame } from "../guide/guide-frame.ts";
import type { Caution, Guide } from "../guide/guide-schema.ts";
import { depthText, depthUnit, diameterText, rounded, smallLengthText } from "../model/units.ts";
import { whole } from "./card-words.ts";

type Rigs = Guide["rigs"];
type Leader = Rigs["leaders"][number];
type RodSeconds = Rigs["shot"]["columns"][number]["rod_s"];

/** What a drift column is headed by. */
export const driftText = (rod_s: RodSeconds): string => (rod_s === null ? "still" : rounded(rod_s));

/** How to find the column of a drift. */
export const driftWords = ({ rigs, club }: GuideFrame): string =>
  `Count the seconds in which the indicator drifts one rod length (${whole(depthText(rigs.rod_m, club.units))}). Pinch on all the shot its box names.`;

/** How to find the row of a depth. */
export const depthWords = ({ rigs, club }: GuideFrame): string => {
  const { from_m, to_m } = rigs.offBottom;
  const [from, to] = [from_m, to_m].map((length_m) => whole(smallLengthText(length_m, club.units)));
  return `Depth as plumbed, ${depthUnit(club.units)}; the fly hangs ${from === to ? from : `${from} to ${to}`} above the bottom.`;
};

/** "12 ft 3X, 6 ft 4X, 3 ft 5X". */
export const recipeText = ({ sections }: Leader, { club }: GuideFrame): string =>
  sections.map(({ length_m, size }) => whole(`${depthText(length_m, club.units)} ${size}`)).join(", ");

/** ", 4 of 6": how many of a list a card shows, where it is not all. */
export const shareText = (shown: number, all: number): string => (shown < all ? `, ${shown} of ${all}` : "");

/** "; more: rigs page", where a card does not show all of a list. */
export const elsewhereText = (shown: number, all: number): string => (shown < all ? "; more: rigs page" : "");

/** A diameter without its unit, which stands in the table's head: "0.010". */
export const diameterNumber = (diameter_mm: number, { club }: GuideFrame): string =>
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
  `of a fixed rod with ${whole(depthText(rigs.swing.line_m, club.units))} of line out, by holder angle and drift. ${rigs.swing.note}`;

/** Swing from one holder angle in a line: "from 60°: 15 min at 120, 7 min at 60". */
export function swingLine({ rigs }: GuideFrame): string {
  const { rows } = rigs.swing;
  const row = rows[Math.floor(rows.length / 2)];
  if (row === undefined) return "";
  const times = row.cells
    .filter(({ rod_s }) => rod_s !== null)
    .map(({ rod_s, text }) => whole(`${text} at ${driftText(rod_s)}`));
  return `from ${row.holder_deg}°: ${times.join(", ")}.`;
}

/** Whose card it is, and what the club says of it. */
export const noticeText = ({ club, season }: GuideFrame): string =>
  [`${club.name}, ${season}.`, ...(club.notice === null ? [] : [club.notice])].join(" ");
