import type { Pattern } from "../model/club.ts";

/** Flies as the tables see them: how heavy, and how much the water drags at them. */
export const FLY_CLASSES = ["unweighted", "beaded pupa", "balanced leech"] as const;
export type FlyClass = (typeof FLY_CLASSES)[number];

interface FlyBall {
  readonly mass_g: number;
  readonly density_kgm3: number;
  /** Width of a ball with the same drag. */
  readonly width_m: number;
}

/** From memory. */
export const FLY_BALLS: Readonly<Record<FlyClass, FlyBall>> = {
  unweighted: { mass_g: 0.04, density_kgm3: 2500, width_m: 0.004 },
  "beaded pupa": { mass_g: 0.08, density_kgm3: 4000, width_m: 0.004 },
  "balanced leech": { mass_g: 0.4, density_kgm3: 6000, width_m: 0.008 },
};

/** The fly the plumb table is made for. */
export const TABLE_FLY: FlyClass = "beaded pupa";

/** The lightest pupa and the lightest leech, g. From memory. */
const LIGHTEST_G = { pupa: 0.06, leech: 0.3 } as const;

/** The class of a pattern; one whose mass nobody wrote counts as unweighted. */
export function flyClassOf({ mass_g = 0 }: Pick<Pattern, "mass_g">): FlyClass {
  if (mass_g >= LIGHTEST_G.leech) return "balanced leech";
  return mass_g >= LIGHTEST_G.pupa ? "beaded pupa" : "unweighted";
}
