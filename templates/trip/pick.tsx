import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import type { LeftOut, Outing } from "../../build/guide/when-schema.ts";
import { dayRange } from "../../build/model/calendar.ts";
import { chanceText, hoursText } from "../../build/model/units.ts";
import { Fact, ForecastNote, inOneLine } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";
import { outingText, partyText } from "./trip-words.ts";

/** How far a lake is and since when its road is open, where that is known. */
function reachText(slug: string, { guide }: Sheet): string {
  const travel_h = guide.lakes.find((lake) => lake.slug === slug)?.access?.travel_h ?? null;
  return travel_h === null ? "" : `${hoursText(travel_h)} from the meeting place.`;
}

function Lake({ slug, name, good, sheet }: Pick<Outing, "slug" | "name" | "good"> & { sheet: Sheet }) {
  return (
    <>
      <p class="big">
        <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a> <span class="odds">{chanceText(good)}</span>
      </p>
      <p>
        {reachText(slug, sheet)} <a href={sheet.to(ADDRESS.place(slug))}>Wind, waves and where to fish</a>
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
export function TripPick({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) {
  const { pick, next, out, why } = trip;
  return (
    <section class="glance" aria-label="At a glance">
      <dl>
        {pick === null ? (
          <Fact name="Go to">No lake can be reached on these days.</Fact>
        ) : (
          <Fact name="Go to">
            <Lake {...pick} sheet={sheet} />
          </Fact>
        )}
        {pick === null || pick.fallback === null ? null : (
          <>
            <Fact name="Or else">
              <Lake {...pick.fallback} sheet={sheet} />
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
