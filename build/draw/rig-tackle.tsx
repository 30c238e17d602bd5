import type { JSX } from "preact";
import type { Ink } from "./ink.ts";
import { tenth } from "./numbers.ts";

interface At {
  readonly x: number;
  readonly y: number;
  readonly ink: Ink;
}

/** Half the width of an indicator, as a share of the lettering. */
const INDICATOR = 0.55;
export const indicatorRadius = (ink: Ink): number => ink.textSize * INDICATOR;

function circle(x: number, y: number, radius: number): string {
  const r = tenth(radius);
  return `M${tenth(x - r)} ${tenth(y)}a${r} ${r} 0 1 0 ${tenth(2 * r)} 0a${r} ${r} 0 1 0 ${tenth(-2 * r)} 0Z`;
}

/** A ball that floats half dry: its wet half is inked. */
export function IndicatorBall({ x, y, ink }: At): JSX.Element {
  const r = tenth(indicatorRadius(ink));
  return (
    <g stroke={ink.words} stroke-width={1}>
      <path d={circle(x, y, r)} fill={ink.paper} />
      <path d={`M${tenth(x - r)} ${tenth(y)}a${r} ${r} 0 0 0 ${tenth(2 * r)} 0Z`} fill={ink.words} />
    </g>
  );
}

/** The stop on the butt, a short bar across the line. */
export const Stop = ({ x, y, ink }: At): JSX.Element => (
  <path
    d={`M${tenth(x - ink.textSize * 0.4)} ${tenth(y)}h${tenth(ink.textSize * 0.8)}`}
    stroke={ink.words}
    stroke-width={2}
  />
);

/** A knot: a small inked lozenge. */
export function Knot({ x, y, ink }: At): JSX.Element {
  const r = tenth(ink.textSize * 0.26);
  return <path d={`M${tenth(x)} ${tenth(y - r)}l${r} ${r}l${-r} ${r}l${-r} ${-r}Z`} fill={ink.words} />;
}

/** Half the width of a ring and of a shot. */
const RING = 0.22;
const SHOT = 0.3;

/** A tippet ring or swivel: open. */
export const Ring = ({ x, y, ink }: At): JSX.Element => (
  <path d={circle(x, y, ink.textSize * RING)} fill={ink.paper} stroke={ink.words} stroke-width={1.1} />
);

/** How far above the ring the lowest shot stands. */
export const shotAbove = (ink: Ink): number => ink.textSize * (RING + SHOT + 0.08);

/** Shot pinched on: inked, with the slit that closes about the line. */
export function Shot({ x, y, ink }: At): JSX.Element {
  const r = ink.textSize * SHOT;
  return (
    <g>
      <path d={circle(x, y, r)} fill={ink.words} />
      <path d={`M${tenth(x - r)} ${tenth(y)}h${tenth(2 * r)}`} stroke={ink.paper} stroke-width={0.8} />
    </g>
  );
}

/** A fly hanging by its eye, its hook to the left of the line. */
export function Fly({ x, y, ink }: At): JSX.Element {
  const s = ink.textSize * 0.08;
  const at = (dx: number, dy: number): string => `${tenth(x - dx * s)} ${tenth(y + dy * s)}`;
  return (
    <g>
      <path
        d={`M${at(0, 0)}L${at(8, 0)}C${at(12, 0)} ${at(12, 5)} ${at(8, 5)}L${at(6.5, 3.6)}`}
        fill="none"
        stroke={ink.words}
        stroke-width={1}
      />
      <path
        d={`M${at(0, 0)}C${at(2, -3.6)} ${at(7, -2.8)} ${at(8.5, 0)}C${at(6, 2)} ${at(2, 1.8)} ${at(0, 0)}Z`}
        fill={ink.words}
      />
    </g>
  );
}
