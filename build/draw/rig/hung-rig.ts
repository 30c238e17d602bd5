import type { Guide, GuideLake } from "../../guide/guide-schema.ts";
import { cutLengthText, depthText, smallLengthText, toBase, type UnitSystem } from "../../model/units.ts";

/** Where shot is pinched on, m above the fly. */
const SHOT_ABOVE_FLY_M = 0.4572;

type Rig = GuideLake["plan"][number]["rigs"][number];
export type DrawnLeader = Guide["rigs"]["leaders"][number];

/** A rig as it hangs in the water. */
export interface HungRig {
  readonly leader: DrawnLeader;
  /** From fly to stop; a length the leader serves. */
  readonly set_m: number;
  /** Plumbed depth, at least `set_m`. */
  readonly depth_m: number;
  readonly offBottom: Guide["rigs"]["offBottom"];
  /** "No. 4", "2 × BB"; null where only its place is shown. */
  readonly shot: string | null;
  /** Its name, where one is chosen. */
  readonly indicator: string | null;
  readonly landing: "fixed" | "slip" | null;
}

/** Depths are plumbed to this: half a foot or a decimetre. */
const plumbStep_m = (units: UnitSystem): number =>
  units === "imperial" ? toBase(0.5, "ft", "length") : toBase(1, "m", "length") / 10;

/** A leader hung as deep as it serves, over a round depth of water; undefined for one no indicator slides on. */
export function leaderAtDeepest(
  leader: DrawnLeader,
  offBottom: HungRig["offBottom"],
  units: UnitSystem,
): HungRig | undefined {
  if (leader.serves === null) return undefined;
  const above_m = (offBottom.from_m + offBottom.to_m) / 2;
  const step_m = plumbStep_m(units);
  const deepest_m = leader.serves.to_m + above_m;
  const depth_m = Math.max(Math.floor(deepest_m / step_m + 1e-6) * step_m, leader.serves.from_m + above_m);
  return { leader, set_m: depth_m - above_m, depth_m, offBottom, shot: null, indicator: null, landing: null };
}

/**
 * An indicator rig of a lake's plan over the deep end of its band, as far as its leader serves; undefined where the
 * leader is not among the club's or no indicator slides on it.
 */
export function rigAtDeepEnd(
  { setDepth, leader: name, landing }: Pick<Rig, "setDepth" | "leader" | "landing">,
  { leaders, offBottom }: Pick<Guide["rigs"], "leaders" | "offBottom">,
): HungRig | undefined {
  const leader = leaders.find((one) => one.name === name);
  if (setDepth === null || leader === undefined || leader.serves === null) return undefined;
  const set_m = Math.min(setDepth.to_m, leader.serves.to_m);
  if (set_m < leader.serves.from_m) return undefined;
  const depth_m = set_m + (offBottom.from_m + offBottom.to_m) / 2;
  return { leader, set_m, depth_m, offBottom, shot: null, indicator: null, landing };
}

/** A section of the leader as far as it hangs: how far below the surface it begins and ends. */
export interface HungSection {
  readonly section: DrawnLeader["sections"][number];
  readonly top_m: number;
  readonly bottom_m: number;
}

/** How far down shot is pinched on: 18 in above the fly, or above the ring of a shorter tippet. */
export function shotDepth_m({ leader, set_m }: Pick<HungRig, "leader" | "set_m">): number {
  const tippet_m = leader.sections.find(({ part }) => part === "tippet")?.length_m ?? SHOT_ABOVE_FLY_M;
  return set_m - Math.min(SHOT_ABOVE_FLY_M, tippet_m, set_m);
}

/** What hangs below the indicator, butt end first. */
export function hungSections({ leader, set_m }: Pick<HungRig, "leader" | "set_m">): HungSection[] {
  let bottom_m = set_m;
  return leader.sections
    .toReversed()
    .flatMap((section) => {
      const top_m = Math.max(0, bottom_m - section.length_m);
      const hung = { section, top_m, bottom_m };
      bottom_m = top_m;
      return hung.bottom_m > hung.top_m ? [hung] : [];
    })
    .reverse();
}

/** "6–8 in". */
export const offBottomText = ({ from_m, to_m }: HungRig["offBottom"], units: UnitSystem): string => {
  const [from, to] = [smallLengthText(from_m, units), smallLengthText(to_m, units)];
  return from === to ? to : `${from.replace(/ .*/, "")}–${to}`;
};

/** "12 ft taper to 3X", "6 ft of 4X". */
export const sectionText = ({ part, length_m, size }: HungSection["section"], units: UnitSystem): string =>
  `${cutLengthText(length_m, units)} ${part === "taper" ? "taper to" : "of"} ${size}`;

/** What the drawing shows, in sentences. */
export function rigTitle(
  { leader, set_m, depth_m, offBottom, shot, landing }: HungRig,
  units: UnitSystem,
): string {
  const made = leader.sections.map((section) => sectionText(section, units)).join(" + ");
  return [
    `${leader.name} under an indicator, to scale by depth: ${made}.`,
    `Set ${depthText(set_m, units)} in ${depthText(depth_m, units)} of water, fly ${offBottomText(offBottom, units)} off the bottom.`,
    ...(shot === null
      ? []
      : [
          `Shot: ${shot}, ${smallLengthText(SHOT_ABOVE_FLY_M, units)} above the fly, above the ring or a knot if you can.`,
        ]),
    ...(landing === null
      ? []
      : [landing === "slip" ? "The indicator must slip." : "The indicator may be fixed."]),
  ].join(" ");
}
