import { screenInk } from "../../../build/draw/ink.ts";
import { windRose } from "../../../build/draw/map/wind-rose.ts";
import { anchorPlan } from "../../../build/draw/rig/anchor-plan.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { distanceText, smallLengthRange, windSpeedText } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Cautions, Drawing, Fact, Scroll, Section } from "../parts.tsx";

const ROSE_WIDTH = 328;
/** Cautions that belong beside waves. */
const WAVE_CAUTIONS = ["wind", "lightning", "cold-shock", "life-jacket"];

type Wind = NonNullable<GuideLake["place"]["wind"]>;

const sidesText = (sides: readonly string[]): string => (sides.length === 0 ? "none" : sides.join(", "));

/** The eight main winds. */
function Shores({ wind, sheet }: { wind: Wind; sheet: PageContext }) {
  return (
    <Scroll label="Shores by wind">
      <table class="days">
        <caption>Open water, and how most of the shore lies, by where the wind blows from</caption>
        <thead>
          <tr>
            {["Wind", "Open water", "Sheltered sides", "Washed sides", "Boat at anchor"].map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {wind.directions
            .filter((_, i) => i % 2 === 0)
            .map(({ from, rods, fetch_m, sheltered, washed }) => (
              <tr>
                <th scope="row">{from}</th>
                <td>{distanceText(fetch_m, sheet.guide.club.units)}</td>
                <td>{sidesText(sheltered.sides)}</td>
                <td>{sidesText(washed.sides)}</td>
                <td>
                  bow {from}, rods {rods}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </Scroll>
  );
}

const Forces = ({ wind, sheet }: { wind: Wind; sheet: PageContext }) => (
  <table>
    <caption>
      Waves along the lake’s longest open water; single ones reach nearly twice that. What boats should do is
      common practice: it never says that going out is safe.
    </caption>
    <thead>
      <tr>
        {["Force", "Waves", "Boats"].map((head) => (
          <th scope="col">{head}</th>
        ))}
      </tr>
    </thead>
    <tbody>
      {wind.forces.map(({ force, name, most_mps, sign, height_m, growth_min, boats }) => (
        <tr>
          <th scope="row">
            <strong>
              {force}, {name}
            </strong>
            <span class="under">
              to {windSpeedText(most_mps, sheet.guide.club.units)}; {sign}
            </span>
          </th>
          <td class="odds">
            {smallLengthRange(height_m.from, height_m.to, sheet.guide.club.units)}{" "}
            <span class="under">after {growth_min} min</span>
          </td>
          <td>{boats}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** What wind does here; nothing without a shoreline. */
export function WindSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { wind } = lake.place;
  const { units } = sheet.guide.club;
  const rose = windRose(lake, { ink: screenInk, units, width: ROSE_WIDTH });
  if (wind === null || rose === null) return null;
  return (
    <Section title="Wind" id="wind">
      <Cautions
        cautions={sheet.guide.cautions.filter(({ id }) => WAVE_CAUTIONS.includes(id))}
        sheet={sheet}
      />
      <div class="columns">
        <Drawing drawing={rose} />
        <Shores wind={wind} sheet={sheet} />
      </div>
      <Forces wind={wind} sheet={sheet} />
      <p class="small">
        Straight lines over open water; hills and trees, which shelter or funnel, are not counted.
      </p>
    </Section>
  );
}

const ANCHOR_WIDTH = 220;
/** Cautions that belong beside anchors. */
const ANCHOR_CAUTIONS = ["anchor"];

/** How a boat lies at anchor, and where its rods then point; beside the winds of a lake with a shoreline. */
export function AnchorSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  if (lake.place.wind === null) return null;
  const { anchor } = sheet.guide.rigs;
  return (
    <Section title="At anchor" id="anchor">
      <Cautions
        cautions={sheet.guide.cautions.filter(({ id }) => ANCHOR_CAUTIONS.includes(id))}
        sheet={sheet}
      />
      <div class="columns">
        <Drawing drawing={anchorPlan({ ink: screenInk, width: ANCHOR_WIDTH })} />
        <dl>
          {anchor.moorings.map(({ name, words }) => (
            <Fact name={name}>{words}</Fact>
          ))}
          {anchor.holders.map(({ name, words }) => (
            <Fact name={`Rod holder, ${name}`}>{words}</Fact>
          ))}
        </dl>
      </div>
      <p class="small">
        {anchor.note} Rods, angles from straight downwind: wind from W, rods point E, and so round the
        compass. Time one swing before you trust the table.
      </p>
    </Section>
  );
}
