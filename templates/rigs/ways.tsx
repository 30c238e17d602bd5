import type { Guide } from "../../build/guide/guide-schema.ts";
import { phaseName } from "../../build/model/phase.ts";
import { depthRange } from "../../build/model/units.ts";
import { capital, Section } from "../parts.tsx";
import type { Sheet } from "../sheet.ts";
import { RigPicture } from "./drawings.tsx";
import { wayId } from "./places.ts";
import { RigFacts } from "./rig-facts.tsx";

type Ways = Guide["rigs"]["ways"];

function WayOfFishing({ way, sheet }: { way: Ways[number]; sheet: Sheet }) {
  const { rig, band, phase } = way;
  const id = wayId(rig.way);
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
          Hangs <a href={`#${wayId("indicator still")}`}>as drawn for a still indicator</a>.
        </p>
      ) : (
        <RigPicture rig={rig} band={band} sheet={sheet} />
      )}
    </section>
  );
}

/** Every way a pattern may be fished, its rig drawn and how to know that it is right. */
export const Ways = ({ sheet }: { sheet: Sheet }) =>
  sheet.guide.rigs.ways.length === 0 ? null : (
    <Section title="Ways of fishing" id="ways">
      <div class="columns">
        {sheet.guide.rigs.ways.map((way) => (
          <WayOfFishing way={way} sheet={sheet} />
        ))}
      </div>
    </Section>
  );
