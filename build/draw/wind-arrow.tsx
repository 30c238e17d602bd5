import type { Ink } from "./ink.ts";
import { tenth } from "./numbers.ts";

/** An arrow down the drawing, the way the wind blows, from its tail on. */
export function WindArrow({ x, y, ink }: { x: number; y: number; ink: Ink }) {
  const size = ink.textSize;
  return (
    <g>
      <path
        d={`M${tenth(x)} ${tenth(y)}v${tenth(size * 2)}m${tenth(-size * 0.4)} ${tenth(-size * 0.6)}l${tenth(size * 0.4)} ${tenth(size * 0.6)}l${tenth(size * 0.4)} ${tenth(-size * 0.6)}`}
        fill="none"
        stroke={ink.words}
        stroke-width={1.6}
      />
      <text x={tenth(x + size * 0.7)} y={tenth(y + size * 1.3)} fill={ink.words}>
        wind
      </text>
    </g>
  );
}
