import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { weekdayDayMonth } from "../../../build/model/calendar.ts";
import { clockText } from "../../../build/model/clock.ts";
import { chanceText } from "../../../build/model/units.ts";
import { inOneLine, Scroll, Section } from "../../parts.tsx";

type Light = GuideLake["place"]["light"][number];

const hourText = (moment: string | null): string => (moment === null ? "none" : clockText(moment));

/** "Sat 16 May: first light 05:13, last light 20:50". */
export const lightText = ({ date, firstLight, lastLight, words }: Light): string =>
  `${weekdayDayMonth(date)}: ${words ?? `first light ${hourText(firstLight)}, last light ${hourText(lastLight)}`}`;

/** Light and moon, day by day. */
export function LightSection({ lake }: { lake: GuideLake }) {
  const { light } = lake.place;
  if (light.length === 0) return null;
  return (
    <Section title="Light" id="light">
      <Scroll label="Light, day by day">
        <table class="days">
          <caption>
            First and last light: the sun 6° under a level horizon. Hills bring sunset forward.
          </caption>
          <thead>
            <tr>
              {["Day", "First light", "Sunrise", "Sunset", "Last light", "Moon"].map((head) => (
                <th scope="col">{head}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {light.map(({ date, firstLight, sunrise, sunset, lastLight, words, moon }) => (
              <tr>
                <th scope="row">{weekdayDayMonth(date)}</th>
                {[firstLight, sunrise, sunset, lastLight].map((moment) => (
                  <td>{hourText(moment)}</td>
                ))}
                <td>{inOneLine([moon.phase, `${chanceText(moon.lit)} lit`, words])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}
