import { screenInk } from "../build/draw/ink.ts";
import { stripLegend } from "../build/draw/strip/legend.ts";
import { monthScale } from "../build/draw/strip/month-scale.tsx";
import { seasonStrip } from "../build/draw/strip/season-strip.ts";
import { renderSvg } from "../build/draw/svg.ts";
import { daysAheadText } from "../build/guide/board.ts";
import { listedTrips } from "../build/guide/guide-contents.ts";
import type { Board, Guide, GuideLake, GuideTrip } from "../build/guide/guide-schema.ts";
import { lakeSheets } from "../build/guide/print-files.ts";
import { tripOutingText } from "../build/guide/trip-words.ts";
import type { Occasion, Outing } from "../build/guide/when-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { addDays, type CalendarDate, dayMonth, dayRange, weekdayDayMonth } from "../build/model/calendar.ts";
import { STATE_WORDS } from "../build/model/phase.ts";
import { chanceText } from "../build/model/units.ts";
import { groupTitle, weekendText } from "./_includes/board-titles.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { ForecastNote, Harmless, PrintList, Section } from "./_includes/parts.tsx";

type BoardGroup = Board["groups"][number];
type BoardRow = BoardGroup["lakes"][number];
/** What the board shows of a lake. */
const boardLake = ({ slug, name, now, bestDays, status, daily, marks, access }: GuideLake) => ({
  slug,
  name,
  now,
  bestDays,
  status,
  daily,
  marks,
  access,
});
type BoardLake = ReturnType<typeof boardLake>;
type LakesBySlug = ReadonlyMap<string, BoardLake>;

/** What the heading says once its days are over; the page's script sets it. */
const laterTitle = (id: BoardGroup["id"], weekend: Board["weekend"]) =>
  id === "weekend"
    ? { "data-until": weekend.at(-1), "data-after": `Were good on the weekend, ${weekendText(weekend)}` }
    : {};

/** Nobody gets there before. */
function RoadOpens({ lake: { access }, asOf }: { lake: BoardLake; asOf: CalendarDate }) {
  const opens = access?.opens ?? null;
  if (opens === null || opens <= asOf) return null;
  return (
    <p data-until={addDays(opens, -1)} data-after={`Road open since ${dayMonth(opens)}.`}>
      <strong>Road opens {dayMonth(opens)}</strong>
    </p>
  );
}

function Row({
  lake,
  weekend,
  fishable,
  sheet,
}: {
  lake: BoardLake;
  weekend: BoardRow["weekend"];
  fishable: BoardRow["fishable"];
  sheet: PageContext;
}) {
  const { guide, to } = sheet;
  const { now, bestDays } = lake;
  return (
    <li data-lake={lake.slug}>
      <h3>
        <a href={to(ADDRESS.lake(lake.slug))}>{lake.name}</a>
      </h3>
      {weekend === null ? null : (
        <p class="odds">
          <strong>{chanceText(weekend)}</strong> <span class="small">good</span>
          {fishable === null ? null : <span class="small under">{chanceText(fishable)} fishable</span>}
        </p>
      )}
      <p class="state" data-days={daysAheadText(lake, guide)}>
        Now {STATE_WORDS[now.state].name.toLowerCase()}, {chanceText(now.chance)}
      </p>
      <Harmless
        class="row-strip"
        html={renderSvg(seasonStrip(lake, guide, { ink: screenInk, width: 320, height: 22, compact: true }))}
      />
      <div class="dates">
        <p class="next">{lake.status.next}</p>
        <RoadOpens lake={lake} asOf={guide.asOf} />
        {bestDays === null ? null : (
          <p data-until={bestDays.to} data-after={`Best days were ${dayRange(bestDays.from, bestDays.to)}.`}>
            Best days <strong>{dayRange(bestDays.from, bestDays.to)}</strong>, {chanceText(bestDays.chance)}
          </p>
        )}
      </div>
    </li>
  );
}

function Group({
  group,
  weekend: days,
  lakes,
  sheet,
}: {
  group: BoardGroup;
  weekend: Board["weekend"];
  lakes: LakesBySlug;
  sheet: PageContext;
}) {
  return (
    <section aria-labelledby={group.id} class={`group ${group.id}`}>
      <h2 id={group.id} {...laterTitle(group.id, days)}>
        {groupTitle(group.id, days)}
      </h2>
      <Harmless class="month-scale" html={monthScale(sheet.guide.window)} />
      <ul class="board">
        {group.lakes.map(({ slug, weekend, fishable }) => {
          const lake = lakes.get(slug);
          return lake === undefined ? null : (
            <Row lake={lake} weekend={weekend} fishable={fishable} sheet={sheet} />
          );
        })}
      </ul>
    </section>
  );
}

