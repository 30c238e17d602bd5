import * as polyclip from "polyclip-ts";
import type { JSX } from "preact";
import type { GuideLake } from "../guide/guide-schema.ts";
import { stateOfPhase } from "../model/phase.ts";
import { type Ring, RingHatching } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { type DrawnMap, linePath, type MapFrame } from "./map-frame.ts";

export type Zone = GuideLake["place"]["zones"][number];

type Polygons = ReturnType<typeof polyclip.intersection>;

/** Where to fish in one phase, and where that lies over another phase's ground. */
export interface DrawnZone {
  readonly zone: Zone;
  readonly rings: readonly Ring[];
  /** Ground of the zones drawn over it that is this zone's as well. */
  readonly shared: readonly { readonly over: Zone; readonly rings: readonly Ring[] }[];
}

/** The zones in the drawing, cut off at the shore, the first lowest. */
export function drawnZones(zones: readonly Zone[], map: DrawnMap, { toSpot }: MapFrame): DrawnZone[] {
  const inWater = zones.map((zone) => ({
    zone,
    polygons: polyclip.intersection(zone.polygons, map.shoreline),
  }));
  const ringsOf = (polygons: Polygons): Ring[] =>
    polygons.flatMap((polygon) => polygon.map((ring) => ring.map(toSpot)));
  return inWater.map(({ zone, polygons }, i) => ({
    zone,
    rings: ringsOf(polygons),
    shared: inWater.slice(i + 1).flatMap((above) => {
      const rings = ringsOf(polyclip.intersection(polygons, above.polygons));
      return rings.length === 0 ? [] : [{ over: above.zone, rings }];
    }),
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

/** A zone's hatching over the ground of another, in the ink that shows there. */
export function SharedHatching({
  zone,
  over,
  rings,
  ink,
}: {
  zone: Zone;
  over: Zone;
  rings: readonly Ring[];
  ink: Ink;
}): JSX.Element {
  const state = stateOfPhase(zone.phase);
  const hatch = ink.states[stateOfPhase(over.phase)].words;
  const states = { ...ink.states, [state]: { ...ink.states[state], hatch } };
  return <RingHatching state={state} rings={rings} ink={{ ...ink, states }} />;
}
