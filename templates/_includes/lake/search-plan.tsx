import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { phaseName } from "../../../build/model/phase.ts";
import { depthText, elapsedText, rounded } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Section } from "../parts.tsx";
import { phaseToRigFor } from "./glance.tsx";

type Search = GuideLake["search"][number];
type Plan = Search["byRods"][number];

const rodsText = (rods: number): string => (rods === 1 ? "One rod" : rods === 2 ? "Two rods" : "Three rods");

/** The places in the order fished, each depth and fly with a box to tick and when to leave it. */
function RodPlan({
  plan: { rods, steps },
  lake,
  sheet,
}: {
  plan: Plan;
  lake: GuideLake;
  sheet: PageContext;
}) {
  const places = [...new Set(steps.map(({ place }) => place))];
  return (
    <ol class="rigs">
      {places.map((place) => {
        const at = lake.places.find(({ name }) => name === place)?.at ?? null;
        return (
          <li>
            <h5>{at === null ? place : `${place}, ${at}`}</h5>
            <ul class="plain search">
              {steps
                .filter((step) => step.place === place)
                .map(({ rod, depth_m, pattern, name, way, until_min }) => (
                  <li>
                    <label>
                      <input type="checkbox" /> {rods === 1 ? null : `Rod ${rod}: `}
                      <strong>{depthText(depth_m, sheet.guide.club.units)}</strong>{" "}
                      <a href={sheet.to(ADDRESS.pattern(pattern))}>{name}</a>, {way}, until{" "}
                      <strong>{elapsedText(until_min)}</strong>
                    </label>
                  </li>
                ))}
            </ul>
          </li>
        );
      })}
    </ol>
  );
}

/** One phase: two rods open, the other numbers a tap away. */
function PhaseSearch({ search, lake, sheet }: { search: Search; lake: GuideLake; sheet: PageContext }) {
  const open = search.byRods.find(({ rods }) => rods === 2) ?? search.byRods[0];
  return (
    <>
      <h3>{phaseName(search.phase)}</h3>
      {open === undefined ? null : (
        <>
          <h4>{rodsText(open.rods)}</h4>
          <RodPlan plan={open} lake={lake} sheet={sheet} />
        </>
      )}
      {search.byRods
        .filter((plan) => plan !== open)
        .map((plan) => (
          <details>
            <summary>{rodsText(plan.rods)}</summary>
            <RodPlan plan={plan} lake={lake} sheet={sheet} />
          </details>
        ))}
    </>
  );
}

/** The order in which to try the lake's places, depths and flies, the phase at hand first. */
export function SearchSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const first = lake.search[0];
  if (first === undefined) return null;
  const phase = phaseToRigFor(lake);
  const ordered = lake.search.toSorted((a, b) => Number(b.phase === phase) - Number(a.phase === phase));
  return (
    <Section title="Where to begin, when to leave" id="search">
      <p>
        Times count from the first cast of a day of {elapsedText(first.day_min)}.{" "}
        <strong>A take: stay, and copy that rod.</strong> Nothing by the time given: leave. A change of depth
        or fly costs about {rounded(first.change_min)} min, a move {rounded(first.move_min)} min. How many
        rods you may use: local rules come first.
      </p>
      {ordered.map((search) => (
        <PhaseSearch search={search} lake={lake} sheet={sheet} />
      ))}
      <p class="small">
        A plan from common practice: likelier depths and flies get more time, none gets under 20 minutes. The
        club’s reports name no places, so it learns only which flies do well.
      </p>
    </Section>
  );
}
