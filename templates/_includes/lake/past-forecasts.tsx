import { screenInk } from "../../../build/draw/ink.ts";
import { pastStrip } from "../../../build/draw/past-strip.ts";
import { renderSvg } from "../../../build/draw/svg.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { dayMonth } from "../../../build/model/calendar.ts";
import { Harmless, Scroll, Section } from "../parts.tsx";

type Past = GuideLake["pastForecasts"];

const isHeld = ({ forecast, opened }: Past[number]): boolean =>
  forecast !== null && forecast.p10 <= opened && opened <= forecast.p90;

/** True for a lake with past springs to show. */
export const hasPastSprings = ({ pastForecasts }: Pick<GuideLake, "pastForecasts">): boolean =>
  pastForecasts.some(({ forecast }) => forecast !== null);

/** How the guide's own forecasts of past springs would have come out; shown with five of them or more. */
export function PastForecasts({ past }: { past: Past }) {
  const told = past.filter(({ forecast }) => forecast !== null);
  return (
    <Section title="Past springs, as the guide would have said" id="past">
      <p>
        Each spring was left out and forecast from the others, standing on the day the club’s first lake
        opened, this one still iced. The box holds eight chances in ten, the line in it is the middle day, the
        diamond the day the lake opened; a hollow one was itself the first to open. The box held{" "}
        <strong>
          {told.filter(isHeld).length} of {told.length}
        </strong>{" "}
        openings.
      </p>
      <Harmless class="plot" html={renderSvg(pastStrip(past, screenInk))} />
      <details>
        <summary>The same as a table</summary>
        <Scroll label="Past springs">
          <table>
            <thead>
              <tr>
                <th scope="col">Spring</th>
                <th scope="col">Forecast on</th>
                <th scope="col">Middle day</th>
                <th scope="col">Eight chances in ten</th>
                <th scope="col">Opened</th>
              </tr>
            </thead>
            <tbody>
              {past.map(({ season, opened, forecast }) => (
                <tr>
                  <th scope="row">{season}</th>
                  <td>{forecast === null ? "first to open" : dayMonth(forecast.from)}</td>
                  <td>{forecast === null ? "" : dayMonth(forecast.p50)}</td>
                  <td>{forecast === null ? "" : `${dayMonth(forecast.p10)} to ${dayMonth(forecast.p90)}`}</td>
                  <td>{dayMonth(opened)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </Section>
  );
}
