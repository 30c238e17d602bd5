import type { Guide, TripGear } from "../../../build/guide/guide-schema.ts";
import { depthText, rounded } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Fact, Scroll, Section } from "../parts.tsx";

type Rigs = Guide["rigs"];
type ShotTable = Rigs["shot"];

/** A drift as it is timed on the water: the seconds in which the indicator passes one rod length. */
const driftText = (rod_s: number | null): string => (rod_s === null ? "still" : `${rounded(rod_s)} s`);

const DriftHeads = ({ columns }: { columns: ShotTable["columns"] }) => (
  <>
    {columns.map(({ rod_s }) => (
      <th scope="col">{driftText(rod_s)}</th>
    ))}
  </>
);

/** Where the table names no shot: each reason once. */
function ShotProblems({ shot }: { shot: ShotTable }) {
  const reasons = new Map(
    shot.rows.flatMap(({ cells }) =>
      cells.flatMap(({ words, text }) => (words === null ? [] : [[words, text] as const])),
    ),
  );
  if (reasons.size === 0) return null;
  return (
    <details>
      <summary>Where no shot will do</summary>
      <ul class="small">
        {[...reasons].map(([words, text]) => (
          <li>
            <strong>{text}</strong>: {words}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Shot against drift: plumbed depth down, drift across, the shot and the smallest indicator in each cell. */
export function Shot({ shot, sheet }: { shot: ShotTable; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  return (
    <>
      <Scroll label="Shot against drift">
        <table class="shot">
          <caption>
            Shot and indicator, by the seconds in which the indicator drifts one rod length (
            {depthText(sheet.guide.rigs.rod_m, units)})
          </caption>
          <thead>
            <tr>
              <th scope="col">Depth</th>
              <DriftHeads columns={shot.columns} />
            </tr>
          </thead>
          <tbody>
            {shot.rows.map(({ depth_m, set_m, cells }) => (
              <tr>
                <th scope="row">
                  <strong>{depthText(depth_m, units)}</strong>
                  {set_m === null ? null : <span class="under">set {depthText(set_m, units)}</span>}
                </th>
                {cells.map(({ text, indicator }) => (
                  <td>
                    {indicator === null ? text : <strong>{text}</strong>}
                    {indicator === null ? null : <span class="under">{indicator}</span>}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <ShotProblems shot={shot} />
      <p class="small">{[...shot.assumes, shot.check].join(" ")}</p>
    </>
  );
}

/** Seconds for shot and fly to sink free, and how long to wait until the rig hangs straight. */
export function Sinking({ sinking, sheet }: { sinking: Rigs["sinking"]; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const depths = sinking.rows[0]?.depths ?? [];
  return (
    <>
      <Scroll label="Sinking and settling">
        <table class="shot">
          <caption>Seconds to sink there, and to wait until the rig hangs straight</caption>
          <thead>
            <tr>
              <th scope="col">What sinks</th>
              {depths.map(({ depth_m }) => (
                <th scope="col">{depthText(depth_m, units)}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sinking.rows.map(({ what, depths: steps }) => (
              <tr>
                <th scope="row">{what}</th>
                {steps.map(({ seconds, settle_s }) => (
                  <td>
                    <strong>{rounded(seconds)} s</strong>
                    <span class="under">wait {rounded(settle_s)} s</span>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">{sinking.note}</p>
    </>
  );
}

/** How long an indicator swings from a fixed rod before it hangs straight downwind. */
export function Swing({ swing, sheet }: { swing: Rigs["swing"]; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  return (
    <>
      <Scroll label="Swing from a fixed rod">
        <table class="days">
          <caption>
            Useful swing with {depthText(swing.line_m, units)} of line out, by the seconds in which the
            indicator drifts one rod length
          </caption>
          <thead>
            <tr>
              <th scope="col">Angle to the wind</th>
              <DriftHeads columns={swing.columns} />
            </tr>
          </thead>
          <tbody>
            {swing.rows.map(({ holder_deg, cells }) => (
              <tr>
                <th scope="row">{rounded(holder_deg)}°</th>
                {cells.map(({ text }) => (
                  <td>{text}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">{swing.note}</p>
    </>
  );
}

type Boards = TripGear["boards"];
type LeaderSection = Boards["boards"][number]["leader"]["sections"][number];

const sectionText = ({ length_m, size }: LeaderSection, sheet: PageContext): string =>
  `${depthText(length_m, sheet.guide.club.units)} ${size}`;

/** The leaders to have tied, and what none of them serves. */
export function LeaderBoards({
  boards: { boards, count, uncovered },
  sheet,
}: {
  boards: Boards;
  sheet: PageContext;
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
