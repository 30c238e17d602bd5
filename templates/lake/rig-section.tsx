import type { GuideLake } from "../../build/guide/guide-schema.ts";
import { phaseName } from "../../build/model/phase.ts";
import { capital, Section } from "../parts.tsx";
import { LeanPicture, RigPicture } from "../rigs/drawings.tsx";
import type { Sheet } from "../sheet.ts";
import { phaseToRigFor } from "./glance.tsx";

/** The rig to start with in the phase at hand, drawn, and how one leans in the drift here. */
export function RigDrawn({ lake, sheet }: { lake: GuideLake; sheet: Sheet }) {
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
        <LeanPicture shot={lake.shot} sheet={sheet} />
      </div>
    </Section>
  );
}
