import type { Caution, Guide } from "../guide/guide-schema.ts";
import { dayMonthYear } from "../model/calendar.ts";
import { depthText, depthUnit, diameterText, rounded, smallLengthText } from "../model/units.ts";
import { whole } from "./card-words.ts";

type Rigs = Guide["rigs"];
type Leader = Rigs["leaders"][number];
type RodSeconds = Rigs["shot"]["columns"][number]["rod_s"];

/** What a drift column is headed by. */
export const driftText = (rod_s: RodSeconds): string => (rod_s === null ? "still" : rounded(rod_s));

/** How to find the column of a drift. */
export const driftWords = ({ rigs, club }: Guide): string =>
  `Count the seconds in which the indicator drifts one rod length (${whole(depthText(rigs.rod_m, club.units))}).`;

/** How to find the row of a depth. */
export const depthWords = ({ rigs, club }: Guide): string => {
  const { from_m, to_m } = rigs.offBottom;
  const [from, to] = [from_m, to_m].map((length_m) => whole(smallLengthText(length_m, club.units)));
  return `Depth as plumbed, ${depthUnit(club.units)}; the fly hangs ${from === to ? from : `${from} to ${to}`} above the bottom.`;
};

/** "12 ft 3X, 6 ft 4X, 3 ft 5X". */
export const recipeText = ({ sections }: Leader, { club }: Guide): string =>
  sections.map(({ length_m, size }) => whole(`${depthText(length_m, club.units)} ${size}`)).join(", ");

/** What of a list has no room here, said in words: "4 of 6; the rest on the rigs page". */
export const shareText = (shown: number, all: number): string =>
  shown < all ? ` (${shown} of ${all}, rest on the rigs page)` : "";

/** Decimals of a diameter in a table, where numbers stand below each other. */
const DIAMETER_LENGTH = { imperial: "0.000".length, metric: "0.00".length };

/** A diameter without its unit, which stands in the table's head: "0.010". */
export const diameterNumber = (diameter_mm: number, { club }: Guide): string =>
  (diameterText(diameter_mm, club.units).split(" ")[0] ?? "").padEnd(DIAMETER_LENGTH[club.units], "0");

/** The head of the tippet table: "diameter in in; half sizes ...". */
export const tippetWords = ({ club }: Guide): string =>
  `diameter, ${diameterText(1, club.units).split(" ")[1] ?? ""}; half sizes lie halfway between.`;

/** The cautions a rig card carries, what lead shot does first, then those that always hold. */
export function rigCautions({ cautions }: Pick<Guide, "cautions">): Caution[] {
  const always = cautions.filter(({ when }) => when.includes("always"));
  return [...always.filter(({ id }) => id === "lead"), ...always.filter(({ id }) => id !== "lead")];
}

/** How to read the swing table. */
export const swingWords = ({ rigs, club }: Guide): string =>
  `of a fixed rod with ${whole(depthText(rigs.swing.line_m, club.units))} of line out, by holder angle and drift. ${rigs.swing.note}`;

/** Whose card it is and from which day, the fullest wording first. */
export const originTexts = ({ club, asOf }: Guide): string[] => {
  const day = `as of ${dayMonthYear(asOf)}`;
  return [`${club.name}, ${day}`, day];
};
