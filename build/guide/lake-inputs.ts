import type { Club, Lake } from "../model/club.ts";
import type { Phase } from "../model/phase.ts";
import { bandOf, phasesOf, type RiggedLake } from "../rigs/methods.ts";
import type { PhaseRigs } from "../rigs/rig-schemas.ts";
import { type ShapeInputs, shapeInputs } from "../water/compose-shape.ts";

/** As little of a lake as its rigs follow from: what else is written about it leaves them as they are. */
export const riggedLake = ({ name, depthBands, maxDepth_m, turnoverRule }: Lake): RiggedLake => ({
  name,
  depthBands,
  turnoverRule,
  ...(maxDepth_m === undefined ? {} : { maxDepth_m }),
});

/** The depths to fish, phase by phase. */
export const fishedBands = (lake: Lake): { readonly phase: Phase; readonly band: PhaseRigs["band"] }[] =>
  phasesOf(lake).map((phase) => ({ phase, band: bandOf(lake, phase) }));

/** What the shapes of a club's lakes are reckoned from, for those that have one. */
export const shapesToCompute = ({ lakes, units }: Pick<Club, "lakes" | "units">): ShapeInputs[] =>
  lakes.flatMap((lake) =>
    lake.shape === undefined ? [] : [shapeInputs(lake, lake.shape, { units, bands: fishedBands(lake) })],
  );
