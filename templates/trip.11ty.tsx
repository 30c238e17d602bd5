import type { Guide, GuideTrip, TripGear } from "../build/guide/guide-schema.ts";
import { printedTrip, tripFiles } from "../build/guide/print-files.ts";
import { tripOutingText } from "../build/guide/trip-words.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { dayRange } from "../build/model/calendar.ts";
import { phaseName } from "../build/model/phase.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { Cautions, Fact, Harmless, inOneLine, PrintList, Section } from "./_includes/parts.tsx";
import { LeaderBoards } from "./_includes/rigs/gear-tables.tsx";
import { countdownText, landingText, type Rig, setDepthText } from "./_includes/rigs/rig-facts.tsx";
import { BoxPlan } from "./_includes/trip/box-plan.tsx";
import { type Road, TripDays, TripLight, TripPick } from "./_includes/trip/lake-choice.tsx";
import { TripFloatPlan, TripPacking, TripPeople } from "./_includes/trip/people-packing.tsx";

const rigLine = (rig: Rig, sheet: PageContext): string => {
  const depth = setDepthText(rig, sheet.guide.club.units);
  const countdown = countdownText(rig);
  return inOneLine([
    rig.way,
    depth === null ? null : `set ${depth}`,
    rig.leader === null ? null : `leader ${rig.leader}`,
    landingText(rig),
    rig.line,
    countdown === null ? null : `count ${countdown}`,
  ]);
};

function Gear({ gear, sheet }: { gear: TripGear; sheet: PageContext }) {
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

interface Data {
  readonly guide: Guide;
  readonly trip: GuideTrip;
}

/** The ways to the lakes that a trip may go to. */
const roadsOf = ({ pick }: GuideTrip, { lakes }: Guide): Road[] =>
  lakes
    .filter(({ slug }) => [pick?.slug, pick?.fallback?.slug].includes(slug))
    .map(({ slug, access }) => ({ slug, access }));

export const data = {
  pagination: { data: "guide.trips", size: 1, alias: "trip" },
  permalink: ({ trip }: Data) => ADDRESS.trip(trip.slug),
  listed: ({ trip }: Data) => !trip.unlisted,
  inputs: ({ guide, trip }: Data) => ({ trip, roads: roadsOf(trip, guide) }),
} as const;

/** One trip, whole: where to go, the chances day by day, what to tie and pack, and whom to tell. */
export function render({ trip, roads, sheet }: Rendered<typeof data>) {
  const cautions = sheet.guide.cautions.filter(({ id }) => trip.cautions.includes(id));
  return (
    <Page
      sheet={sheet}
      title={trip.name}
      description={`${trip.name}, ${dayRange(trip.from, trip.to)}: ${tripOutingText(trip)}`}
      unlisted={trip.unlisted}
      scripts={[ADDRESS.ticks]}
    >
      <h1>{trip.name}</h1>
      <TripPick trip={trip} roads={roads} sheet={sheet} />
      <TripDays trip={trip} sheet={sheet} />
      <TripLight trip={trip} />
      <TripPeople trip={trip} />
      {cautions.length + trip.ice.length === 0 ? null : (
        <Section title="Cautions" id="cautions">
          {trip.ice.map((ice) => (
            <p>
              <strong>{ice}</strong>
            </p>
          ))}
          <Cautions cautions={cautions} sheet={sheet} />
        </Section>
      )}
      <LeaderBoards boards={trip.gear.boards} sheet={sheet} />
      <Gear gear={trip.gear} sheet={sheet} />
      <BoxPlan trip={trip} sheet={sheet} />
      <TripPacking trip={trip} />
      <TripFloatPlan trip={trip} />
      {trip.notes === null ? null : (
        <Section title="Notes" id="notes">
          <Harmless class="prose" html={trip.notes} />
        </Section>
      )}
      <PrintList files={tripFiles(printedTrip(trip))} sheet={sheet} />
      <Section title="To take along" id="take">
        <p>
          <a href={sheet.to(ADDRESS.tripCalendar(trip.slug))}>The trip’s days as a calendar</a> (ICS)
        </p>
      </Section>
    </Page>
  );
}
