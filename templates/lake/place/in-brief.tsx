import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { distanceText } from "../../../build/model/units.ts";
import { capital, Fact, Section } from "../../parts.tsx";
import { ADDRESS, type Sheet } from "../../sheet.ts";
import { lightText } from "./light.tsx";

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
export function PlaceInBrief({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  const { wind, light, warmWater } = lake.place;
  const [today] = light;
  return (
    <Section title="The lake" id="lake">
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
    </Section>
  );
}
