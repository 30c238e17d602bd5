import type { RigBox } from "../../model/club.ts";
import { type Body, ballBody, together } from "../physics/hanging-line.ts";
import type { Water } from "../physics/water-properties.ts";
import type { ShotStep } from "./rig-settings.ts";

type Shot = RigBox["shot"][number];

/** A step with the club's own shot. */
export interface WeighedStep {
  readonly pieces: readonly { readonly shot: Shot; readonly count: number }[];
  /** Nominal mass of all pieces. */
  readonly mass_g: number;
}

/** The steps the club can pinch on, lightest first: those whose shot it carries, within the cast limit. */
export function weighedSteps(
  steps: readonly ShotStep[],
  { shot: carried, castLimit_g }: Pick<RigBox, "shot" | "castLimit_g">,
): WeighedStep[] {
  return steps
    .flatMap((step): WeighedStep[] => {
      const pieces = step.flatMap(({ shot: name, count }) => {
        const shot = carried.find((one) => one.name === name);
        return shot === undefined || shot.carried < count ? [] : [{ shot, count }];
      });
      const mass_g = pieces.reduce((sum, { shot, count }) => sum + count * shot.mass_g, 0);
      return pieces.length < step.length || mass_g > castLimit_g ? [] : [{ pieces, mass_g }];
    })
    .sort((a, b) => a.mass_g - b.mass_g);
}

/** Makers differ by a tenth, so the tables count on this share of the nominal mass. Common practice, no source. */
export const SURE_SHARE_OF_MASS = 0.9;

/** A step on the line, each piece a ball by itself. */
export function stepBody({ pieces }: WeighedStep, water: Water, shareOfMass: number): Body {
  return together(
    pieces.flatMap(({ shot: { mass_g, density_kgm3 }, count }) =>
      Array.from({ length: count }, () => ballBody({ mass_g: shareOfMass * mass_g, density_kgm3 }, water)),
    ),
  );
}

/** "none", "BB", "2 × BB". */
export const stepText = ({ pieces }: WeighedStep): string =>
  pieces.length === 0
    ? "none"
    : pieces.map(({ shot, count }) => (count === 1 ? shot.name : `${count} × ${shot.name}`)).join(" + ");
