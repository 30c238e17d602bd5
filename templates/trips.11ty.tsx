import { listedTrips } from "../build/guide/guide-contents.ts";
import type { Guide, GuideTrip } from "../build/guide/guide-schema.ts";
import { partyText, tripOutingText } from "../build/guide/trip-words.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { dayRange } from "../build/model/calendar.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { ForecastNote, inOneLine } from "./_includes/parts.tsx";

const TripRow = ({ trip, sheet }: { trip: GuideTrip; sheet: PageContext }) => (
  <li>
    <h2>
      <a href={sheet.to(ADDRESS.trip(trip.slug))}>{trip.name}</a>
    </h2>
    <p>
      {inOneLine([dayRange(trip.from, trip.to), partyText(trip)])}. {tripOutingText(trip)}
    </p>
  </li>
);

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: ({ guide }: Data) => listedTrips(guide).length > 0 && ADDRESS.trips,
  inputs: ({ guide }: Data) => ({ trips: listedTrips(guide) }),
} as const;

/** The trips everybody may see. */
export const render = ({ trips, sheet }: Rendered<typeof data>) => (
  <Page sheet={sheet} title="Trips" description="The club’s trips: days, lakes and their chances.">
    <h1>Trips</h1>
    <ul class="patterns">
      {trips.map((trip) => (
        <TripRow trip={trip} sheet={sheet} />
      ))}
    </ul>
    <ForecastNote sheet={sheet} />
  </Page>
);
