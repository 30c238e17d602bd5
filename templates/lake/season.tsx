import { screenInk } from "../../build/draw/ink.ts";
import { seasonStrip } from "../../build/draw/season-strip.tsx";
import { springDays } from "../../build/draw/spring-days.ts";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { dayMonth, dayMonthYear, isSaturday, weekdayDayMonth } from "../../build/model/calendar.ts";
import type { Spread } from "../../build/model/exported.ts";
import { DAY_STATES, phaseName, STATE_WORDS } from "../../build/model/phase.ts";
import { chanceText } from "../../build/model/units.ts";
import { Harmless, Scroll, Section } from "../parts.tsx";
import type { Sheet } from "../sheet.ts";

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
function Windows({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
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
    </table>
  );
}

/** The same facts as the strip, Saturday by Saturday. */
function Weekly({ lake }: { lake: GuideLake }) {
  return (
    <details>
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
export const SpringStrip = ({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) => (
  <section class="spring" aria-label="The spring as a drawing">
    <Harmless
      class="strip"
      html={seasonStrip(lake, sheet.guide, {
        ink: screenInk,
        width: 344,
        height: 210,
        compact: false,
        ...springDays(lake, sheet.guide),
      })}
    />
    <Weekly lake={lake} />
  </section>
);

/** The spring of one lake in dates. */
export const Dates = ({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) =>
  lake.phases.length === 0 ? null : (
    <Section title="Dates" id="dates">
      <Windows lake={lake} sheet={sheet} />
    </Section>
  );
