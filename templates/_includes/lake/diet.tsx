import { shareBar } from "../../../build/draw/charts.ts";
import { screenInk } from "../../../build/draw/ink.ts";
import { renderSvg } from "../../../build/draw/svg.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { phaseName } from "../../../build/model/phase.ts";
import { catchRateNumber, catchText, rounded } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Cautions, capital, Fold, Harmless, Scroll } from "../parts.tsx";
import { phaseToRigFor } from "./glance.tsx";

type PhaseDiet = GuideLake["diet"][number];
type Rate = NonNullable<GuideLake["catches"]["all"]>;

/** Foods shown; the guide's data hold the rest. */
const SHOWN_FOODS = 5;

const percent = (share: number): string => rounded(100 * share);

/** "0.6 fish a rod-hour over 8 rod-hours (0.2–1.5)". */
const rateText = (rate: Rate): string =>
  `${catchText(rate)} (${catchRateNumber(rate.low)}–${catchRateNumber(rate.high)})`;

function Caught({ catches: { season, all } }: { catches: GuideLake["catches"] }) {
  if (all === null) return null;
  const told = [
    ...(season === null ? [] : [`This season ${rateText(season)}.`]),
    ...(season?.rodHours === all.rodHours ? [] : [`In all seasons ${rateText(all)}.`]),
  ];
  return (
    <p>
      {told.join(" ")} <span class="small">In brackets: the true rate, with 95 chances in 100.</span>
    </p>
  );
}

function Foods({ diet }: { diet: PhaseDiet }) {
  const foods = diet.foods.filter(({ fish }) => fish > 0).slice(0, SHOWN_FOODS);
  const isWeighed = diet.weighedFish > 0;
  if (foods.length === 0) return null;
  return (
    <Scroll label={`Food, ${phaseName(diet.phase)}`}>
      <table class="eaten">
        <thead>
          <tr>
            <th scope="col">Food</th>
            <th scope="col">Fish</th>
            <th scope="col">Share</th>
            <th scope="col">To expect</th>
            {isWeighed ? <th scope="col">IRI</th> : null}
          </tr>
        </thead>
        <tbody>
          {foods.map((row) => (
            <tr>
              <th scope="row">{capital(row.food)}</th>
              <td>{`${row.fish} of ${diet.fish}`}</td>
              <td>{percent(row.seen)} %</td>
              <td>
                <Harmless class="bar" html={renderSvg(shareBar(row, screenInk))} />{" "}
                {`${percent(row.low)}–${percent(row.high)} %`}
              </td>
              {isWeighed ? (
                <td>{row.importance === null ? "–" : `${percent(row.importance.iriPct / 100)} %`}</td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Phase({ diet }: { diet: PhaseDiet }) {
  const first = diet.foods.reduce<PhaseDiet["foods"][number] | undefined>(
    (best, row) => (row.seen > (best?.seen ?? 0) ? row : best),
    undefined,
  );
  return (
    <div>
      <h3>{phaseName(diet.phase)}</h3>
      <p>
        {first === undefined ? "Nothing found. " : `Mostly ${first.food}, ${percent(first.seen)} %. `}
        <span class="small">{diet.words}.</span>
      </p>
      <Foods diet={diet} />
    </div>
  );
}

/** What members caught here, and what the fish had in their throats, the phase at hand first. */
export function Diet({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { diet, catches } = lake;
  const first = phaseToRigFor(lake);
  if (diet.length === 0 && catches.all === null) return null;
  const isWeighed = diet.some(({ weighedFish }) => weighedFish > 0);
  return (
    <Fold
      title="Caught and eaten"
      id="eaten"
      answer={`${catches.all?.fish ?? 0} fish, ${diet.reduce((sum, { fish }) => sum + fish, 0)} samples`}
    >
      <Caught catches={catches} />
      {diet
        .toSorted((a, b) => Number(b.phase === first) - Number(a.phase === first))
        .map((one) => (
          <Phase diet={one} />
        ))}
      {diet.length === 0 ? null : (
        <p class="small">
          Share: of what the fish here had eaten, each fish counting about alike. To expect: in the next fish,
          with eight chances in ten; a few samples are drawn towards the club’s other lakes.
          {isWeighed ? " IRI: share of the Index of Relative Importance, by weight." : ""}
        </p>
      )}
      <Cautions cautions={sheet.guide.cautions.filter(({ id }) => id === "throat-sample")} sheet={sheet} />
    </Fold>
  );
}
