import type { ListedReport } from "../../build/guide/report-list.ts";
import { reportSentences } from "../../build/guide/report-words.ts";
import { weekdayDayMonth } from "../../build/model/calendar.ts";
import { ADDRESS, type Sheet } from "../sheet.ts";

/** Reports with all they say, one under the other. */
export const ReportList = ({
  reports,
  sheet,
  nameLakes = false,
}: {
  reports: readonly ListedReport[];
  sheet: Sheet;
  /** Each with a link to its lake, where they are of several. */
  nameLakes?: boolean;
}) => (
  <dl>
    {reports.map(({ lake, report, id }) => (
      <div id={id}>
        <dt>{weekdayDayMonth(report.date)}</dt>
        <dd>
          {nameLakes ? (
            <p>
              <strong>
                <a href={sheet.to(ADDRESS.lake(lake.slug))}>{lake.name}</a>
              </strong>
            </p>
          ) : null}
          {reportSentences(report, sheet.guide.club.units).map((sentence) => (
            <p>{sentence}</p>
          ))}
        </dd>
      </div>
    ))}
  </dl>
);
