import type { GuideLake, GuideTrip } from "../../build/guide/guide-schema.ts";
import type { LeftOut, Outing } from "../../build/guide/when-schema.ts";
import { dayRange } from "../../build/model/calendar.ts";
import { chanceText, hoursText } from "../../build/model/units.ts";
import { Fact, ForecastNote, inOneLine } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";
import { outingText, partyText } from "./trip-words.ts";

/** How far a lake is and since when its road is open, where that is known. */
/** How to get to a lake. */
export type Road = Pick<GuideLake, "slug" | "access">;

function reachText(slug: string, roads: readonly Road[]): string {
  const travel_h = roads.find((lake) => lake.slug === slug)?.access?.travel_h ?? null;
  return travel_h === null ? "" : `${hoursText(travel_h)} from the meeting place.`;
}

function Lake({
  slug,
  name,
  good,
  roads,
  sheet,
}: Pick<Outing, "slug" | "name" | "good"> & { roads: readonly Road[]; sheet: Sheet }) {
  return (
    <>
      <p class="big">
        <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a> <span class="odds">{chanceText(good)}</span>
      </p>
      <p>
        {reachText(slug, roads)} <a href={sheet.to(ADDRESS.place(slug))}>Wind, waves and where to fish</a>
      </p>
    </>
  );
}

const Out = ({ out, sheet }: { out: readonly LeftOut[]; sheet: Sheet }) => (
  <ul class="plain">
    {out.map(({ slug, name, why }) => (
      <li>
        <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>: {why}.
      </li>
    ))}
  </ul>
);

/** Where to go, where else, and why. */
export function TripPick({ trip, roads, sheet }: { trip: GuideTrip; roads: readonly Road[]; sheet: Sheet }) {
  const { pick, next, out, why } = trip;
  return (
    <section class="glance" aria-label="At a glance">
      <dl>
        {pick === null ? (
          <Fact name="Go to">No lake can be reached on these days.</Fact>
        ) : (
          <Fact name="Go to">
            <Lake {...pick} roads={roads} sheet={sheet} />
          </Fact>
        )}
        {pick === null || pick.fallback === null ? null : (
          <>
            <Fact name="Or else">
              <Lake {...pick.fallback} roads={roads} sheet={sheet} />
            </Fact>
            <Fact name="Either">
              <p>
                That at least one of the two is good: <strong>{chanceText(pick.either)}</strong>, mean over
                the days.
              </p>
            </Fact>
          </>
        )}
        {why.length === 0 ? null : (
          <Fact name="Why">
            {why.map((text) => (
              <p>{text}</p>
            ))}
          </Fact>
        )}
        {next === null ? null : <Fact name="Next best">{outingText(next)}.</Fact>}
        {out.length === 0 ? null : (
          <Fact name="Left out">
            <Out out={out} sheet={sheet} />
          </Fact>
        )}
        <Fact name="When">{inOneLine([dayRange(trip.from, trip.to), partyText(trip)])}</Fact>
      </dl>
      <ForecastNote sheet={sheet} />
    </section>
  );
}
