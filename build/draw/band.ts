/** An area between two edges, given at the same ascending places; y counts downwards. */
export interface Band {
  readonly xs: readonly number[];
  readonly upper: readonly number[];
  readonly lower: readonly number[];
}

/** How far apart places are tried, in the drawing's units; edges run evenly enough not to turn back in between. */
const STEP = 2;
/** Left free beside the place to keep clear of. */
const GAP = 3;

/** Heights of a broken line at each step from its first place to its last. */
function stepped(xs: readonly number[], ys: readonly number[]): number[] {
  const heights: number[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const [x0 = 0, x1 = 0, y0 = 0, y1 = 0] = [xs[i], xs[i + 1], ys[i], ys[i + 1]];
    for (let x = heights.length * STEP; x <= x1 && x1 > x0; x = heights.length * STEP)
      heights.push(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
  }
  return heights;
}

/** The middle of the highest upright box `width` wide within a band that keeps clear of one place, and its height. */
export function roomiestBox(
  { xs, upper, lower }: Band,
  width: number,
  clearOf: number,
): { readonly x: number; readonly y: number; readonly height: number } | undefined {
  const roofs = stepped(xs, upper);
  const floors = stepped(xs, lower);
  const steps = Math.ceil(width / STEP);
  const boxes = roofs
    .slice(0, Math.max(0, roofs.length - steps))
    .map((_, first) => ({ first, left: first * STEP }))
    .filter(({ left }) => clearOf < left - GAP || clearOf > left + width + GAP)
    .map(({ first, left }) => {
      const roof = Math.max(...roofs.slice(first, first + steps + 1));
      const floor = Math.min(...floors.slice(first, first + steps + 1));
      return { x: left + width / 2, y: (roof + floor) / 2, height: floor - roof };
    });
  const highest = Math.max(...boxes.map(({ height }) => height));
  const even = boxes.filter(({ height }) => height > highest - 1e-6);
  return even[Math.floor(even.length / 2)];
}
