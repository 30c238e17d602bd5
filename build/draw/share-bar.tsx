import type { Ink } from "./ink.ts";
import { tenth } from "./numbers.ts";
import { picture } from "./picture.tsx";

const WIDTH = 48;
const HEIGHT = 14;
const MIDDLE = HEIGHT / 2;

/** A share on a scale from none to all: a thick line over the span it lies in, and a gap where it most likely is. Beside its words. */
export const shareBar = (
  { share, low, high }: { readonly share: number; readonly low: number; readonly high: number },
  ink: Ink,
): string => {
  const x = (part: number): number => tenth(part * WIDTH);
  return picture(
    { width: WIDTH, height: HEIGHT, title: null },
    <>
      <path
        d={`M0 2V${HEIGHT - 2}M0 ${MIDDLE}H${WIDTH}M${WIDTH} 2V${HEIGHT - 2}`}
        fill="none"
        stroke={ink.line}
      />
      <path d={`M${x(low)} ${MIDDLE}H${x(high)}`} stroke={ink.line} stroke-width={7} />
      <path d={`M${x(share)} 0V${HEIGHT}`} stroke={ink.paper} stroke-width={2.5} />
    </>,
  );
};
