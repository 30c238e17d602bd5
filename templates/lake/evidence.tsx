import { seenText } from "../../build/draw/mark-shape.tsx";
import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { dayMonth, weekdayDayMonth } from "../../build/model/calendar.ts";
import { depthText, rounded, temperatureText } from "../../build/model/units.ts";
import { ForecastNote, inOneLine, Section } from "../parts.tsx";
import type { Sheet } from "../sheet.ts";

function reportText(report: GuideLake["reports"][number], sheet: Sheet): string {
  const { units } = sheet.guide.club;
  return inOneLine([
    report.seen.join(", "),
    report.water_C === null ? null : `water ${temperatureText(report.water_C, units)}`,
    report.clarity_m === null ? null : `clear to ${depthText(report.clarity_m, units)}`,
    report.oxygen_mgL === null ? null : `oxygen ${rounded(report.oxygen_mgL, 1)} mg/L`,
    report.notes,
  ]);
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
  const reports = lake.reports.toSorted((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
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
      {reports.length === 0 ? null : (
        <>
          <h3>Reports, the latest first</h3>
          <dl>
            {reports.map((report) => (
              <div>
                <dt>{weekdayDayMonth(report.date)}</dt>
                <dd>{reportText(report, sheet)}</dd>
              </div>
            ))}
          </dl>
        </>
      )}
    </Section>
  );
}
