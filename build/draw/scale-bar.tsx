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
  /** North to the left instead of up. */
  readonly isTurned: boolean;
  readonly units: UnitSystem;
  readonly ink: Ink;
  readonly width: number;
  /** Middle of the row. */
  readonly y: number;
}

/** An arrow about a middle: up, or to the left. */
function arrowPath(x: number, y: number, size: number, isTurned: boolean): string {
  const [tall, head, half] = [size * 0.8, size * 0.6, size * 0.3];
  return isTurned
    ? `M${tenth(x + tall)} ${tenth(y)}H${tenth(x - tall)}l${tenth(head)} ${tenth(-half)}v${tenth(2 * half)}l${tenth(-head)} ${tenth(-half)}`
    : `M${tenth(x)} ${tenth(y + tall)}V${tenth(y - tall)}l${tenth(-half)} ${tenth(head)}h${tenth(2 * half)}l${tenth(-half)} ${tenth(-head)}`;
}

/** The longest round length in a third of the width, and at the right an arrow that points north. */
export function ScaleAndNorth({ perMetre, isTurned, units, ink, width, y }: ScaleProps): JSX.Element {
  const size = ink.textSize;
  const lengths = LENGTHS_M[units];
  const length_m = lengths.findLast((length) => length * perMetre <= width / 3) ?? lengths[0] ?? 0;
  const length = length_m * perMetre;
  const left = size * 0.3;
  const half = size * 0.2;
  const reach = size * (isTurned ? 0.8 : 0.3);
  const arrow = width - size * 0.4 - reach;
  return (
    <g stroke={ink.line} stroke-width={1} fill="none">
      <path
        d={`M${tenth(left)} ${tenth(y - half)}h${length.toFixed(2)}v${tenth(2 * half)}h${(-length).toFixed(2)}Z`}
      />
      <path
        d={`M${tenth(left)} ${tenth(y - half)}h${tenth(length / 2)}v${tenth(2 * half)}h${tenth(-length / 2)}Z`}
        fill={ink.line}
      />
      <path d={arrowPath(arrow, y, size, isTurned)} fill={ink.line} />
      <text x={tenth(left + length + size * 0.5)} y={tenth(y + size * 0.3)} fill={ink.words} stroke="none">
        {distanceText(length_m, units)}
      </text>
      <text
        x={tenth(arrow - reach - size * 0.3 - roughWidth("N", size))}
        y={tenth(y + size * 0.3)}
        fill={ink.words}
        stroke="none"
      >
        N
      </text>
    </g>
  );
}
