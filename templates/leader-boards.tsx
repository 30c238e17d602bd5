import type { TripGear } from "../build/guide/guide-schema.ts";
import { depthText } from "../build/model/units.ts";
import { Fact, Section } from "./parts.tsx";
import type { Sheet } from "./sheet.ts";

type Boards = TripGear["boards"];
type LeaderSection = Boards["boards"][number]["leader"]["sections"][number];

const sectionText = ({ length_m, size }: LeaderSection, sheet: Sheet): string =>
  `${depthText(length_m, sheet.guide.club.units)} ${size}`;

/** The leaders to have tied, and what none of them serves. */
export function LeaderBoards({
  boards: { boards, count, uncovered },
  sheet,
}: {
  boards: Boards;
  sheet: Sheet;
}) {
  if (boards.length === 0 && uncovered.length === 0) return null;
  return (
    <Section title="Leaders to tie" id="boards">
      {boards.length === 0 ? null : (
        <dl>
          {boards.map(({ leader, why, needed, tie }) => (
            <Fact name={leader.name}>
              <p>
                <strong>{tie === 0 ? "None to tie" : `Tie ${tie}`}</strong>: {needed} needed, {leader.tied} on
                boards.
              </p>
              <p>{leader.sections.map((section) => sectionText(section, sheet)).join(" + ")}</p>
              <p class="small">{why}</p>
            </Fact>
          ))}
        </dl>
      )}
      {uncovered.map((text) => (
        <p>{text}</p>
      ))}
      {count === "" ? null : <p class="small">{count}</p>}
    </Section>
  );
}
