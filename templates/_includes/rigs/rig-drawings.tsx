import { screenInk } from "../../../build/draw/ink.ts";
import {
  type DrawnLeader,
  type HungRig,
  leaderAtDeepest,
  rigAtDeepEnd,
} from "../../../build/draw/rig/hung-rig.ts";
import { leanDrawing } from "../../../build/draw/rig/lean.ts";
import { retrieveDrawing, retrieveRigOf } from "../../../build/draw/rig/retrieve.ts";
import { rigDrawing } from "../../../build/draw/rig/rig-drawing.ts";
import { swingDrawing } from "../../../build/draw/rig/swing-plan.ts";
import type { Guide } from "../../../build/guide/guide-schema.ts";
import type { PageContext } from "../page-context.ts";
import { Drawing } from "../parts.tsx";
import type { PhasePlan, Rig } from "./rig-facts.tsx";

/** Wide enough for the lettering beside a hanging rig. */
const HUNG = { ink: screenInk, width: 256, height: 320 } as const;
/** A phone's width; the cast is drawn to no scale sideways. */
const ACROSS = { ink: screenInk, width: 328, height: 150 } as const;

function Hung({ rig, sheet }: { rig: HungRig; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  return <Drawing drawing={rigDrawing(rig, { ...HUNG, units })} />;
}

/** A leader hung as deep as it serves. */
export function LeaderDrawing({ leader, sheet }: { leader: DrawnLeader; sheet: PageContext }) {
  const { rigs, club } = sheet.guide;
  const rig = leaderAtDeepest(leader, rigs.offBottom, club.units);
  return rig === undefined ? null : <Hung rig={rig} sheet={sheet} />;
}

/** One way of fishing a band, over its deep end. */
export function RigPicture({ rig, band, sheet }: { rig: Rig; band: PhasePlan["band"]; sheet: PageContext }) {
  const { rigs, club } = sheet.guide;
  const { units } = club;
  if (rig.way === "indicator still" || rig.way === "indicator twitched") {
    const hung = rigAtDeepEnd(rig, rigs);
    return hung === undefined ? null : <Hung rig={hung} sheet={sheet} />;
  }
  const drawn = retrieveRigOf(rig, band, rigs);
  return <Drawing drawing={retrieveDrawing(drawn, { ...ACROSS, units })} />;
}

/** How a rig of the plumb table leans in water that slows with depth. */
export function LeanPicture({ lean, sheet }: { lean: Guide["rigs"]["lean"]; sheet: PageContext }) {
  const { units } = sheet.guide.club;
  return lean === null ? null : <Drawing drawing={leanDrawing(lean, { ...HUNG, units })} />;
}

/** A drift fast enough to swing in and slow enough to fish: the middle one of the table. */
function middleDrift_s({ columns }: Guide["rigs"]["swing"]): number | undefined {
  const drifts = columns.map(({ rod_s }) => rod_s);
  return drifts[Math.floor((drifts.length - 1) / 2)];
}

/** Rods in holders on a boat at anchor, seen from above. */
export function SwingPicture({ sheet }: { sheet: PageContext }) {
  const { rigs, club } = sheet.guide;
  const rod_s = middleDrift_s(rigs.swing);
  if (rod_s === undefined) return null;
  const drawing = { swing: rigs.swing, rod_m: rigs.rod_m, rod_s };
  return <Drawing drawing={swingDrawing(drawing, { ...ACROSS, units: club.units })} />;
}
