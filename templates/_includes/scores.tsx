import { calibrationPlot, MOMENT_WORDS } from "../../build/draw/charts.ts";
import { errorPlot } from "../../build/draw/error-plot.ts";
import { screenInk } from "../../build/draw/ink.ts";
import { renderSvg } from "../../build/draw/svg.ts";
import type { Guide } from "../../build/guide/guide-schema.ts";
import { power } from "../../build/model/power.ts";
import { chanceText, rounded } from "../../build/model/units.ts";
import { Harmless, Scroll, Section } from "./parts.tsx";

type BacktestRow = NonNullable<Guide["backtest"]>[number];

/** Past seasons' scores, and what was learnt of the club's reports. */
export type Scored = Pick<Guide, "backtest" | "clearDays" | "reporting">;

const days = (value: number): string => value.toFixed(1);

/** How openings were reported, as a table's caption says it. */
const REPORTED: Readonly<Record<BacktestRow["reporting"], string>> = {
  perfect: "each opening known on its day",
  dates4: "each opening known to within four days, three lakes in ten silent",
  delay4: "each opening reported four days late on average, three lakes in ten silent",
  offonly: "openings only, four days late on average",
};

const Scores = ({
  rows,
  reporting,
}: {
  rows: readonly BacktestRow[];
  reporting: BacktestRow["reporting"];
}) => (
  <Scroll label={`Scores of past seasons, ${REPORTED[reporting]}`}>
    <table>
      <caption>In days, {REPORTED[reporting]}</caption>
      <thead>
        <tr>
          <th scope="col">Reported open</th>
          <th scope="col">Seasons</th>
          <th scope="col">Lake-seasons</th>
          <th scope="col">Error, usual</th>
          <th scope="col">Error, shifted</th>
          <th scope="col">Error, guide</th>
          <th scope="col">CRPS, usual</th>
          <th scope="col">CRPS, shifted</th>
          <th scope="col">CRPS, guide</th>
          <th scope="col">50 % span held</th>
          <th scope="col">80 % span held</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ moment, seasons, n, baseline, shifted, model }) => (
          <tr>
            <th scope="row">{MOMENT_WORDS[moment]}</th>
            <td>{seasons}</td>
            <td>{n}</td>
            <td>{days(baseline.mae)}</td>
            <td>{days(shifted.mae)}</td>
            <td>
              <strong>{days(model.mae)}</strong>
            </td>
            <td>{days(baseline.crps)}</td>
            <td>{days(shifted.crps)}</td>
            <td>
              <strong>{days(model.crps)}</strong>
            </td>
            <td>{chanceText(model.cover50)}</td>
            <td>{chanceText(model.cover80)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </Scroll>
);

/** The plot's points as a table. */
function CalibrationTable({ rows }: { rows: readonly BacktestRow[] }) {
  const said = [...new Set(rows.flatMap(({ calibration }) => calibration.map((point) => point.said)))].sort(
    (a, b) => a - b,
  );
  return (
    <details>
      <summary>The same as a table</summary>
      <Scroll label="Said and came">
        <table>
          <thead>
            <tr>
              <th scope="col">Said</th>
              {rows.map(({ moment }) => (
                <th scope="col">Came, {MOMENT_WORDS[moment].toLowerCase()}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {said.map((chance) => (
              <tr>
                <th scope="row">{rounded(chance * 100)} %</th>
                {rows.map(({ calibration }) => {
                  const came = calibration.find((point) => point.said === chance)?.came;
                  return <td>{came === undefined ? "" : `${rounded(came * 100)} %`}</td>;
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}

/** The plainest figure: half of the lakes reported open, as clubs report. */
function InWords({ rows }: { rows: readonly BacktestRow[] }) {
  const half = rows.find(({ moment }) => moment === "50%");
  if (half === undefined) return null;
  const held = rounded(half.model.cover80 * 10);
  return (
    <p>
      With half of the reporting lakes reported open, the guide’s middle date for the others was off by{" "}
      <strong>{days(half.model.mae)} days</strong> on average; each lake’s usual date by{" "}
      {days(half.baseline.mae)}, and the usual date shifted by how early or late the open lakes were by{" "}
      {days(half.shifted.mae)}. Its span for eight chances in ten held about {held} in 10. From {half.n}{" "}
      lake-seasons of {half.seasons} springs.
    </p>
  );
}

/** How well past seasons of this club's records would have been called. */
export function Backtest({ rows }: { rows: Guide["backtest"] }) {
  if (rows === null || rows.length === 0) return null;
  const of = (reporting: BacktestRow["reporting"]) => rows.filter((row) => row.reporting === reporting);
  const [perfect, late] = [of("perfect"), of("delay4")];
  return (
    <Section title="How good it is" id="score">
      <p>
        Each past season was left out in turn and forecast from the others, once as if every opening had been
        known on its day, and once as clubs report: some lakes never, the others some days late. Lakes not yet
        reported open are scored, whether open or not. Error: how far the middle date was off, on average.
        CRPS: the same for the whole spread; lower is better. Usual: the lake’s own past mean and spread.
        Shifted: that mean, moved by how early or late the lakes reported open were on average.
      </p>
      <InWords rows={late} />
      <Harmless class="plot" html={renderSvg(errorPlot(late, screenInk))} />
      {late.length === 0 ? null : <Scores rows={late} reporting="delay4" />}
      <Scores rows={perfect} reporting="perfect" />
      <p>
        Before the first report no forecast of this kind beats the lake’s usual date. With every opening known
        on its day the spans hold less than they say early in the season on some sets of lakes: about 3 in 4
        instead of 4 in 5.
      </p>
      <h3>Does a chance come true as often as it says?</h3>
      <Harmless class="plot" html={renderSvg(calibrationPlot(perfect, screenInk))} />
      <CalibrationTable rows={perfect} />
    </Section>
  );
}

/** How well the end of turnover would have been called. */
export function ClearDays({ score }: { score: Guide["clearDays"] }) {
  if (score === null) return null;
  const { n, seasons, mae, cover50, cover80 } = score;
  return (
    <Section title="How well the end of turnover is called" id="clear-days">
      <p>
        Foretold on the day each lake opened, from its own earlier springs and no reading, the first clear day
        was {days(mae)} days off on average. The span for five chances in ten held {chanceText(cover50)} of
        them, the span for eight in ten {chanceText(cover80)}. From {n} records of turnover in {seasons}{" "}
        {seasons === 1 ? "spring" : "springs"}.
      </p>
    </Section>
  );
}

/** Seasons as a run: "2024", "2021 to 2025". */
function seasonsText(seasons: readonly number[]): string {
  const [first, last] = [seasons.at(0), seasons.at(-1)];
  return first === last ? `${first}` : `${first} to ${last}`;
}

/** Days after which the chance of no report is told. */
const TOLD_AFTER_D = 7;
const survival = (shape: number, theta_d: number): number => power(1 + TOLD_AFTER_D / theta_d, -shape);

/** The delays and visits that past springs' reports taught, in the club's own numbers. */
export function LearntReporting({ reporting: { delay, visits } }: Pick<Scored, "reporting">) {
  const chances = visits.watched.map(({ chance }) => chance).sort((a, b) => a - b);
  const [least, most] = [chances.at(0), chances.at(-1)];
  const after = `an opening of a lake that is looked at is still unreported a week later with a chance of ${chanceText(survival(delay.shape, delay.theta_d))}`;
  return (
    <Section title="What this club’s reports taught" id="reporting">
      <p>
        Delays:{" "}
        {delay.reports === 0
          ? `no past opening has both a day on record and a first report without an earlier look at ice, so nothing is learnt yet; ${after}.`
          : `from ${delay.reports} first ${delay.reports === 1 ? "report" : "reports"} of open water in ${seasonsText(delay.seasons)} with a day on record, ${days(delay.mean_d ?? 0)} days late on average; ${after} (law: shape ${rounded(delay.shape, 2)}, scale ${rounded(delay.theta_d, 2)} days).`}
      </p>
      <p>
        Visits:{" "}
        {visits.seasons.length === 0
          ? "no past spring has reports of ice, so nothing is learnt yet."
          : `from ${visits.reports} ${visits.reports === 1 ? "report" : "reports"} of ice in ${seasonsText(visits.seasons)}.`}{" "}
        {least === undefined || most === undefined
          ? ""
          : `Before this spring’s reports, an opening is taken to be looked at with a chance of ${chanceText(least)}${least === most ? "" : ` to ${chanceText(most)}`}, by lake.`}
      </p>
    </Section>
  );
}
