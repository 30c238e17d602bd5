import type { Guide, GuideLake } from "../../build/guide/guide-schema.ts";
import { depthRange, depthText, rounded } from "../../build/model/units.ts";

/** What to fish in one phase of one lake. */
export type PhasePlan = GuideLake["plan"][number];
/** One way of fishing it. */
export type Rig = PhasePlan["rigs"][number];

type Units = Guide["club"]["units"];

/** "8–12 ft"; null where the rig has no set depth. */
export const setDepthText = ({ setDepth }: Rig, units: Units): string | null =>
  setDepth === null ? null : depthRange(setDepth.from_m, setDepth.to_m, units);

/** "16–30 s". */
export function countdownText({ countdown }: Rig): string | null {
  if (countdown === null) return null;
  const [from, to] = [rounded(countdown.from_s), rounded(countdown.to_s)];
  return from === to ? `${from} s` : `${from}–${to} s`;
}

/** Whether the indicator may be fixed, in words that say what to do. */
export const holdText = ({ hold }: Rig): string | null =>
  hold === null ? null : hold === "slip" ? "slip indicator" : "fixed indicator";

/** "8–12 ft, plumbed by the club". */
export const bandText = ({ band }: PhasePlan, units: Units): string =>
  `${band.from_m === 0 ? `down to ${depthText(band.to_m, units)}` : depthRange(band.from_m, band.to_m, units)}, ${
    band.source === "club" ? "plumbed by the club" : "the usual depth, not plumbed here"
  }`;
