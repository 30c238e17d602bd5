import { calibrationPlot, MOMENT_WORDS } from "../build/draw/calibration-plot.tsx";
import { screenInk } from "../build/draw/ink.ts";
import type { Guide } from "../build/guide/guide-schema.ts";
import { chanceText, rounded } from "../build/model/units.ts";
import { Harmless, Scroll, Section } from "./parts.tsx";

type BacktestRow = NonNullable<Guide["backtest"]>[number];

const days = (value: number): string => value.toFixed(1);

const Scores = ({ rows }: { rows: readonly BacktestRow[] }) => (
  <Scroll label="Scores of past seasons">
    <table>
      <caption>Scores of past seasons, in days</caption>
      <thead>
        <tr>
          <th scope="col">Moment</th>
          <th scope="col">Lake-seasons</th>
          <th scope="col">Error, usual</th>
          <th scope="col">Error, guide</th>
          <th scope="col">CRPS, usual</th>
          <th scope="col">CRPS, guide</th>
          <th scope="col">50 % span held</th>
          <th scope="col">80 % span held</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ moment, n, baseline, model }) => (
          <tr>
            <th scope="row">{MOMENT_WORDS[moment]}</th>
            <td>{n}</td>
            <td>{days(baseline.mae)}</td>
            <td>
              <strong>{days(model.mae)}</strong>
            </td>
            <td>{days(baseline.crps)}</td>
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

/** How well past seasons of this club's records would have been called. */
export function Backtest({ rows }: { rows: Guide["backtest"] }) {
  if (rows === null || rows.length === 0) return null;
  return (
    <Section title="How good it is" id="score">
      <p>
        Each past season was left out in turn and forecast from the others. Error: how far the middle date was
        off, on average. CRPS: the same for the whole spread; lower is better. Usual: the lake’s own past mean
        and spread.
      </p>
      <Scores rows={rows} />
      <h3>Does a chance come true as often as it says?</h3>
      <Harmless class="plot" html={calibrationPlot(rows, screenInk)} />
      <CalibrationTable rows={rows} />
    </Section>
  );
}
