import type { JSX } from "preact";
import { distanceText, toBase, type UnitSystem } from "../model/units.ts";
import type { Ink } from "./ink.ts";
import { roughWidth } from "./lettering.ts";
import { tenth } from "./numbers.ts";

/** Round lengths a scale bar may have, m. */
const LENGTHS_M: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000],
  imperial: [
    ...[10, 20, 50, 100, 200, 400].map((length_yd) => toBase(length_yd, "yd", "length")),
    ...[0.5, 1, 2, 5, 10].map((length_mi) => toBase(length_mi, "mi", "distance") * 1000),
  ],
};

/** How tall the row of scale bar and north arrow is, by the size of its lettering. */
export const SCALE_ROW = 2.2;

interface ScaleProps {
  readonly perMetre: number;
  readonly units: UnitSystem;
  readonly ink: Ink;
  readonly width: number;
  /** Middle of the row. */
  readonly y: number;
}

/** The longest round length in a third of the width, and at the right an arrow that points north. */
export function ScaleAndNorth({ perMetre, units, ink, width, y }: ScaleProps): JSX.Element {
  const size = ink.textSize;
  const lengths = LENGTHS_M[units];
  const length_m = lengths.findLast((length) => length * perMetre <= width / 3) ?? lengths[0] ?? 0;
  const length = length_m * perMetre;
  const left = size * 0.3;
  const half = size * 0.2;
  const arrow = width - size * 0.7;
  const tall = size * 0.8;
  return (
    <g stroke={ink.line} stroke-width={1} fill="none">
      <path
        d={`M${tenth(left)} ${tenth(y - half)}h${length.toFixed(2)}v${tenth(2 * half)}h${(-length).toFixed(2)}Z`}
      />
      <path
        d={`M${tenth(left)} ${tenth(y - half)}h${tenth(length / 2)}v${tenth(2 * half)}h${tenth(-length / 2)}Z`}
        fill={ink.line}
      />
      <path
        d={`M${tenth(arrow)} ${tenth(y + tall)}V${tenth(y - tall)}l${tenth(-size * 0.3)} ${tenth(size * 0.6)}h${tenth(size * 0.6)}l${tenth(-size * 0.3)} ${tenth(-size * 0.6)}`}
        fill={ink.line}
      />
      <text x={tenth(left + length + size * 0.5)} y={tenth(y + size * 0.3)} fill={ink.words} stroke="none">
        {distanceText(length_m, units)}
      </text>
      <text
        x={tenth(arrow - size * 0.6 - roughWidth("N", size))}
        y={tenth(y + size * 0.3)}
        fill={ink.words}
        stroke="none"
      >
        N
      </text>
    </g>
  );
}
