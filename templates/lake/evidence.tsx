import { seenText } from "../../build/draw/mark-shape.tsx";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { listReports } from "../../build/guide/report-list.ts";
import { catchTotalText, observedText } from "../../build/guide/report-words.ts";
import { dayMonth, weekdayDayMonth } from "../../build/model/calendar.ts";
import type { UnitSystem } from "../../build/model/units.ts";
import { ForecastNote, inOneLine, Section } from "../parts.tsx";
import { ADDRESS, type Sheet } from "../sheet.ts";

/** Reports shown here; the lake's own page of reports holds all of them. */
const SHOWN = 2;

const inShort = (report: GuideLake["reports"][number], units: UnitSystem): string =>
  inOneLine([observedText(report, units), catchTotalText(report)]) || (report.notes ?? "");

/** This season's newest reports in short, and the way to all. */
function NewestReports({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
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
export function Evidence({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  return (
    <Section title="Why these dates" id="why">
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
    </Section>
  );
}
