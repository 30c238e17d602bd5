import type { LakeReports } from "../../build/guide/report-seasons-schema.ts";
import { catchRateNumber, rounded } from "../../build/model/units.ts";
import { Scroll } from "../parts.tsx";

type Rate = LakeReports["caught"][number]["rate"];
type Totals = Omit<LakeReports["seasons"][number], "season">;

/** Heads of the columns below. */
export const CatchHeads = () => (
  <>
    <th scope="col">Fish</th>
    <th scope="col">Rod-hours</th>
    <th scope="col">Fish a rod-hour</th>
  </>
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
  <Scroll label={label}>
    <table class="eaten">
      <thead>
        <tr>
          <th scope="col">Season</th>
          <th scope="col">Reports</th>
          <CatchHeads />
        </tr>
      </thead>
      <tbody>
        {seasons.map((totals) => (
          <tr>
            <th scope="row">
              <a href={hrefOf(totals.season)}>{totals.season}</a>
            </th>
            <TotalCells totals={totals} />
          </tr>
        ))}
      </tbody>
    </table>
  </Scroll>
);

/** What the columns mean. */
export const CatchNote = () => (
  <p class="small">
    Visits without a fish count. In brackets: the true rate, with 95 chances in 100. Rates are of visits whose
    hours are told; a dash: nobody told.
  </p>
);
