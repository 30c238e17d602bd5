import { screenInk } from "../../../build/draw/ink.ts";
import { readings } from "../../../build/draw/readings.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { dayMonthYear } from "../../../build/model/calendar.ts";
import { rounded, temperatureText } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { capital, Drawing, Fact, Section } from "../parts.tsx";

const WIDTH = 328;
/** Water temperatures shown of the saturation table, degC. */
const SHOWN_C = [0, 4, 10, 15, 20];

type Oxygen = NonNullable<GuideLake["place"]["oxygen"]>;

function OxygenTables({ oxygen, sheet }: { oxygen: Oxygen; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const shown = oxygen.saturation.filter(({ water_C }) => SHOWN_C.includes(water_C));
  return (
    <>
      {oxygen.readings.length === 0 ? null : (
        <table>
          <caption>Oxygen as reported, and as a share of what the water could hold</caption>
          <thead>
            <tr>
              {["Day", "Water", "Oxygen", "Saturation"].map((head) => (
                <th scope="col">{head}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {oxygen.readings.map(({ date, water_C, oxygen_mgL, percent }) => (
              <tr>
                <th scope="row">{dayMonthYear(date)}</th>
                <td>{temperatureText(water_C, units)}</td>
                <td>{rounded(oxygen_mgL, 1)} mg/L</td>
                <td>{rounded(percent)} %</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <table>
        <caption>Oxygen that water in balance with the air holds at this height, mg/L</caption>
        <thead>
          <tr>
            <th scope="col">Water</th>
            {shown.map(({ water_C }) => (
              <th scope="col">{temperatureText(water_C, units)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Oxygen</th>
            {shown.map(({ oxygen_mgL }) => (
              <td>{rounded(oxygen_mgL, 1)}</td>
            ))}
          </tr>
        </tbody>
      </table>
    </>
  );
}

/** Temperature, mixing and oxygen. */
export function WaterSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { mixing, oxygen, warmWater } = lake.place;
  const { club, season } = sheet.guide;
  const drawing = readings(lake, { ink: screenInk, units: club.units, season, width: WIDTH });
  return (
    <Section title="Water" id="water">
      {warmWater.latest === null ? null : (
        <p>
          <strong>
            {temperatureText(warmWater.latest.water_C, club.units)} on {dayMonthYear(warmWater.latest.date)}.{" "}
            {warmWater.latest.words}
          </strong>
        </p>
      )}
      <p>{warmWater.rule}</p>
      <p>
        Fresh water is heaviest near {temperatureText(4, club.units)}: a lake all at that has no layers, and
        wind can turn it over.
      </p>
      {mixing === null ? null : (
        <dl>
          <Fact name="Mixing">
            {capital(mixing.words)}{" "}
            <span class="small">
              (Osgood index {rounded(mixing.osgood_mpkm, 1)} m/km
              {mixing.by === "club" ? ", by the club’s figures" : ""}).
            </span>
          </Fact>
        </dl>
      )}
      {drawing === null ? null : <Drawing drawing={drawing} />}
      {oxygen === null ? null : <OxygenTables oxygen={oxygen} sheet={sheet} />}
    </Section>
  );
}
