import { ANCHOR_TITLE, anchorPlan } from "../../../build/draw/anchor-plan.tsx";
import { screenInk } from "../../../build/draw/ink.ts";
import type { GuideLake } from "../../../build/guide/guide-schema.ts";
import { Cautions, Drawing, Fact, Section } from "../../parts.tsx";
import type { Sheet } from "../../sheet.ts";

const WIDTH = 220;
/** Cautions that belong beside anchors. */
const ANCHOR_CAUTIONS = ["anchor"];

/** How a boat lies at anchor, and where its rods then point; beside the winds of a lake with a shoreline. */
export function AnchorSection({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
  if (lake.place.wind === null) return null;
  const { anchor } = sheet.guide.rigs;
  return (
    <Section title="At anchor" id="anchor">
      <Cautions
        cautions={sheet.guide.cautions.filter(({ id }) => ANCHOR_CAUTIONS.includes(id))}
        sheet={sheet}
      />
      <div class="columns">
        <Drawing svg={anchorPlan({ ink: screenInk, width: WIDTH })} words={ANCHOR_TITLE} />
        <dl>
          {anchor.ways.map(({ name, words }) => (
            <Fact name={name}>{words}</Fact>
          ))}
          {anchor.swing.map(({ rod_s, words }) => (
            <Fact name={`Swing, one rod length in ${rod_s} s`}>{words}</Fact>
          ))}
        </dl>
      </div>
      <p class="small">
        {anchor.note} Rods, angles from straight downwind: wind from W, rods point E, and so round the
        compass. Time one swing before you trust the table.
      </p>
    </Section>
  );
}
