import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { clockText, dayMonth, dayMonthYear, weekdayDayMonth } from "../../../build/model/calendar.ts";
import {
  areaText,
  chanceText,
  depthText,
  distanceText,
  elevationText,
  rounded,
} from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Cautions, capital, cautionsFor, Fact, Fold, inOneLine, Scroll, Section } from "../parts.tsx";

/** Degrees to about ten metres. */
const PLACE_DIGITS = 4;

export const positionText = ({ lat, lon }: GuideLake["position"]): string =>
  `${rounded(Math.abs(lat), PLACE_DIGITS)}° ${lat < 0 ? "S" : "N"}, ${rounded(Math.abs(lon), PLACE_DIGITS)}° ${lon < 0 ? "W" : "E"}`;

/** RFC 5870. */
export const geoUri = ({ lat, lon }: GuideLake["position"]): string => `geo:${lat},${lon}`;

/** "Cinder Basin · 8,460 ft · 40 acres". */
export const lakeLine = (lake: GuideLake, sheet: PageContext): string => {
  const { units } = sheet.guide.club;
  return inOneLine([
    lake.region,
    lake.elevation_m === null ? null : elevationText(lake.elevation_m, units),
    lake.area_ha === null ? null : areaText(lake.area_ha, units),
  ]);
};

/** How to get there and what it is like. */
export function Place({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const depths = inOneLine([
    lake.maxDepth_m === null ? null : `${depthText(lake.maxDepth_m, units)} at the deepest`,
    lake.meanDepth_m === null ? null : `${depthText(lake.meanDepth_m, units)} on average`,
  ]);
  return (
    <Fold
      title="Getting there"
      id="place"
      answer={lake.access?.opens == null ? "open" : `road opens ${dayMonth(lake.access.opens)}`}
    >
      <dl>
        <Fact name="Access">{lake.access?.text}</Fact>
        <Fact name="Road opens">
          {lake.access?.opens === undefined || lake.access.opens === null
            ? null
            : weekdayDayMonth(lake.access.opens)}
        </Fact>
        <Fact name="Position">
          <a href={geoUri(lake.position)}>{positionText(lake.position)}</a>
        </Fact>
        <Fact name="Depth">{depths}</Fact>
        <Fact name="Water">{lake.water === null ? null : capital(lake.water)}</Fact>
        <Fact name="Turnover">{lake.turnsOver ? null : "Does not turn over in spring."}</Fact>
      </dl>
    </Fold>
  );
}

/** The cautions that always hold; the lake’s own hazards stand where the drive is decided on. */
export function Hazards({ sheet }: { sheet: PageContext }) {
  const always = cautionsFor(sheet.guide, "always");
  if (always.length === 0) return null;
  return (
    <Fold title="Always" id="hazards" answer={`${always.length} cautions`}>
      <Cautions cautions={always} sheet={sheet} />
    </Fold>
  );
}

/** Rules as somebody read them on a day. */
export const Rules = ({ lake }: { lake: GuideLake }) =>
  lake.rules === null ? null : (
    <Fold title="Rules" id="rules" answer={`checked ${dayMonth(lake.rules.checked)}`}>
      <p>
        {lake.rules.text} <span class="small">As checked on {dayMonthYear(lake.rules.checked)}.</span>
      </p>
      <p class="small">Rules change, also within a season: the agency’s own text is the one that counts.</p>
    </Fold>
  );

type Light = GuideLake["place"]["light"][number];

const hourText = (moment: string | null): string => (moment === null ? "none" : clockText(moment));

/** "Sat 16 May: first light 05:13, last light 20:50". */
const lightText = ({ date, firstLight, lastLight, words }: Light): string =>
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

/** "map, wind, light and water": what is known of a lake as a place. */
export function placeContents({ place }: GuideLake): string {
  const parts = [
    ...(place.map === null ? [] : ["map"]),
    ...(place.wind === null ? [] : ["wind"]),
    ...(place.light.length === 0 ? [] : ["light"]),
  ];
  return parts.length === 0 ? "water" : `${parts.join(", ")} and water`;
}

/** What the lake's second page holds, and the few lines of it that are wanted on the day. */
export function PlaceInBrief({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { wind, light, warmWater } = lake.place;
  const [today] = light;
  return (
    <Fold title="The lake" id="lake" answer={placeContents(lake)}>
      <dl>
        <Fact name="Light">{today === undefined ? null : lightText(today)}</Fact>
        <Fact name="Open water">
          {wind === null
            ? null
            : `${distanceText(wind.longest.fetch_m, sheet.guide.club.units)} with wind from ${wind.longest.along.join(" or ")}`}
        </Fact>
        <Fact name="Warm water">{warmWater.latest?.words}</Fact>
      </dl>
      <p>
        <a href={sheet.to(ADDRESS.place(lake.slug))}>{capital(placeContents(lake))}</a>
      </p>
    </Fold>
  );
}
