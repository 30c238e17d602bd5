import type { RigBox } from "../../build/model/club.ts";
import { FLY_BALLS, type FlyClass } from "../../build/rigs/fly-classes.ts";
import { hungRig } from "../../build/rigs/leaders/leader-line.ts";
import { type Body, ballBody, NO_BODY, together } from "../../build/rigs/physics/hanging-line.ts";
import type { HungRig } from "../../build/rigs/physics/indicator-drift.ts";
import { waterAt } from "../../build/rigs/physics/water-properties.ts";
import { box, FT, leader, where } from "./box-fixture.ts";

const IN = 0.0254;

/** The box that the check values of the rig model were computed with. */
export const clubBox: RigBox = {
  ...box,
  rod_m: 10 * FT,
  margin_m: 4 * IN,
  leaders: [
    leader("Edge", [7.5, 3], [0.5, 4], [1, 5], 4),
    leader("Nine-foot", [9, 3], [1.5, 4], [1.5, 5], 3),
    leader("Usual long", [12, 3], [6, 4], [3, 5], 6),
    leader("Stout long", [12, 2], [5.5, 3], [3.5, 4], 2),
    leader("Deep", [12, 3], [9, 4], [4, 5], 1),
    leader("Short", [0.75, 1], [1.5, 2], [1.75, 3], 2),
  ],
  indicators: [
    { name: "Half-inch", diameter_m: 0.5 * IN, density_kgm3: 60, carried: 6, where },
    { name: "Three-quarter", diameter_m: 0.75 * IN, density_kgm3: 60, carried: 8, where },
    { name: "One-inch", diameter_m: IN, density_kgm3: 60, carried: 3, where },
  ],
};

export const water10 = waterAt(10);

export const board = (name: string) => {
  const found = clubBox.leaders.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no board ${name}`);
  return found;
};

const TIN_KGM3 = 7310;
const SHOT_G: Readonly<Record<string, number>> = { "No. 4": 0.17, BB: 0.4, AB: 0.6 };

/** "none", "BB", "2 x BB" at a share of its nominal mass. */
export function shotBody(text: string, shareOfMass = 0.9): Body {
  const [, times, name] = /^(?:(\d) x )?(.*)$/.exec(text) ?? [];
  const mass_g = SHOT_G[name ?? ""];
  if (mass_g === undefined) return NO_BODY;
  const piece = ballBody({ mass_g: mass_g * shareOfMass, density_kgm3: TIN_KGM3 }, water10);
  return together(Array.from({ length: Number(times ?? 1) }, () => piece));
}

export const setOf_m = (plumbed_ft: number): number => plumbed_ft * FT - 7 * IN;

/** The rig over a plumbed depth. */
export const rigOver = (plumbed_ft: number, name: string, fly: FlyClass, shot: string): HungRig =>
  hungRig(board(name), setOf_m(plumbed_ft), ballBody(FLY_BALLS[fly], water10), shotBody(shot));
