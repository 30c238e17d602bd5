import type { Guide, TripGear } from "../../../build/guide/guide-schema.ts";
import {
  ballSizeText,
  cutLengthText,
  depthGlance,
  depthText,
  rounded,
  smallLengthText,
} from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { capital, Fact, Fold, Scroll } from "../parts.tsx";

type Rigs = Guide["rigs"];
type Plumb = Rigs["plumb"];
type PlumbRow = Plumb["depths"][number]["rows"][number];

/** "70 s or more", "35 to 70 s". */
const secondsText = ({ from_s, to_s }: Plumb["columns"][number]): string =>
  to_s === null ? `${rounded(from_s)} s or more` : `${rounded(from_s)} to ${rounded(to_s)} s`;

/** "35 to 70 s", and that it is long where it is. */
const waitText = (wait: PlumbRow["wait"]): string =>
  wait === null ? "–" : `${rounded(wait.from_s)} to ${rounded(wait.to_s)} s${wait.long ? ", long" : ""}`;

/** Shot for one class of fly: plumbed depth down, what the water looks like across. */
function FlyTable({ fly, plumb, sheet }: { fly: PlumbRow["fly"]; plumb: Plumb; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  return (
    <Scroll label={`Plumb table, ${fly}`}>
      <table class="shot">
        <caption>
          {capital(fly)}: set, board, shot by foam past a rod of {depthText(sheet.guide.rigs.rod_m, units)},
          float, wait and anchor rope
        </caption>
        <thead>
          <tr>
            <th scope="col">Plumbed</th>
            <th scope="col">Board</th>
            {plumb.columns.map((column) => (
              <th scope="col">
                {capital(column.condition)} <span class="under">{secondsText(column)}</span>
              </th>
            ))}
            <th scope="col">Float</th>
            <th scope="col">Wait</th>
            <th scope="col">Rope</th>
          </tr>
        </thead>
        <tbody>
          {plumb.depths.map(({ depth_m, set_m, board, landing, rows, rope }) => {
            const row = rows.find((one) => one.fly === fly);
            return (
              <tr>
                <th scope="row">
                  <strong>{depthText(depth_m, units)}</strong>
                  {set_m === null ? null : <span class="under">set {depthGlance(set_m, units)}</span>}
                </th>
                <td>
                  {set_m === null ? "too shallow" : (board ?? "none fits")}
                  {landing === "slip" ? <span class="under">slip</span> : null}
                </td>
                {plumb.columns.map(({ condition }) => {
                  const cell = row?.cells.find((one) => one.condition === condition);
                  return (
                    <td>
                      {cell === undefined ? "–" : cell.tooQuick ? cell.text : <strong>{cell.text}</strong>}
                      {cell?.hold === true ? <span class="under">hold</span> : null}
                    </td>
                  );
                })}
                <td>
                  {row === undefined || row.indicator_mm === null
                    ? row?.leastIndicator_mm == null
                      ? "–"
                      : `none: ${rounded(row.leastIndicator_mm)} mm`
                    : ballSizeText(row.indicator_mm, units)}
                </td>
                <td>{waitText(row?.wait ?? null)}</td>
                <td>
                  {[...new Set(rope.map(({ length_m }) => depthGlance(length_m, units)))].join(", chop ")}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </Scroll>
  );
}

/** What to set and pinch on by the depth just plumbed: the table's fly open, the others a tap away. */
export function PlumbTables({ plumb, sheet }: { plumb: Plumb; sheet: PageContext }) {
  const flies = [...new Set(plumb.depths.flatMap(({ rows }) => rows.map(({ fly }) => fly)))];
  const others = flies.filter((fly) => fly !== plumb.fly);
  return (
    <>
      <p>
        Plumb, read across. Set for the depth just plumbed. Time foam, a bubble or a flat leaf past the rod,
        not the loaded indicator:{" "}
        {plumb.columns.map(({ condition, looks }) => `${condition} is ${looks}`).join("; ")}. Quicker than
        chop: shelter, or a sinking line. “Hold”: hold the line still, or the fly lifts.
      </p>
      <FlyTable fly={plumb.fly} plumb={plumb} sheet={sheet} />
      {others.length === 0 ? null : (
        <details>
          <summary>Other flies: {others.join(", ")}</summary>
          {others.map((fly) => (
            <FlyTable fly={fly} plumb={plumb} sheet={sheet} />
          ))}
        </details>
      )}
      <p class="small">
        Wait: the short end if you threw slack and the indicator ran in, the long end on a tight line. Heavier
        shot needs less. {plumb.assumes.join(" ")} {plumb.check}
      </p>
    </>
  );
}

/** The longest sets that keep a fly down while the boat drifts. */
export function Drifting({
  drifting,
  sheet,
}: {
  drifting: NonNullable<Rigs["drifting"]>;
  sheet: PageContext;
}) {
  const { units } = sheet.guide.club;
  return (
    <>
      <Scroll label="Longest sets of a drifting boat">
        <table class="days">
          <caption>
            Longest set on {drifting.board}, by the seconds in which the boat passes one rod length
          </caption>
          <thead>
            <tr>
              <th scope="col">Shot</th>
              {drifting.columns.map((rod_s) => (
                <th scope="col">{rounded(rod_s)} s</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {drifting.rows.map(({ text, sets }) => (
              <tr>
                <th scope="row">{text}</th>
                {sets.map(({ set_m, whole }) => (
                  <td>
                    {depthText(set_m, units)}
                    {whole ? " or more" : ""}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">{drifting.note}</p>
    </>
  );
}

/** How deep each board fishes under a floating line without shot or indicator. */
export function Naked({ naked, sheet }: { naked: Rigs["naked"]; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const flies = naked.rows[0]?.flies.map(({ fly }) => fly) ?? [];
  return (
    <>
      <Scroll label="Depths and counts of a naked line">
        <table class="days">
          <caption>
            How deep a fly fishes, pulled {smallLengthText(naked.draw_mps * 5, units)} every 5 s; seconds to
            count before the first pull
          </caption>
          <thead>
            <tr>
              <th scope="col">Leader</th>
              {flies.map((fly) => (
                <th scope="col">{capital(fly)}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {naked.rows.map(({ leader, length_m, flies: cells }) => (
              <tr>
                <th scope="row">
                  {leader} <span class="under">{depthText(length_m, units)}</span>
                </th>
                {cells.map(({ depth_m, count_s }) => (
                  <td>
                    <strong>{depthText(depth_m, units)}</strong>
                    <span class="under">
                      {count_s === null ? "count over 90 s" : `count ${rounded(count_s)} s`}
                    </span>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">{naked.note}</p>
    </>
  );
}

/** How long an indicator swings from a fixed rod, how much water it covers, and what each holder angle costs. */
export function Swing({
  swing,
  anchor,
  sheet,
}: {
  swing: Rigs["swing"];
  anchor: Rigs["anchor"];
  sheet: PageContext;
}) {
  const { units } = sheet.guide.club;
  return (
    <>
      <dl>
        {anchor.holders.map(({ name, words }) => (
          <Fact name={capital(name)}>{words}</Fact>
        ))}
      </dl>
      <Scroll label="Swing from a fixed rod">
        <table class="days">
          <caption>
            Useful swing with {depthText(swing.line_m, units)} of line out, by the seconds in which foam
            passes one rod length
          </caption>
          <thead>
            <tr>
              <th scope="col">Angle to the wind</th>
              <th scope="col">Covers</th>
              {swing.columns.map(({ rod_s }) => (
                <th scope="col">{rounded(rod_s)} s</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {swing.rows.map(({ holder_deg, covers_m, cells }) => (
              <tr>
                <th scope="row">{rounded(holder_deg)}°</th>
                <td>{depthText(covers_m, units)}</td>
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

/** The tippet to start with, by hook and clarity. */
export const TippetForHook = ({ rows }: { rows: Rigs["tippetFor"] }) => (
  <>
    <Scroll label="Tippet by hook size">
      <table class="days">
        <caption>Tippet to start with</caption>
        <thead>
          <tr>
            <th scope="col">Hook</th>
            <th scope="col">Clear water</th>
            <th scope="col">Ordinary</th>
            <th scope="col">Cloudy</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ hook, clear, ordinary, cloudy }) => (
            <tr>
              <th scope="row">{hook}</th>
              <td>{clear}</td>
              <td>{ordinary}</td>
              <td>{cloudy}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
    <p class="small">
      A third of the hook’s number, a size finer where the white disc is seen below 4 m, a size thicker where
      it goes at 1.5 m. Common practice, no source.
    </p>
  </>
);

type Boards = TripGear["boards"];
type LeaderSection = Boards["boards"][number]["leader"]["sections"][number];

const sectionText = ({ length_m, size }: LeaderSection, sheet: PageContext): string =>
  `${cutLengthText(length_m, sheet.guide.club.units)} ${size}`;

/** The leaders to have tied, and what none of them serves. */
export function LeaderBoards({
  boards: { boards, uncovered },
  sheet,
}: {
  boards: Boards;
  sheet: PageContext;
}) {
  if (boards.length === 0 && uncovered.length === 0) return null;
  return (
    <Fold
      title="Leaders to tie"
      id="boards"
      answer={boards.map(({ leader, tie }) => `${leader.name} ${tie === 0 ? "none" : tie}`).join(", ")}
    >
      {boards.length === 0 ? null : (
        <dl>
          {boards.map(({ leader, why, how, needed, tie }) => (
            <Fact name={leader.name}>
              <p>
                <strong>{tie === 0 ? "None to tie" : `Tie ${tie}`}</strong>: {needed} needed, {leader.tied} on
                boards.
              </p>
              <p>{leader.sections.map((section) => sectionText(section, sheet)).join(" + ")}</p>
              <p class="small">
                {how} {why}
              </p>
            </Fact>
          ))}
        </dl>
      )}
      {uncovered.map((text) => (
        <p>{text}</p>
      ))}
    </Fold>
  );
}
