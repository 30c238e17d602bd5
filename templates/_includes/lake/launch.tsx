import type { BareLake, GuideLake } from "../../../build/guide/guide-schema.ts";
import { heatLines, heatRule } from "../../../build/guide/heat-words.ts";
import { iceLeftText } from "../../../build/guide/ice-left.ts";
import { dayMonth } from "../../../build/model/calendar.ts";
import { STATE_WORDS } from "../../../build/model/phase.ts";
import { chanceText, depthText, temperatureText, type UnitSystem } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Scroll, Section } from "../parts.tsx";

type LaunchTable = GuideLake["launch"];
type LaunchRow = LaunchTable["rows"][number];
type LaunchCell = LaunchRow["cells"][number];

const CLARITY = { murky: "murky (about 65 % of usual)", usual: "as clear as usual" } as const;

function rowText({ clarity, below }: LaunchRow, depth_m: number, units: UnitSystem): string {
  const seen = clarity === null ? "clarity not read" : CLARITY[clarity];
  if (below === null) return `${seen}, surface only`;
  return `${seen}, ${below} at ${depthText(depth_m, units)}`;
}

function cellText({ heat, states, mixedSigns }: LaunchCell): string {
  if (heat === "stop") return "STOP: leave the trout alone";
  const named = states.map(
    ({ state, chance }) =>
      `${STATE_WORDS[state].name.toLowerCase()} ${chanceText(chance).replaceAll(" ", "\u00a0")}`,
  );
  const said = mixedSigns ? `mixed signs: ${named.join(" or ")}` : named.join(" or ");
  return heat === null ? said : `${heat}; ${said}`;
}

/** Beside a state of open water, the ice that may be left. */
export function IceLeft({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { asOf } = sheet.guide;
  const ice = iceLeftText(lake, asOf);
  return ice === null ? null : (
    <p>
      {dayMonth(asOf)}: <strong>{ice}</strong>
    </p>
  );
}

/** What a thermometer, a look at the water and a second depth say at the launch. */
export function Launch({ lake, sheet }: { lake: Pick<GuideLake | BareLake, "launch">; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  const { rows, depth_m, counted } = lake.launch;
  const [first] = rows;
  return (
    <Section title="At the launch" id="launch">
      <Scroll label="State of the lake by what is read at the launch">
        <table class="launch">
          <caption>
            {counted
              ? `What the water says on ${dayMonth(sheet.guide.asOf)} and the days about it, with the days since ice-off.`
              : "What the water says by itself: no ice-off is counted from."}{" "}
            Surface temperature across, what else you read down.
          </caption>
          <thead>
            <tr>
              <th scope="col">Surface</th>
              {first?.cells.map(({ surface_C }) => (
                <th scope="col">{temperatureText(surface_C, units)}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr>
                <th scope="row">{rowText(row, depth_m, units)}</th>
                {row.cells.map((cell) => (
                  <td>{cellText(cell)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="small">{heatRule(units)} The rules of the water go first.</p>
    </Section>
  );
}

/** How likely the surface is too warm for trout to be played, on the days to come. */
export function WarmWater({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  return (
    <Section title="Warm water" id="heat">
      {heatLines(lake, sheet.guide.asOf, sheet.guide.club.units).map((line) => (
        <p>{line}</p>
      ))}
      <p class="small">A thermometer decides. Local closures come first.</p>
    </Section>
  );
}
