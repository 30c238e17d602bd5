import type { FlyChoice, GuideLake } from "../../../build/guide/guide-schema.ts";
import { heatRule } from "../../../build/guide/heat-words.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { DAY_STATES, phaseName, stateOfPhase } from "../../../build/model/phase.ts";
import type { PageContext } from "../page-context.ts";
import { capital, inOneLine, Section, sizesText } from "../parts.tsx";
import { RigPicture } from "../rigs/rig-drawings.tsx";
import { bandText, type PhasePlan, type Rig, RigFacts } from "../rigs/rig-facts.tsx";
import { phaseToRigFor } from "./glance.tsx";

/** What stands open of each phase, first choices first; the rest is a tap away. */
const SHOWN_RIGS = 1;
const SHOWN_FLIES = 2;

const Fly = ({ fly, sheet }: { fly: FlyChoice; sheet: PageContext }) => (
  <li>
    <a href={sheet.to(ADDRESS.pattern(fly.pattern))}>{fly.name}</a> <strong>{sizesText(fly.sizes)}</strong>
    {fly.colours.length === 0 ? "" : `, ${fly.colours.join(" or ")}`}
    <span class="small">{inOneLine([fly.way, fly.why])}</span>
  </li>
);

function Rigs({ rigs, sheet }: { rigs: readonly Rig[]; sheet: PageContext }) {
  if (rigs.length === 0) return null;
  return (
    <ol class="rigs">
      {rigs.map((rig) => (
        <li>
          <h4>{capital(rig.way)}</h4>
          <RigFacts rig={rig} sheet={sheet} />
        </li>
      ))}
    </ol>
  );
}

const Flies = ({
  flies,
  start,
  sheet,
}: {
  flies: readonly FlyChoice[];
  start: number;
  sheet: PageContext;
}) => (
  <ol class="flies" start={start}>
    {flies.map((fly) => (
      <Fly fly={fly} sheet={sheet} />
    ))}
  </ol>
);

function Phase({
  plan,
  isOpen,
  lake,
  sheet,
}: {
  plan: PhasePlan;
  isOpen: boolean;
  lake: GuideLake;
  sheet: PageContext;
}) {
  const moreFlies = plan.flies.slice(SHOWN_FLIES);
  const moreRigs = plan.rigs.slice(SHOWN_RIGS);
  const isNow = stateOfPhase(plan.phase) === lake.now.state;
  return (
    <details class="phase fold" data-state={stateOfPhase(plan.phase)} open={isOpen}>
      <summary>
        <h3 id={`fish-${plan.phase}`}>
          {phaseName(plan.phase)}
          {isNow ? <span class="now"> now</span> : null}
        </h3>
        <span class="small">at {bandText(plan, sheet.guide.club.units)}</span>
      </summary>
      {plan.phase === "later-weeks" ? (
        <p>
          {heatRule(sheet.guide.club.units)}{" "}
          <a href={`${sheet.to(ADDRESS.launch(lake.slug))}#heat`}>How likely that is.</a>
        </p>
      ) : null}
      <Rigs rigs={plan.rigs.slice(0, SHOWN_RIGS)} sheet={sheet} />
      {moreRigs.length === 0 ? null : (
        <details class="more">
          <summary>Other methods: {moreRigs.map(({ way }) => way).join(", ")}</summary>
          <Rigs rigs={moreRigs} sheet={sheet} />
        </details>
      )}
      {plan.flies.length === 0 ? null : (
        <>
          <h4>Flies, the first choice first</h4>
          <Flies flies={plan.flies.slice(0, SHOWN_FLIES)} start={1} sheet={sheet} />
          {moreFlies.length === 0 ? null : (
            <details class="more">
              <summary>More flies: {moreFlies.map(({ name }) => name).join(", ")}</summary>
              <Flies flies={moreFlies} start={SHOWN_FLIES + 1} sheet={sheet} />
            </details>
          )}
        </>
      )}
    </details>
  );
}

/** What to fish: the phase that is on first and open, then those to come, then those past. */
export function Plan({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  if (lake.plan.length === 0) return null;
  const states = DAY_STATES.indexOf(lake.now.state);
  const turn = ({ phase }: PhasePlan): number =>
    (DAY_STATES.indexOf(stateOfPhase(phase)) - states + DAY_STATES.length) % DAY_STATES.length;
  const ordered = lake.plan.toSorted((a, b) => turn(a) - turn(b));
  return (
    <Section title="What to fish" id="fish">
      {ordered.map((plan, i) => (
        <Phase
          plan={plan}
          isOpen={i === 0 && stateOfPhase(plan.phase) === lake.now.state}
          lake={lake}
          sheet={sheet}
        />
      ))}
      <p>
        Set, shot, wait and anchor rope follow from the depth just plumbed:{" "}
        <a href={`${sheet.to(ADDRESS.rigs)}#plumb`}>the plumb table</a>, on the first of the rig cards. The
        first rig, drawn: <a href={`${sheet.to(ADDRESS.launch(lake.slug))}#rig`}>at the launch</a>.
      </p>
    </Section>
  );
}

/** The rig to start with in the phase at hand, drawn, and where its shot and wait are to be read. */
export function RigSection({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const phase = phaseToRigFor(lake);
  const plan = lake.plan.find((one) => one.phase === phase);
  const rig = plan?.rigs[0];
  if (plan === undefined || rig === undefined) return null;
  return (
    <Section title="Rig" id="rig">
      <p>
        {capital(rig.way)}, for {phaseName(plan.phase).toLowerCase()}, at the deepest set its leader serves
        there.
      </p>
      <div class="columns">
        <RigPicture rig={rig} band={plan.band} sheet={sheet} />
      </div>
    </Section>
  );
}
