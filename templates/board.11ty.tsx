import { screenInk } from "../build/draw/ink.ts";
import { lakeOutline } from "../build/draw/map/basin-map.ts";
import { renderSvg } from "../build/draw/svg.ts";
import type { Guide, GuideLake } from "../build/guide/guide-schema.ts";
import { listReports } from "../build/guide/report-seasons.ts";
import { goodUntil, onDays } from "../build/guide/season-chart.ts";
import { fishableText } from "../build/guide/trip-words.ts";
import type { Occasion } from "../build/guide/when-schema.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { dayMonth, dayRange, weekdayDayMonth } from "../build/model/calendar.ts";
import { STATE_WORDS } from "../build/model/phase.ts";
import { chanceText, chanceWord, hoursText } from "../build/model/units.ts";
import { type BoardLake, Chart, LakesMap } from "./_includes/board-chart.tsx";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { Harmless, inOneLine } from "./_includes/parts.tsx";
import { weekendText } from "./_includes/weekend-words.ts";

/** Newest reports in the guest book of the front page. */
const SEEN_SHOWN = 5;

/** What the board shows of a lake. */
const boardLake = ({ slug, name, position, daily, access, phases, iceOff, place }: GuideLake): BoardLake => ({
  slug,
  name,
  position,
  daily,
  access,
  phases,
  iceOff,
  shoreline: place.map?.shoreline.flat() ?? [],
});

const LakeLink = ({ slug, name, sheet }: { slug: string; name: string; sheet: PageContext }) => (
  <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a>
);

/** The lake to go to: what it is then, how far it is, and how long it stays likely good. */
function Best({
  best,
  occasion: { from, to },
  lake,
  sheet,
}: {
  best: NonNullable<Occasion["best"]>;
  occasion: Occasion;
  lake: BoardLake | undefined;
  sheet: PageContext;
}) {
  const on = lake === undefined ? null : onDays(lake, from, to);
  const until = lake === undefined ? null : goodUntil(lake, from);
  const outline =
    lake === undefined ? null : lakeOutline(lake.shoreline, { ink: screenInk, width: 96, height: 84 });
  const travel_h = lake?.access?.travel_h ?? null;
  return (
    <div class="best">
      <div>
        <p class="big">
          <LakeLink {...best} sheet={sheet} />
        </p>
        {on === null ? null : (
          <p class="verdict" data-state={on.state}>
            {STATE_WORDS[on.state].name} · {chanceWord(best.good)}, {chanceText(best.good)}
          </p>
        )}
        <p>
          {inOneLine([
            travel_h === null ? null : `${hoursText(travel_h)} away`,
            until === null ? null : `good until ${dayMonth(until)}`,
          ])}
        </p>
      </div>
      {outline === null ? null : <Harmless class="outline" html={renderSvg(outline)} />}
    </div>
  );
}

/** The lake to go to on one weekend, the one to fall back on, and the one for the weekend after. */
function Answer({
  occasion,
  next,
  isFirst,
  lakes,
  sheet,
}: {
  occasion: Occasion;
  next: Occasion | undefined;
  isFirst: boolean;
  lakes: ReadonlyMap<string, BoardLake>;
  sheet: PageContext;
}) {
  const { from, to, best, isLikely, fishable } = occasion;
  const after = next?.best ?? null;
  return (
    <section class="answer" aria-labelledby={`go-${from}`} data-last={to} hidden={!isFirst}>
      <h2 id={`go-${from}`}>
        {isFirst ? "This" : "The"} weekend, {weekendText(from === to ? [from] : [from, to])}
      </h2>
      {best === null ? (
        <p class="big">No road is open</p>
      ) : (
        <>
          {isLikely ? null : (
            <p>
              {fishable.length === 0
                ? "No lake is likely to be good. The likeliest:"
                : `No lake is likely at its best. ${fishableText(fishable)} The likeliest at its best:`}
            </p>
          )}
          <Best best={best} occasion={occasion} lake={lakes.get(best.slug)} sheet={sheet} />
        </>
      )}
      <dl>
        {best?.fallback == null ? null : (
          <div>
            <dt>If not</dt>
            <dd>
              <LakeLink {...best.fallback} sheet={sheet} />, {chanceText(best.fallback.good)}; one of the two{" "}
              {chanceText(best.either)}
            </dd>
          </div>
        )}
        {next === undefined || after === null ? null : (
          <div>
            <dt>
              <a href={sheet.to(ADDRESS.when)}>Next</a>
            </dt>
            <dd>
              <LakeLink {...after} sheet={sheet} />, {dayRange(next.from, next.to)}, {chanceText(after.good)}
            </dd>
          </div>
        )}
      </dl>
    </section>
  );
}

