import type { ComponentChildren } from "preact";
import type { ListedReport } from "../../../build/guide/report-seasons.ts";
import type { LakeReports } from "../../../build/guide/report-seasons-schema.ts";
import { reportSentences } from "../../../build/guide/report-words.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { weekdayDayMonth } from "../../../build/model/calendar.ts";
import { catchRateNumber, rounded } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Scroll } from "../parts.tsx";

type Rate = LakeReports["caught"][number]["rate"];
type Totals = Omit<LakeReports["seasons"][number], "season">;

/** The columns of {@link CatchCells}. */
const CATCH_HEADS = ["Fish", "Rod-hours", "Fish a rod-hour"];

/** A table of catches: what each row is of, in the columns named, and then its catch. */
export const CatchTable = ({
  label,
  caption = null,
  of,
  children,
  foot = null,
}: {
  label: string;
  caption?: string | null;
  of: readonly string[];
  children: ComponentChildren;
  foot?: ComponentChildren;
}) => (
  <Scroll label={label}>
    <table class="eaten">
      {caption === null ? null : <caption>{caption}</caption>}
      <thead>
        <tr>
          {[...of, ...CATCH_HEADS].map((head) => (
            <th scope="col">{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>{children}</tbody>
      {foot === null ? null : <tfoot>{foot}</tfoot>}
    </table>
  </Scroll>
);

/** Fish, the hours they took, and the rate with its interval; a dash where nobody told. */
export const CatchCells = ({ fish, rate }: { fish: number | null; rate: Rate }) => (
  <>
    <td>{fish ?? "–"}</td>
    <td>{rate === null ? "–" : rounded(rate.rodHours, 1)}</td>
    <td>
      {rate === null ? (
        "–"
      ) : (
        <>
          <strong>{catchRateNumber(rate.mean)}</strong> ({catchRateNumber(rate.low)}–
          {catchRateNumber(rate.high)})
        </>
      )}
    </td>
  </>
);

/** Reports and catch of a season or a lake in it. */
export const TotalCells = ({ totals }: { totals: Totals }) => (
  <>
    <td>{totals.reports}</td>
    <CatchCells fish={totals.told === 0 ? null : totals.fish} rate={totals.rate} />
  </>
);

/** A row for each season, which leads to what `hrefOf` says. */
export const SeasonsTable = ({
  label,
  seasons,
  hrefOf,
}: {
  label: string;
  seasons: LakeReports["seasons"];
  hrefOf: (season: number) => string;
}) => (
  <CatchTable label={label} of={["Season", "Reports"]}>
    {seasons.map((totals) => (
      <tr>
        <th scope="row">
          <a href={hrefOf(totals.season)}>{totals.season}</a>
        </th>
        <TotalCells totals={totals} />
      </tr>
    ))}
  </CatchTable>
);

/** What the columns mean. */
export const CatchNote = () => (
  <p class="small">
    Visits without a fish count. In brackets: the true rate, with 95 chances in 100. Rates are of visits whose
    hours are told; a dash: nobody told.
  </p>
);

/** Reports with all they say, one under the other. */
export const ReportList = ({
  reports,
  sheet,
  nameLakes = false,
}: {
  reports: readonly ListedReport[];
  sheet: PageContext;
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
