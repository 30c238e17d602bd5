import { flyBox } from "../../../build/draw/fly-box.ts";
import { screenInk } from "../../../build/draw/ink.ts";
import { renderSvg } from "../../../build/draw/svg.ts";
import type { GuideTrip } from "../../../build/guide/guide-schema.ts";
import { boxSum, dressingText, toTieText, varietyText } from "../../../build/guide/trip-words.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import type { PageContext } from "../page-context.ts";
import { Harmless, Scroll, Section } from "../parts.tsx";

/** A phone's width. */
const WIDTH = 328;

type Box = GuideTrip["box"];

const plainWord = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");

/** Something to do, with a box to tick; its mark stays the same while the thing does. */
const Tick = ({ mark, children }: { mark: string; children: string }) => (
  <li data-tick={mark}>
    <label>
      <input type="checkbox" /> {children}
    </label>
  </li>
);

function Rows({ rows, sheet }: { rows: Box["rows"]; sheet: PageContext }) {
  return (
    <Scroll label="The flies, row by row">
      <table>
        <caption>Size and colour, how many to carry, how many the club’s box has</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">Fly</th>
            <th scope="col">Carry</th>
            <th scope="col">Has</th>
            <th scope="col">Tie</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr>
              <th scope="row">{row.row}</th>
              <td>
                <a href={sheet.to(ADDRESS.pattern(row.pattern))}>{row.name}</a> {varietyText(row)}
                {rows[i - 1]?.pattern === row.pattern ? null : <span class="under">{row.why}</span>}
              </td>
              <td>
                <strong>{row.carry}</strong>
              </td>
              <td>{row.have}</td>
              <td>{row.tie === 0 ? "" : <strong>{row.tie}</strong>}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

const ToTie = ({ tying, trip, sheet }: { tying: Box["tying"]; trip: GuideTrip; sheet: PageContext }) => (
  <>
    <h3>To tie</h3>
    {tying.map((entry) => (
      <div>
        <h4>
          <a href={sheet.to(ADDRESS.pattern(entry.pattern))}>{entry.name}</a>
        </h4>
        <ul class="plain">
          {entry.flies.map((fly) => (
            <Tick mark={`${trip.slug}/tie/${entry.pattern}/${plainWord(varietyText(fly))}`}>
              {toTieText(fly)}
            </Tick>
          ))}
        </ul>
        {entry.dressing.length === 0 ? null : <p class="small">{dressingText(entry)}</p>}
      </div>
    ))}
  </>
);

const ToBuy = ({ materials, trip }: { materials: Box["materials"]; trip: GuideTrip }) => (
  <>
    <h3>Materials for them</h3>
    <ul class="plain">
      {materials.map(({ material, hookSize, text }) => (
        <Tick mark={`${trip.slug}/buy/${plainWord(`${material} ${hookSize ?? ""}`)}`}>{text}</Tick>
      ))}
    </ul>
  </>
);

/** The flies to carry on a trip, drawn and in a table, and what is still to be tied. */
export function BoxPlan({ trip, sheet }: { trip: GuideTrip; sheet: PageContext }) {
  const { rows, tying, materials, losses } = trip.box;
  if (rows.length === 0) return null;
  return (
    <Section title="The box" id="box">
      <p>
        <strong>{boxSum(trip.box)}.</strong> On a card:{" "}
        <a href={sheet.to(ADDRESS.card(`box-${trip.slug}`))}>the box, A6</a> (PDF).
      </p>
      <div class="columns">
        <figure>
          <Harmless class="drawing" html={renderSvg(flyBox(rows, { ink: screenInk, width: WIDTH }))} />
        </figure>
        <Rows rows={rows} sheet={sheet} />
      </div>
      {tying.length === 0 ? null : (
        <>
          <ToTie tying={tying} trip={trip} sheet={sheet} />
          <ToBuy materials={materials} trip={trip} />
        </>
      )}
      <p class="small">{losses.words}</p>
    </Section>
  );
}