/** Where to go on the weekend that is next; those after it wait for their turn, and the page's script shows them. */
function Answers({
  occasions,
  lakes,
  sheet,
}: {
  occasions: readonly Occasion[];
  lakes: ReadonlyMap<string, BoardLake>;
  sheet: PageContext;
}) {
  const weekends = occasions.filter(({ name }) => name === null);
  return (
    <div class="answers">
      {weekends.map((occasion, i) => (
        <Answer occasion={occasion} next={weekends[i + 1]} isFirst={i === 0} lakes={lakes} sheet={sheet} />
      ))}
    </div>
  );
}

interface Seen {
  readonly slug: string;
  readonly name: string;
  readonly date: Parameters<typeof weekdayDayMonth>[0];
  readonly words: string;
}

/** The newest reports of this season, in the words of who was there. */
const newestSeen = ({ lakes, season }: Guide): Seen[] =>
  listReports(lakes)
    .filter((one) => one.season === season)
    .slice(0, SEEN_SHOWN)
    .map(({ lake: { slug, name }, report: { date, seen, notes } }) => ({
      slug,
      name,
      date,
      words: notes ?? seen.join(", "),
    }));

const LastSeen = ({ seen, sheet }: { seen: readonly Seen[]; sheet: PageContext }) =>
  seen.length === 0 ? null : (
    <details class="fold">
      <summary>
        <span>Last seen</span> <span class="small">{dayMonth(seen[0]?.date ?? sheet.guide.asOf)}</span>
      </summary>
      <dl>
        {seen.map(({ slug, name, date, words }) => (
          <div>
            <dt>{dayMonth(date)}</dt>
            <dd>
              <LakeLink slug={slug} name={name} sheet={sheet} /> {words}
            </dd>
          </div>
        ))}
      </dl>
      <p class="small">
        <a href={sheet.to(ADDRESS.reports)}>All reports</a>
      </p>
    </details>
  );

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: () => ADDRESS.board,
  inputs: ({ guide }: Data) => ({
    lakes: guide.lakes.map(boardLake),
    withoutForecast: guide.lakesWithoutForecast.map(({ slug, why }) => ({ slug, why })),
    occasions: guide.when.occasions,
    seen: newestSeen(guide),
  }),
} as const;

/** Where to go, and every lake's spring in one chart. */
export function render({ lakes: all, withoutForecast, occasions, seen, sheet }: Rendered<typeof data>) {
  const { guide } = sheet;
  const lakes = new Map(all.map((lake) => [lake.slug, lake]));
  const first = occasions.find(({ name }) => name === null)?.best ?? null;
  return (
    <Page
      sheet={sheet}
      title={guide.club.name}
      styles={ADDRESS.boardStyles}
      description={`Which lake to fish and when in spring ${guide.season}${first === null ? "" : `; this weekend ${first.name}`}. As of ${weekdayDayMonth(guide.asOf)}.`}
    >
      <h1 class="small">Spring {guide.season}: where to go</h1>
      <div class="board">
        <Answers occasions={occasions} lakes={lakes} sheet={sheet} />
        <Chart lakes={all} occasions={occasions} sheet={sheet} />
        <div class="rows">
          <LastSeen seen={seen} sheet={sheet} />
          <LakesMap lakes={all} occasions={occasions} sheet={sheet} />
          {withoutForecast.length === 0 ? null : (
            <details class="fold">
              <summary>
                <span>Without a forecast</span> <span class="small">{withoutForecast.length}</span>
              </summary>
              <ul class="plain">
                {withoutForecast.map(({ slug, why }) => (
                  <li>
                    <a href={sheet.to(ADDRESS.lake(slug))}>{why}</a>
                  </li>
                ))}
              </ul>
            </details>
          )}
        </div>
      </div>
    </Page>
  );
}
