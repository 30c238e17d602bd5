import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { dayMonthYear, weekdayDayMonth } from "../../build/model/calendar.ts";
import { areaText, depthText, elevationText, rounded } from "../../build/model/units.ts";
import { Cautions, capital, cautionsFor, Fact, inOneLine, Section } from "../parts.tsx";
import type { Sheet } from "../sheet.ts";

/** Degrees to about ten metres. */
const PLACE_DIGITS = 4;

export const positionText = ({ lat, lon }: GuideLake["position"]): string =>
  `${rounded(Math.abs(lat), PLACE_DIGITS)}° ${lat < 0 ? "S" : "N"}, ${rounded(Math.abs(lon), PLACE_DIGITS)}° ${lon < 0 ? "W" : "E"}`;

/** RFC 5870. */
export const geoUri = ({ lat, lon }: GuideLake["position"]): string => `geo:${lat},${lon}`;

/** "Cinder Basin · 8,460 ft · 40 acres". */
export const lakeLine = (lake: GuideLake, sheet: Sheet): string => {
  const { units } = sheet.guide.club;
  return inOneLine([
    lake.region,
    lake.elevation_m === null ? null : elevationText(lake.elevation_m, units),
    lake.area_ha === null ? null : areaText(lake.area_ha, units),
  ]);
};

/** How to get there and what it is like. */
export function Place({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  const { units } = sheet.guide.club;
  const depths = inOneLine([
    lake.maxDepth_m === null ? null : `${depthText(lake.maxDepth_m, units)} at the deepest`,
    lake.meanDepth_m === null ? null : `${depthText(lake.meanDepth_m, units)} on average`,
  ]);
  return (
    <Section title="Getting there" id="place">
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
    </Section>
  );
}

/** What can go wrong here, with the cautions that always hold beside it. */
export function Hazards({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  const always = cautionsFor(sheet.guide, "always");
  if (lake.hazards.length + always.length === 0) return null;
  return (
    <Section title="Hazards" id="hazards">
      {lake.hazards.length === 0 ? null : (
        <ul>
          {lake.hazards.map((hazard) => (
            <li>{hazard}</li>
          ))}
        </ul>
      )}
      <Cautions cautions={always} sheet={sheet} />
    </Section>
  );
}

/** Rules as somebody read them on a day. */
export const Rules = ({ lake }: { lake: GuideLake }) =>
  lake.rules === null ? null : (
    <Section title="Rules" id="rules">
      <p>
        {lake.rules.text} <span class="small">As checked on {dayMonthYear(lake.rules.checked)}.</span>
      </p>
      <p class="small">Rules change, also within a season: the agency’s own text is the one that counts.</p>
    </Section>
  );
