import { hasRigs } from "../build/guide/guide-contents.ts";
import type { Guide } from "../build/guide/guide-schema.ts";
import { REPORT_SLIP, rigFiles } from "../build/guide/print-files.ts";
import { ADDRESS } from "../build/model/addresses.ts";
import { phaseName } from "../build/model/phase.ts";
import {
  cutLengthText,
  depthRange,
  depthText,
  diameterText,
  rounded,
  sinkRateText,
  smallLengthText,
} from "../build/model/units.ts";
import { Page } from "./_includes/layout.tsx";
import type { PageContext } from "./_includes/page-context.ts";
import type { Rendered } from "./_includes/page-template.ts";
import { capital, Fact, PrintList, Scroll, Section } from "./_includes/parts.tsx";
import { Drifting, Naked, PlumbTables, Swing, TippetForHook } from "./_includes/rigs/gear-tables.tsx";
import { LeaderDrawing, LeanPicture, RigPicture, SwingPicture } from "./_includes/rigs/rig-drawings.tsx";
import { leaderId, methodId, RigFacts } from "./_includes/rigs/rig-facts.tsx";

type Methods = Guide["rigs"]["ways"];

function FishingMethod({ way, sheet }: { way: Methods[number]; sheet: PageContext }) {
  const { rig, band, phase } = way;
  const id = methodId(rig.way);
  return (
    <section class="phase" aria-labelledby={id}>
      <h3 id={id}>{capital(rig.way)}</h3>
      <p>
        In {phaseName(phase).toLowerCase()}, where nobody has plumbed, over{" "}
        {depthRange(band.from_m, band.to_m, sheet.guide.club.units)} of water.
      </p>
      <RigFacts rig={rig} sheet={sheet} />
      {rig.way === "indicator twitched" ? (
        <p>
          Hangs <a href={`#${methodId("indicator still")}`}>as drawn for a still indicator</a>.
        </p>
      ) : (
        <RigPicture rig={rig} band={band} sheet={sheet} />
      )}
    </section>
  );
}

/** Every method a pattern may be fished with, its rig drawn and how to know that it is right. */
const FishingMethods = ({ sheet }: { sheet: PageContext }) =>
  sheet.guide.rigs.ways.length === 0 ? null : (
    <Section title="Methods" id="ways">
      <div class="columns">
        {sheet.guide.rigs.ways.map((way) => (
          <FishingMethod way={way} sheet={sheet} />
        ))}
      </div>
    </Section>
  );

type Leader = Guide["rigs"]["leaders"][number];
type Line = Guide["rigs"]["lines"][number];

function LeaderBoard({ leader, sheet }: { leader: Leader; sheet: PageContext }) {
  const { guide } = sheet;
  const { units } = guide.club;
  return (
    <section class="phase" id={leaderId(guide, leader.name)} aria-label={`Leader ${leader.name}`}>
      <h3>{leader.name}</h3>
      <p>
        {leader.serves === null ? (
          <>Serves no set depth: there is no knot-free line for the indicator to slide on.</>
        ) : (
          <>
            For set depths of <strong>{depthRange(leader.serves.from_m, leader.serves.to_m, units)}</strong>
          </>
        )}
      </p>
      <dl>
        {leader.sections.map(({ part, length_m, size, diameter_mm }) => (
          <Fact name={capital(part)}>
            {cutLengthText(length_m, units)} of <strong>{size}</strong>, {diameterText(diameter_mm, units)}
          </Fact>
        ))}
        <Fact name="Whole">
          {depthText(leader.total_m, units)}, of which knotted {depthText(leader.knotted_m, units)}
        </Fact>
        <Fact name="Tied">{leader.tied === 0 ? "none yet" : `${leader.tied} on boards`}</Fact>
        {leader.warnings.map((warning) => (
          <Fact name="Mind">{warning}</Fact>
        ))}
      </dl>
      <LeaderDrawing leader={leader} sheet={sheet} />
    </section>
  );
}

/** "Clear intermediate, sinks 1.5 in/s"; the kind only where the name does not say it. */
const lineText = ({ name, kind, sinkRate_mps, tip_m }: Line, { guide }: PageContext): string =>
  [
    name,
    ...(name.toLowerCase().includes(kind) ? [] : [kind]),
    ...(sinkRate_mps === null ? [] : [`sinks ${sinkRateText(sinkRate_mps, guide.club.units)}`]),
    ...(tip_m === null ? [] : [`hangs ${depthText(tip_m, guide.club.units)} deep at most`]),
  ].join(", ");

