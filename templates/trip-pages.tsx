import type { GuideTrip, TripGear } from "../build/guide/guide-schema.ts";
import { dayRange, weekdayDayMonth } from "../build/model/calendar.ts";
import { phaseName } from "../build/model/phase.ts";
import { chanceText } from "../build/model/units.ts";
import { listedTrips } from "./contents.ts";
import { countdownText, holdText, type Rig, setDepthText } from "./lake/rig-words.ts";
import { Page } from "./layout.tsx";
import { LeaderBoards } from "./leader-boards.tsx";
import {
  Cautions,
  cautionsFor,
  Fact,
  ForecastNote,
  Harmless,
  inOneLine,
  PrintList,
  Scroll,
  Section,
} from "./parts.tsx";
import { ADDRESS, type Sheet } from "./sheet.ts";
import { BoxPlan } from "./trip/box-plan.tsx";

const rodsText = (rods: number): string => `${rods} ${rods === 1 ? "rod" : "rods"}`;

const TripRow = ({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) => (
  <li>
    <h2>
      <a href={sheet.to(ADDRESS.trip(trip.slug))}>{trip.name}</a>
    </h2>
    <p>
      {inOneLine([dayRange(trip.from, trip.to), rodsText(trip.rods)])}. {trip.pick.name}{" "}
      <strong>{chanceText(trip.pick.good)}</strong>
      {trip.pick.fallback === null ? "" : `, or else ${trip.pick.fallback.name}`}.
    </p>
  </li>
);

/** The trips everybody may see. */
export const TripsPage = ({ sheet }: { sheet: Sheet }) => (
  <Page sheet={sheet} title="Trips" description="The club’s trips: days, lakes and their chances.">
    <h1>Trips</h1>
    <ul class="patterns">
      {listedTrips(sheet.guide).map((trip) => (
        <TripRow trip={trip} sheet={sheet} />
      ))}
    </ul>
    <ForecastNote sheet={sheet} />
  </Page>
);

function Pick({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) {
  const { pick } = trip;
  return (
    <section class="glance" aria-label="At a glance">
      <dl>
        <Fact name="Go to">
          <p class="big">
            <a href={sheet.to(ADDRESS.lake(pick.slug))}>{pick.name}</a>{" "}
            <span class="odds">{chanceText(pick.good)}</span>
          </p>
          <p>Chance that it is good, mean over the trip.</p>
        </Fact>
        {pick.fallback === null ? null : (
          <Fact name="Or else">
            <p class="big">
              <a href={sheet.to(ADDRESS.lake(pick.fallback.slug))}>{pick.fallback.name}</a>
            </p>
            <p>
              That at least one of the two is good: <strong>{chanceText(pick.either)}</strong>, mean over the
              trip.
            </p>
          </Fact>
        )}
        <Fact name="When">{inOneLine([dayRange(trip.from, trip.to), rodsText(trip.rods)])}</Fact>
      </dl>
      <ForecastNote sheet={sheet} />
    </section>
  );
}

function Days({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) {
  const lakes = trip.days[0]?.lakes ?? [];
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
              {lakes.length > 1 ? <th scope="col">Any of them</th> : null}
            </tr>
          </thead>
          <tbody>
            {trip.days.map((day) => {
              const best = Math.max(...day.lakes.map(({ good }) => good));
              return (
                <tr>
                  <th scope="row">{weekdayDayMonth(day.date)}</th>
                  {day.lakes.map(({ good }) => (
                    <td>{good === best ? <strong>{chanceText(good)}</strong> : chanceText(good)}</td>
                  ))}
                  {lakes.length > 1 ? <td>{chanceText(day.anyGood)}</td> : null}
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
    </Section>
  );
}

const rigLine = (rig: Rig, sheet: Sheet): string => {
  const depth = setDepthText(rig, sheet.guide.club.units);
  const countdown = countdownText(rig);
  return inOneLine([
    rig.way,
    depth === null ? null : `set ${depth}`,
    rig.leader === null ? null : `leader ${rig.leader}`,
    holdText(rig),
    rig.line,
    countdown === null ? null : `count ${countdown}`,
  ]);
};

function Gear({ gear, sheet }: { gear: TripGear; sheet: Sheet }) {
  if (gear.lakes.length === 0) return null;
  return (
    <Section title="To take" id="gear">
      <dl>
        <Fact name="Lines">{gear.lines.join(", ")}</Fact>
        <Fact name="Flies">
          {gear.flies.length === 0
            ? null
            : gear.flies.map(({ pattern, name }, i) => (
                <>
                  {i === 0 ? "" : ", "}
                  <a href={sheet.to(ADDRESS.pattern(pattern))}>{name}</a>
                </>
              ))}
        </Fact>
      </dl>
      {gear.lakes.map(({ slug, name, phases }) => (
        <>
          <h3>
            <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>
          </h3>
          <dl>
            {phases.map(({ phase, rigs }) => (
              <Fact name={phaseName(phase)}>
                <ul class="plain">
                  {rigs.map((rig) => (
                    <li>{rigLine(rig, sheet)}</li>
                  ))}
                </ul>
              </Fact>
            ))}
          </dl>
        </>
      ))}
    </Section>
  );
}

/** One trip: where to go, the chances day by day, and what to take. */
export function TripPage({ trip, sheet }: { trip: GuideTrip; sheet: Sheet }) {
  const always = cautionsFor(sheet.guide, "always");
  return (
    <Page
      sheet={sheet}
      title={trip.name}
      description={`${trip.name}, ${dayRange(trip.from, trip.to)}: ${trip.pick.name} ${chanceText(trip.pick.good)} good.`}
      unlisted={trip.unlisted}
    >
      <h1>{trip.name}</h1>
      <Pick trip={trip} sheet={sheet} />
      <Days trip={trip} sheet={sheet} />
      <LeaderBoards boards={trip.gear.boards} sheet={sheet} />
      <Gear gear={trip.gear} sheet={sheet} />
      <BoxPlan trip={trip} sheet={sheet} />
      {trip.gear.boards.boards.length === 0 ? null : (
        <PrintList
          files={[
            ["Labels for this trip’s leader boards, A4", `labels-${trip.slug}-a4`],
            ["Labels for this trip’s leader boards, letter", `labels-${trip.slug}-letter`],
          ]}
          sheet={sheet}
        />
      )}
      {trip.notes === null ? null : (
        <Section title="Notes" id="notes">
          <Harmless class="prose" html={trip.notes} />
        </Section>
      )}
      {always.length === 0 ? null : (
        <Section title="Cautions" id="cautions">
          <Cautions cautions={always} sheet={sheet} />
        </Section>
      )}
    </Page>
  );
}