const LakeLink = ({
  slug,
  name,
  good,
  sheet,
}: Pick<Outing, "slug" | "name" | "good"> & { sheet: PageContext }) => (
  <>
    <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a> <span class="odds">{chanceText(good)}</span>
  </>
);

/** The lake to go to on one weekend, the one to fall back on, and the chance that one of them is good. */
function Answer({ occasion, isFirst, sheet }: { occasion: Occasion; isFirst: boolean; sheet: PageContext }) {
  const { from, to, best, isLikely } = occasion;
  return (
    <section class="answer" aria-labelledby={`go-${from}`} data-last={to} hidden={!isFirst}>
      <h2 id={`go-${from}`}>
        {isFirst ? "This" : "The"} weekend, {weekendText(from === to ? [from] : [from, to])}
      </h2>
      {best === null ? (
        <p class="big">No road is open</p>
      ) : (
        <>
          {isLikely ? null : <p>No lake is likely to be good. The likeliest:</p>}
          <p class="big">
            <LakeLink {...best} sheet={sheet} />
          </p>
          {best.fallback === null ? null : (
            <p>
              or else <LakeLink {...best.fallback} sheet={sheet} />; one of the two{" "}
              <strong class="odds">{chanceText(best.either)}</strong>
            </p>
          )}
        </>
      )}
    </section>
  );
}

/** Where to go on the weekend that is next; those after it wait for their turn, and the page's script shows them. */
function Answers({ occasions, sheet }: { occasions: readonly Occasion[]; sheet: PageContext }) {
  const weekends = occasions.filter(({ name }) => name === null);
  return (
    <>
      {weekends.map((occasion, i) => (
        <Answer occasion={occasion} isFirst={i === 0} sheet={sheet} />
      ))}
      <p class="small">
        <a href={sheet.to(ADDRESS.when)}>Every weekend and holiday to come</a>
      </p>
    </>
  );
}

const TripLine = ({ trip, sheet }: { trip: GuideTrip; sheet: PageContext }) => (
  <li>
    <a href={sheet.to(ADDRESS.trip(trip.slug))}>{trip.name}</a>, {dayRange(trip.from, trip.to)}:{" "}
    {tripOutingText(trip)}
  </li>
);

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: () => ADDRESS.board,
  inputs: ({ guide }: Data) => ({
    board: guide.board,
    lakes: guide.lakes.map(boardLake),
    withoutForecast: guide.lakesWithoutForecast.map(({ slug, why }) => ({ slug, why })),
    occasions: guide.when.occasions,
    trips: listedTrips(guide),
  }),
} as const;

/** All lakes of the season, those to go to first. */
export function render({
  board,
  lakes: all,
  withoutForecast,
  occasions,
  trips,
  sheet,
}: Rendered<typeof data>) {
  const { guide } = sheet;
  const lakes = new Map(all.map((lake) => [lake.slug, lake]));
  const first = lakes.get(board.groups[0]?.lakes[0]?.slug ?? "");
  return (
    <Page
      sheet={sheet}
      title={guide.club.name}
      description={`Which lake to fish and when in spring ${guide.season}${first === undefined ? "" : `; first on the board: ${first.name}`}. As of ${weekdayDayMonth(guide.asOf)}.`}
      scripts={[ADDRESS.boards]}
    >
      <h1>Season {guide.season}</h1>
      <Answers occasions={occasions} sheet={sheet} />
      {board.groups.map((group) => (
        <Group group={group} weekend={board.weekend} lakes={lakes} sheet={sheet} />
      ))}
      {withoutForecast.length === 0 ? null : (
        <Section title="Without a forecast" id="no-forecast">
          <ul class="plain">
            {withoutForecast.map(({ slug, why }) => (
              <li>
                <a href={sheet.to(ADDRESS.lake(slug))}>{why}</a>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section title="Reading the strips" id="key">
        <Harmless class="key" html={renderSvg(stripLegend({ ink: screenInk, width: 320, marks: false }))} />
        <p class="small">
          Each strip runs from {dayRange(guide.window.from, guide.window.to)}; the height of a state is its
          chance on that day, the line is the as-of day. “Good” is ice-off or best weeks, “fishable” these and
          the later weeks. Dates in brackets hold with eight chances in ten.
        </p>
        <ForecastNote sheet={sheet} />
      </Section>
      {trips.length === 0 ? null : (
        <Section title="Trips" id="trips">
          <ul class="plain">
            {trips.map((trip) => (
              <TripLine trip={trip} sheet={sheet} />
            ))}
          </ul>
        </Section>
      )}
      <PrintList files={lakeSheets(all)} sheet={sheet} />
    </Page>
  );
}
