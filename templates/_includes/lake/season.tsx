import { screenInk } from "../../../build/draw/ink.ts";
import { springDays } from "../../../build/draw/strip/date-axis.ts";
import { seenText } from "../../../build/draw/strip/marks.ts";
import { seasonStrip } from "../../../build/draw/strip/season-strip.ts";
import { renderSvg } from "../../../build/draw/svg.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { listReports } from "../../../build/guide/report-seasons.ts";
import { catchTotalText, observedText } from "../../../build/guide/report-words.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { dayMonth, dayMonthYear, isSaturday, weekdayDayMonth } from "../../../build/model/calendar.ts";
import { DAY_STATES, phaseName, STATE_WORDS } from "../../../build/model/phase.ts";
import type { Spread } from "../../../build/model/shared-schemas.ts";
import { chanceText, type UnitSystem } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Fold, ForecastNote, Harmless, inOneLine, Scroll } from "../parts.tsx";

const SpreadCells = ({ spread: { p10, p50, p90 } }: { spread: Spread }) =>
  p10 === p90 ? (
    <td colSpan={3}>
      <strong>{dayMonth(p50)}</strong>, known
    </td>
  ) : (
    <>
      <td>{dayMonth(p10)}</td>
      <td>
        <strong>{dayMonth(p50)}</strong>
      </td>
      <td>{dayMonth(p90)}</td>
    </>
  );

/** First and last day of each phase, each with its spread. */
function Windows({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  return (
    <table class="windows">
      <caption>
        First and last day of each phase, as of {dayMonthYear(sheet.guide.asOf)}. Of ten springs like this
        one, the day has come in one by the first date, in five by the middle date, in nine by the last.
      </caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col">1 in 10 by</th>
          <th scope="col">5 in 10 by</th>
          <th scope="col">9 in 10 by</th>
        </tr>
      </thead>
      {lake.phases.map(({ phase, from, to }) => (
        <tbody>
          <tr>
            <th scope="row">{phaseName(phase)} begins</th>
            <SpreadCells spread={from} />
          </tr>
          <tr>
            <th scope="row">{phaseName(phase)} ends</th>
            <SpreadCells spread={to} />
          </tr>
        </tbody>
      ))}
      <tbody>
        <tr>
          <th scope="row">{STATE_WORDS.laterWeeks.name} begin</th>
          <SpreadCells spread={lake.laterWeeks} />
        </tr>
      </tbody>
    </table>
  );
}

/** The same facts as the strip, Saturday by Saturday. */
function Weekly({ lake }: { lake: GuideLake }) {
  return (
    <details class="weeks-table">
      <summary>Chances week by week, as a table</summary>
      <Scroll label="Chances week by week">
        <table class="days">
          <thead>
            <tr>
              <th scope="col">Day</th>
              {DAY_STATES.map((state) => (
                <th scope="col">{STATE_WORDS[state].name}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lake.daily
              .filter(({ date }) => isSaturday(date))
              .map((row) => (
                <tr>
                  <th scope="row">{weekdayDayMonth(row.date)}</th>
                  {DAY_STATES.map((state) => (
                    <td>
                      {row[state] >= 0.5 ? <strong>{chanceText(row[state])}</strong> : chanceText(row[state])}
                    </td>
                  ))}
                </tr>
              ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

/** The spring of one lake as a drawing, and the same as a table. */
export const SpringStrip = ({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) => (
  <section class="spring" aria-label="The spring as a drawing">
    <Harmless
      class="strip"
      html={renderSvg(
        seasonStrip(lake, sheet.guide, {
          ink: screenInk,
          width: 344,
          height: 210,
          compact: false,
          ...springDays(lake, sheet.guide),
        }),
      )}
    />
    <Weekly lake={lake} />
  </section>
);

/** The spring of one lake in dates. */
export const Dates = ({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) =>
  lake.phases.length === 0 ? null : (
    <Fold
      title="Dates"
      id="dates"
      answer={
        lake.phases
          .map(({ phase, from }) => `${phaseName(phase).toLowerCase()} ${dayMonth(from.p50)}`)
          .at(-1) ?? ""
      }
    >
      <Windows lake={lake} sheet={sheet} />
    </Fold>
  );

/** Reports shown here; the lake's own page of reports holds all of them. */
const SHOWN = 2;

const inShort = (report: GuideLake["reports"][number], units: UnitSystem): string =>
  inOneLine([observedText(report, units), catchTotalText(report)]) || (report.notes ?? "");

/** This season's newest reports in short, and the way to all. */
function NewestReports({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { season, club } = sheet.guide;
  const newest = listReports([lake])
    .filter((one) => one.season === season)
    .slice(0, SHOWN);
  return lake.reports.length === 0 ? null : (
    <>
      <h3>Reports</h3>
      {newest.length === 0 ? null : (
        <dl>
          {newest.map(({ report }) => (
            <div>
              <dt>{weekdayDayMonth(report.date)}</dt>
              <dd>{inShort(report, club.units)}</dd>
            </div>
          ))}
        </dl>
      )}
      <p>
        <a href={sheet.to(ADDRESS.lakeReports(lake.slug))}>
          {lake.reports.length === 1 ? "The report" : `All ${lake.reports.length} reports`} of {lake.name}
        </a>
      </p>
    </>
  );
}

/** Reports the rest of the evidence speaks against. */
function Doubted({ lake }: { lake: GuideLake }) {
  const doubted = lake.marks.filter((mark) => mark.doubted);
  if (doubted.length === 0) return null;
  return (
    <p>
      Doubted, because all else speaks against it:{" "}
      {doubted.map(({ date, seen }) => `“${seenText(seen)}” on ${dayMonth(date)}`).join(", ")}.
    </p>
  );
}

/** Why the forecast says what it says, and what people saw. */
export function Evidence({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  return (
    <Fold
      title="Why these dates"
      id="why"
      answer={`${lake.evidence.seasons} springs, ${lake.reports.length} reports`}
    >
      {lake.status.why.length === 0 ? null : (
        <ul>
          {lake.status.why.map((sentence) => (
            <li>{sentence}</li>
          ))}
        </ul>
      )}
      <Doubted lake={lake} />
      <ForecastNote sheet={sheet} />
      <NewestReports lake={lake} sheet={sheet} />
    </Fold>
  );
}
