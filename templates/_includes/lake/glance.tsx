import { daysAheadText, stateText } from "../../../build/guide/board.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { iceLeftText } from "../../../build/guide/ice-left.ts";
import { dayMonth, dayRange } from "../../../build/model/calendar.ts";
import { GOOD_STATES, type Phase, phaseName, STATE_WORDS, stateOfPhase } from "../../../build/model/phase.ts";
import { chanceText } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Cautions, capital, cautionsFor, Fact, ForecastNote, inOneLine, sizesText } from "../parts.tsx";
import { countdownText, landingText, setDepthText } from "../rigs/rig-facts.tsx";

/** The phase to rig for: the lake's own while it can be fished, or else the next good one. */
export const phaseToRigFor = ({ now, next, phases }: GuideLake): Phase | undefined =>
  now.state === "laterWeeks"
    ? "later-weeks"
    : (phases.find(({ phase }) => stateOfPhase(phase) === now.state && GOOD_STATES.includes(now.state))
        ?.phase ?? next?.phase);

/** The first rig of the phase to rig for, as short as it can be said. */
function FirstRig({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const phase = phaseToRigFor(lake);
  const plan = lake.plan.find((one) => one.phase === phase);
  const rig = plan?.rigs[0];
  if (plan === undefined || rig === undefined) return null;
  const depth = setDepthText(rig, sheet.guide.club.units);
  const countdown = countdownText(rig);
  const fly = plan.flies[0];
  return (
    <Fact name={depth === null ? "Fish" : "Set depth"}>
      <p class="big">{depth ?? (countdown === null ? capital(rig.way) : `Count ${countdown}`)}</p>
      <p>
        {inOneLine([
          `for ${phaseName(plan.phase).toLowerCase()}`,
          depth === null && countdown === null ? null : rig.way,
          rig.leader === null ? null : `leader ${rig.leader}`,
          landingText(rig),
          depth === null ? rig.line : null,
          fly === undefined ? null : `${fly.name} ${sizesText(fly.sizes)}`.trim(),
        ])}
      </p>
    </Fact>
  );
}

/** What it is now, what to do about it, what comes next: everything the drive is decided on. */
export function Glance({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const { now, iceOff, bestDays, status } = lake;
  const { name } = STATE_WORDS[now.state];
  const ice = iceLeftText(lake, sheet.guide.asOf);
  return (
    <section class="glance" aria-label="At a glance" data-days={daysAheadText(lake, sheet.guide)}>
      <dl>
        <Fact name="Now">
          <p class="big">
            {name} <span class="odds">{chanceText(now.chance)}</span>
          </p>
          <p>{stateText(now.state)}</p>
          {iceOff.status === "forecast" && now.state === "iced" ? (
            <p>
              Chance that it is open already: <span class="odds">{chanceText(iceOff.openByNow)}</span>.
            </p>
          ) : null}
        </Fact>
        {ice === null ? null : (
          <Fact name={`Ice, ${dayMonth(sheet.guide.asOf)}`}>
            <strong>{ice}</strong>
          </Fact>
        )}
        <FirstRig lake={lake} sheet={sheet} />
        {bestDays === null ? null : (
          <Fact name="Best days">
            <p class="big">
              {dayRange(bestDays.from, bestDays.to)} <span class="odds">{chanceText(bestDays.chance)}</span>
            </p>
            <p data-until={bestDays.to} data-after="These days are past.">
              Chance of a good day, on each of them.
            </p>
          </Fact>
        )}
        <Fact name="Next">
          <p>{status.next}</p>
        </Fact>
      </dl>
      <Cautions cautions={cautionsFor(sheet.guide, now.state)} sheet={sheet} />
      <ForecastNote sheet={sheet}>Dates in brackets hold with eight chances in ten. </ForecastNote>
    </section>
  );
}

/** "Ice went off on 12 May": for descriptions. */
export const lakeInBrief = ({ status, iceOff }: GuideLake): string =>
  `${status.now} ${status.next}${iceOff.status === "observed" ? "" : ` Ice-off about ${dayMonth(iceOff.p50)}.`}`;
