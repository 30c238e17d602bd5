import type { GuideLake, GuideTrip } from "../../../build/guide/guide-schema.ts";
import { fishableText, outingText, partyText, timeText } from "../../../build/guide/trip-words.ts";
import type { LeftOut, Outing } from "../../../build/guide/when-schema.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { dayRange, weekdayDayMonth } from "../../../build/model/calendar.ts";
import { chanceText, hoursText } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Fact, ForecastNote, inOneLine, Scroll, Section } from "../parts.tsx";

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
}: Pick<Outing, "slug" | "name" | "good"> & { roads: readonly Road[]; sheet: PageContext }) {
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

const Out = ({ out, sheet }: { out: readonly LeftOut[]; sheet: PageContext }) => (
  <ul class="plain">
    {out.map(({ slug, name, why }) => (
      <li>
        <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>: {why}.
      </li>
    ))}
  </ul>
);

/** Where to go, where else, and why. */
export function TripPick({
  trip,
  roads,
  sheet,
}: {
  trip: GuideTrip;
  roads: readonly Road[];
  sheet: PageContext;
}) {
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
        {trip.fishable.length === 0 ? null : <Fact name="Or fish">{fishableText(trip.fishable)}</Fact>}
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

/** The chances of each lake and of the two chosen, day by day. */
export function TripDays({ trip, sheet }: { trip: GuideTrip; sheet: PageContext }) {
  const lakes = trip.days[0]?.lakes ?? [];
  if (lakes.length === 0) return null;
  const hasFallback = trip.pick !== null && trip.pick.fallback !== null;
  return (
    <Section title="Chances" id="chances">
      <Scroll label="Chance of each lake, day by day">
        <table class="days">
          <caption>Chance that a lake is good: ice-off or best weeks</caption>
          <thead>
            <tr>
              <th scope="col">Day</th>
              {lakes.map(({ slug, name }) => (
                <th scope="col">
                  <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>
                </th>
              ))}
              {hasFallback ? <th scope="col">One of the two</th> : null}
              {lakes.length > 2 ? <th scope="col">Any of these</th> : null}
            </tr>
          </thead>
          <tbody>
            {trip.days.map((day) => {
              const best = Math.max(...day.lakes.filter(({ open }) => open).map(({ good }) => good));
              return (
                <tr>
                  <th scope="row">{weekdayDayMonth(day.date)}</th>
                  {day.lakes.map(({ good, open }) => (
                    <td>
                      {!open ? (
                        "road closed"
                      ) : good === best ? (
                        <strong>{chanceText(good)}</strong>
                      ) : (
                        chanceText(good)
                      )}
                    </td>
                  ))}
                  {hasFallback ? <td>{chanceText(day.either)}</td> : null}
                  {lakes.length > 2 ? <td>{chanceText(day.anyGood)}</td> : null}
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

/** First light to last light at the pick, day by day. */
export function TripLight({ trip: { pick, light } }: { trip: GuideTrip }) {
  if (pick === null) return null;
  return (
    <Section title="Light" id="light">
      <Scroll label={`Light at ${pick.name}, day by day`}>
        <table class="days">
          <caption>At {pick.name}, on a level horizon; hills shorten the evening</caption>
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">First light</th>
              <th scope="col">Sunrise</th>
              <th scope="col">Sunset</th>
              <th scope="col">Last light</th>
            </tr>
          </thead>
          <tbody>
            {light.map(({ date, firstLight, sunrise, sunset, lastLight, words }) => (
              <tr>
                <th scope="row">{weekdayDayMonth(date)}</th>
                <td>
                  <strong>{timeText(firstLight)}</strong>
                </td>
                <td>{timeText(sunrise)}</td>
                <td>{timeText(sunset)}</td>
                <td>
                  <strong>{timeText(lastLight)}</strong> {words}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}
