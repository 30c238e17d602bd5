import type { GuideTrip } from "../../build/guide/guide-schema.ts";
import { weekdayDayMonth } from "../../build/model/calendar.ts";
import { chanceText } from "../../build/model/units.ts";
import { Scroll, Section } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";
import { timeText } from "./trip-words.ts";

/** The chances of each lake and of the two chosen, day by day. */
export function TripDays({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) {
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
