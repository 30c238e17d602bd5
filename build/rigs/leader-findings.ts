import type { LeaderStock } from "../model/club.ts";
import { isShortLeader } from "./choose-leader.ts";
import { error, type Finding, warning, when } from "./finding.ts";
import { doubtfulSteps, servedRange } from "./leader.ts";
import { isTippetSize, tippetSizeText } from "./tippet.ts";

/** A longer section is most likely a slip of the unit. From memory. */
const LONGEST_SECTION_M = 6;

/** What is wrong or doubtful about one leader. */
export function leaderFindings(leader: LeaderStock, margin_m: number): Finding[] {
  const { name } = leader;
  const sections = [leader.taper, leader.middle, leader.tippet];
  const shortTaper = !(leader.taper.length_m > 0) || !(leader.tippet.length_m > 0);
  const sizes = sections.flatMap(({ size }) =>
    when(
      !isTippetSize(size),
      error(
        "leader-size",
        `“${name}” has a section of ${tippetSizeText(size)}`,
        "write 0X to 8X, such as 4X or 4.5X",
      ),
    ),
  );
  const lengths = [
    ...when(
      shortTaper || leader.middle.length_m < 0,
      error("leader-length", `“${name}” has a section of no length`, "write a length above 0, such as 3 ft"),
    ),
    ...when(
      sections.some(({ length_m }) => length_m > LONGEST_SECTION_M),
      warning(
        "leader-long",
        `“${name}” has a section over ${LONGEST_SECTION_M} m`,
        "check the length and its unit",
      ),
    ),
    ...when(
      !shortTaper && !isShortLeader(leader) && servedRange(leader, margin_m) === undefined,
      warning(
        "leader-no-indicator",
        `on “${name}” an indicator has no room between the margins`,
        "use a longer taper or a smaller margin",
      ),
    ),
  ];
  const steps =
    sizes.length > 0
      ? []
      : doubtfulSteps(leader).map(({ kind, words, remedy }) =>
          warning(kind === "thicker" ? "leader-thicker" : "leader-step", `“${name}”: ${words}`, remedy),
        );
  return [...sizes, ...lengths, ...steps];
}