/** Seconds to count before the retrieve: depths down, lines across. */
function Countdowns({ sheet }: { sheet: PageContext }) {
  const { rigs, club } = sheet.guide;
  const sinking = rigs.lines.filter(({ counts }) => counts.length > 0);
  const depths_m = [...new Set(sinking.flatMap(({ counts }) => counts.map(({ depth_m }) => depth_m)))].sort(
    (a, b) => a - b,
  );
  if (sinking.length === 0) return null;
  return (
    <Scroll label="Seconds to count before the retrieve">
      <table class="days">
        <caption>
          Seconds to count before the retrieve, and the pull from a 50 ft cast (15 m) at which the line keeps
          its depth: slower it sinks on, faster it climbs
        </caption>
        <thead>
          <tr>
            <th scope="col">Depth</th>
            {sinking.map(({ name }) => (
              <th scope="col">{name}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {depths_m.map((depth_m) => (
            <tr>
              <th scope="row">{depthText(depth_m, club.units)}</th>
              {sinking.map(({ counts }) => {
                const count = counts.find((one) => one.depth_m === depth_m);
                const seconds = count?.seconds ?? null;
                return (
                  <td>
                    {seconds === null ? "–" : `${rounded(seconds)} s${count?.long === true ? ", long" : ""}`}
                    {count === undefined || count.hold_mps === null ? null : (
                      <span class="under">holds at {smallLengthText(count.hold_mps, club.units)}/s</span>
                    )}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

const Tippet = ({ sheet }: { sheet: PageContext }) => (
  <dl class="tippet">
    {sheet.guide.rigs.tippet.map(({ size, diameter_mm }) => (
      <Fact name={size}>{diameterText(diameter_mm, sheet.guide.club.units)}</Fact>
    ))}
  </dl>
);

interface Data {
  readonly guide: Guide;
}

export const data = {
  permalink: ({ guide }: Data) => hasRigs(guide) && ADDRESS.rigs,
  inputs: () => ({}),
} as const;

/** Leaders, lines and tippet, as the club owns them. */
export function render({ sheet }: Rendered<typeof data>) {
  const { rigs, club } = sheet.guide;
  const { offBottom } = rigs;
  return (
    <Page
      sheet={sheet}
      title="Rigs"
      description="What to set and pinch on by the depth plumbed, leaders and the depths they reach, counts, swing and tippet."
    >
      <h1>Rigs</h1>
      <p class="lead">
        Plumb first, then hang the fly{" "}
        <strong>
          {smallLengthText(offBottom.from_m, club.units).replace(/ .*/, "")} to{" "}
          {smallLengthText(offBottom.to_m, club.units)}
        </strong>{" "}
        above the bottom.
      </p>
      {rigs.plumb.depths.length === 0 ? null : (
        <Section title="Plumb and go" id="plumb">
          <PlumbTables plumb={rigs.plumb} sheet={sheet} />
          <LeanPicture lean={rigs.lean} sheet={sheet} />
        </Section>
      )}
      {rigs.leaders.length === 0 ? null : (
        <Section title="Leaders" id="leaders">
          <div class="columns">
            {rigs.leaders.map((leader) => (
              <LeaderBoard leader={leader} sheet={sheet} />
            ))}
          </div>
        </Section>
      )}
      <FishingMethods sheet={sheet} />
      {rigs.lines.length === 0 ? null : (
        <Section title="Lines" id="lines">
          <ul>
            {rigs.lines.map((line) => (
              <li>{lineText(line, sheet)}</li>
            ))}
          </ul>
          <Countdowns sheet={sheet} />
        </Section>
      )}
      {rigs.drifting === null ? null : (
        <Section title="Drifting boat" id="drifting">
          <Drifting drifting={rigs.drifting} sheet={sheet} />
        </Section>
      )}
      {rigs.naked.rows.length === 0 ? null : (
        <Section title="Naked line" id="naked">
          <Naked naked={rigs.naked} sheet={sheet} />
        </Section>
      )}
      {rigs.swing.rows.length === 0 ? null : (
        <Section title="Rod holder: dead still or swing" id="swing">
          <Swing swing={rigs.swing} anchor={rigs.anchor} sheet={sheet} />
          <SwingPicture sheet={sheet} />
        </Section>
      )}
      {rigs.tippet.length === 0 ? null : (
        <Section title="Tippet" id="tippet">
          <Tippet sheet={sheet} />
          <TippetForHook rows={rigs.tippetFor} />
        </Section>
      )}
      <PrintList files={[...rigFiles(sheet.guide), REPORT_SLIP]} sheet={sheet} />
      <p class="small">
        Worked out for a rod of {depthText(rigs.rod_m, club.units)}. Planning aids: plumb, count and look
        again on the water.
      </p>
    </Page>
  );
}
