import { daysAheadText, stateText } from "../../../build/guide/board.ts";
import type { Elsewhere } from "../../../build/guide/elsewhere.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { iceLeftText } from "../../../build/guide/ice-left.ts";
import { ADDRESS } from "../../../build/model/addresses.ts";
import { dayMonth, dayRange } from "../../../build/model/calendar.ts";
import { GOOD_STATES, type Phase, phaseName, STATE_WORDS, stateOfPhase } from "../../../build/model/phase.ts";
import { chanceText } from "../../../build/model/units.ts";
import type { PageContext } from "../page-context.ts";
import { Cautions, cautionsFor, Fact, ForecastNote, inOneLine, sizesText } from "../parts.tsx";
import { countdownText, landingText, setDepthText } from "../rigs/rig-facts.tsx";
import { weekendText } from "../weekend-words.ts";

/** The phase to rig for: the lake's own while it can be fished, or else the next good one. */
export const phaseToRigFor = ({ now, next, phases }: GuideLake): Phase | undefined =>
  now.state === "laterWeeks"
    ? "later-weeks"
    : (phases.find(({ phase }) => stateOfPhase(phase) === now.state && GOOD_STATES.includes(now.state))
        ?.phase ?? next?.phase);

/** The first rig of the phase to rig for, as short as it can be said: the phase is named before any depth. */
function FirstRig({ lake, sheet }: { lake: GuideLake; sheet: PageContext }) {
  const phase = phaseToRigFor(lake);
  const plan = lake.plan.find((one) => one.phase === phase);
  const rig = plan?.rigs[0];
  if (plan === undefined || rig === undefined) return null;
  const depth = setDepthText(rig, sheet.guide.club.units);
  const countdown = countdownText(rig);
  const fly = plan.flies[0];
  const isOn = stateOfPhase(plan.phase) === lake.now.state;
  const from = lake.phases.find((one) => one.phase === plan.phase)?.from.p50;
  const when = isOn || from === undefined ? "now" : `from ${dayMonth(from)}`;
  const set = depth !== null ? `set ${depth}` : countdown === null ? rig.way : `count ${countdown}`;
  return (
    <Fact name="Rig">
      <p class={isOn ? "lead-depth" : undefined}>
        {phaseName(plan.phase)}, {when}: <strong>{set}</strong>
      </p>
      <p class="small">
        {inOneLine([
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

/** Where else this weekend, by name. */
function ElsewhereFact({ elsewhere, sheet }: { elsewhere: Elsewhere | null; sheet: PageContext }) {
  if (elsewhere === null) return null;
  const { days, lakes } = elsewhere;
  return (
    <Fact name="Elsewhere">
      <p class="elsewhere" data-until={days.to} data-after="For this weekend see the season’s page.">
        {weekendText([days.from, days.to])}:{" "}
        {lakes.length === 0
          ? "no road to another lake is open."
          : lakes.map(({ slug, name, good }, i) => (
              <>
                {i === 0 ? "" : ", or "}
                <a href={sheet.to(ADDRESS.lake(slug))}>{name}</a> {chanceText(good)}
              </>
            ))}
      </p>
    </Fact>
  );
}

/** The lake's own hazards, boxed where the drive is decided on. */
const OwnHazards = ({ hazards }: Pick<GuideLake, "hazards">) =>
  hazards.length === 0 ? null : (
    <ul class="hazards">
      {hazards.map((hazard) => (
        <li>{hazard}</li>
      ))}
    </ul>
  );

/** Whether to go, when, where else, and what can go wrong there: everything the drive is decided on. */
export function Glance({
  lake,
  elsewhere,
  sheet,
}: {
  lake: GuideLake;
  elsewhere: Elsewhere | null;
  sheet: PageContext;
}) {
  const { now, iceOff, bestDays, status, access } = lake;
  const ice = iceLeftText(lake, sheet.guide.asOf);
  const opens = access?.opens ?? null;
  const isShut = opens !== null && opens > sheet.guide.asOf;
  return (
    <section
      class="glance"
      aria-label="At a glance"
      data-days={daysAheadText(lake, sheet.guide)}
      data-opens={isShut ? opens : undefined}
    >
      <dl>
        <Fact name="Now">
          <p class="big">
            {isShut ? `Not yet: road opens ${dayMonth(opens)}` : STATE_WORDS[now.state].verdict}
            {isShut ? null : <span class="odds"> {chanceText(now.chance)}</span>}
          </p>
          <p>
            {isShut ? `${STATE_WORDS[now.state].name} ${chanceText(now.chance)}. ` : ""}
            {isShut ? "" : stateText(now.state)}
            {now.state === "iceOff" ? " Stay off what ice is left." : ""}
          </p>
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
        {bestDays === null ? null : (
          <Fact name="Best days">
            <p class="big">
              {dayRange(bestDays.from, bestDays.to)} <span class="odds">{chanceText(bestDays.chance)}</span>
            </p>
            <p class="small" data-until={bestDays.to} data-after="These days are past.">
              Chance of a good day, on each of them.
            </p>
          </Fact>
        )}
        <ElsewhereFact elsewhere={elsewhere} sheet={sheet} />
        <FirstRig lake={lake} sheet={sheet} />
        <Fact name="Next">
          <p>{status.next}</p>
        </Fact>
      </dl>
      <OwnHazards hazards={lake.hazards} />
      <Cautions cautions={cautionsFor(sheet.guide, now.state)} sheet={sheet} />
      <ForecastNote sheet={sheet}>Dates in brackets hold with eight chances in ten. </ForecastNote>
    </section>
  );
}

/** "Ice went off on 12 May": for descriptions. */
export const lakeInBrief = ({ status, iceOff }: GuideLake): string =>
  `${status.now} ${status.next}${iceOff.status === "observed" ? "" : ` Ice-off about ${dayMonth(iceOff.p50)}.`}`;
