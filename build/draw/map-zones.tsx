import type { JSX } from "preact";
import type { GuideLake } from "../guide/guide-schema.ts";
import { stateOfPhase } from "../model/phase.ts";
import { type Ring, RingHatching } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { linePath, type MapFrame } from "./map-frame.ts";

export type Zone = GuideLake["place"]["zones"][number];

/** Where to fish in one phase, and the zones drawn over it that share ground with it. */
export interface DrawnZone {
  readonly zone: Zone;
  readonly rings: readonly Ring[];
  readonly under: readonly Pick<DrawnZone, "zone" | "rings">[];
}

const shareDepths = (one: Zone, other: Zone): boolean =>
  Math.max(one.from_m, other.from_m) < Math.min(one.to_m, other.to_m);

/** The zones in the drawing, the first lowest. */
export function drawnZones(zones: readonly Zone[], { toSpot }: MapFrame): DrawnZone[] {
  const drawn = zones.map((zone) => ({
    zone,
    rings: zone.polygons.flatMap((polygon) => polygon.map((ring) => ring.map(toSpot))),
  }));
  return drawn.map((one, i) => ({
    ...one,
    under: drawn.slice(i + 1).filter(({ zone }) => shareDepths(one.zone, zone)),
  }));
}

export const ringsPath = (rings: readonly Ring[]): string => rings.map(linePath).join("");

/** A zone's ground and hatching. */
export const Area = ({ zone, rings, ink }: { zone: Zone; rings: readonly Ring[]; ink: Ink }): JSX.Element => {
  const state = stateOfPhase(zone.phase);
  return (
    <>
      <path
        d={ringsPath(rings)}
        fill={ink.states[state].ground}
        fill-rule="evenodd"
        stroke={ink.line}
        stroke-width={0.5}
      />
      <RingHatching state={state} rings={rings} ink={ink} />
    </>
  );
};

/** A zone's hatching where another is drawn over it, in the ink that shows there. */
export function SharedHatching({
  zone,
  rings,
  over,
  ink,
}: Pick<DrawnZone, "zone" | "rings"> & { over: DrawnZone["under"][number]; ink: Ink }): JSX.Element {
  const state = stateOfPhase(zone.phase);
  const hatch = ink.states[stateOfPhase(over.zone.phase)].words;
  const states = { ...ink.states, [state]: { ...ink.states[state], hatch } };
  return <RingHatching state={state} rings={rings} within={over.rings} ink={{ ...ink, states }} />;
}
