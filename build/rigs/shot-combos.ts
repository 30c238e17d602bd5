import type { RigBox } from "../model/club.ts";
import type { PointLoad, Stream } from "./hang.ts";
import { sphereDrag_N } from "./physics/drag.ts";
import { ballDiameter_m, sunkWeight_N } from "./physics/water-properties.ts";

type Shot = RigBox["shot"][number];

/** Shot pinched on together. */
export interface ShotCombo {
  /** Heaviest size first. */
  readonly pieces: readonly { readonly shot: Shot; readonly count: number }[];
  readonly mass_g: number;
  readonly count: number;
}

/** More pieces than this on one leader tangle. Common practice, from memory. */
const MOST_PIECES = 3;

/** Masses closer than this are one mass, g. */
const SAME_G = 1e-9;

/** Every combination of the shot carried, none first, lightest first, of equal masses the fewest pieces. */
export function shotCombos(carried: readonly Shot[]): ShotCombo[] {
  const heaviestFirst = [...carried].sort((a, b) => b.mass_g - a.mass_g);
  let combos: ShotCombo[] = [{ pieces: [], mass_g: 0, count: 0 }];
  for (const shot of heaviestFirst)
    combos = combos.flatMap((combo) =>
      Array.from({ length: Math.min(shot.carried, MOST_PIECES - combo.count) + 1 }, (_, count) =>
        count === 0
          ? combo
          : {
              pieces: [...combo.pieces, { shot, count }],
              mass_g: combo.mass_g + count * shot.mass_g,
              count: combo.count + count,
            },
      ),
    );
  return combos.sort((a, b) =>
    Math.abs(a.mass_g - b.mass_g) > SAME_G ? a.mass_g - b.mass_g : a.count - b.count,
  );
}

/** What a combination does to the line: each piece a ball by itself in the stream. */
export function comboLoad({ pieces }: ShotCombo, { speed_mps, water }: Stream): PointLoad {
  let weight_N = 0;
  let drag_N = 0;
  for (const { shot, count } of pieces) {
    weight_N += count * sunkWeight_N(shot.mass_g, shot.density_kgm3, water);
    drag_N += count * sphereDrag_N(ballDiameter_m(shot.mass_g, shot.density_kgm3), speed_mps, water);
  }
  return { weight_N, drag_N };
}

/** "BB", "2 × No. 4", "BB + No. 4"; "none" for no shot. */
export const comboText = ({ pieces }: ShotCombo): string =>
  pieces.length === 0
    ? "none"
    : pieces.map(({ shot, count }) => (count === 1 ? shot.name : `${count} × ${shot.name}`)).join(" + ");
