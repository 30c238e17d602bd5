import type { DayState } from "../model/phase.ts";
import { type DrawingContent, path } from "./drawing.ts";
import { tenth } from "./geometry.ts";
import type { Ink } from "./ink.ts";

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
export function tallestBoxInBand(
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

/** A closed line of a drawing; its last point is its first again. */
export type Ring = readonly { readonly x: number; readonly y: number }[];

type Segment = readonly [from: number, to: number];

/** Distance between hatching lines along the vertical, in the drawing's units. */
const PITCH = 6;

/** Where a straight piece that goes from `a` to `b` lies above zero, as shares of its length. */
function aboveZero(a: number, b: number): Segment | undefined {
  if (a <= 0 && b <= 0) return undefined;
  if (a > 0 && b > 0) return [0, 1];
  const zero = a / (a - b);
  return a > 0 ? [0, zero] : [zero, 1];
}

/**
 * The stretches, in x, of the line `y = level + slope x` that lie within a band.
 * Neighbouring stretches are joined.
 */
export function intervalsInBand({ xs, upper, lower }: Band, level: number, slope: number): Segment[] {
  const joined: Segment[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const [x0 = 0, x1 = 0] = [xs[i], xs[i + 1]];
    const [y0, y1] = [level + slope * x0, level + slope * x1];
    const under = aboveZero(y0 - (upper[i] ?? 0), y1 - (upper[i + 1] ?? 0));
    const over = aboveZero((lower[i] ?? 0) - y0, (lower[i + 1] ?? 0) - y1);
    if (under === undefined || over === undefined) continue;
    const from = x0 + Math.max(under[0], over[0]) * (x1 - x0);
    const to = x0 + Math.min(under[1], over[1]) * (x1 - x0);
    if (to <= from) continue;
    const last = joined.at(-1);
    if (last !== undefined && from - last[1] < 1e-9) joined.splice(-1, 1, [last[0], to]);
    else joined.push([from, to]);
  }
  return joined;
}

interface Hatch {
  /** Downwards per unit to the right. */
  readonly slope: number;
  /** Lines as a share of the usual distance. */
  readonly pitch: number;
  readonly dotted: boolean;
}

/** What tells a state's area from the others where there is no colour; solid and bare grounds have none. */
const HATCHING: Readonly<Record<DayState, Hatch | undefined>> = {
  /** Level lines, like ice lying flat. */
  iced: { slope: 0, pitch: 1, dotted: false },
  /** Strokes across the way the spring runs. */
  iceOff: { slope: 1, pitch: 1.4, dotted: false },
  /** Stipple, like silt in the water. */
  turnover: { slope: 0, pitch: 0.5, dotted: true },
  /** Solid: the days to go. */
  postTurnover: undefined,
  /** Bare. */
  laterWeeks: undefined,
};

/** Dots of one level begin and end on a grid that is shifted by half from one level to the next. */
function onGrid([from, to]: Segment, row: number): Segment | undefined {
  const shift = row % 2 === 0 ? 0 : PITCH / 2;
  const first = Math.ceil((from - shift + 0.8) / PITCH) * PITCH + shift;
  const last = Math.floor((to - shift - 0.8) / PITCH) * PITCH + shift;
  return last < first ? undefined : [first, last + 0.1];
}

/**
 * The stretches, in x, of the line `y = level + slope x` that lie within closed rings, by the even-odd rule: whichever
 * way the rings run, what lies in an island is out.
 */
export function intervalsInRings(rings: readonly Ring[], level: number, slope: number): Segment[] {
  const above = ({ x, y }: Ring[number]): number => y - slope * x - level;
  const crossings = rings
    .flatMap((ring) =>
      ring.slice(1).flatMap((to, i) => {
        const from = ring[i] ?? to;
        const [a, b] = [above(from), above(to)];
        return a > 0 === b > 0 ? [] : [from.x + (a / (a - b)) * (to.x - from.x)];
      }),
    )
    .sort((a, b) => a - b);
  return crossings.flatMap((from, i): Segment[] => {
    const to = crossings[i + 1];
    return i % 2 === 0 && to !== undefined && to > from ? [[from, to]] : [];
  });
}

interface HatchLines {
  readonly state: DayState;
  readonly ink: Ink;
  /** Corners of what is hatched. */
  readonly corners: Ring;
  readonly stretchesOn: (level: number, slope: number) => readonly Segment[];
}

function drawHatchLines({ state, ink, corners, stretchesOn }: HatchLines): DrawingContent | null {
  const hatch = HATCHING[state];
  if (hatch === undefined) return null;
  const { slope, dotted } = hatch;
  const pitch = PITCH * hatch.pitch;
  const levels = corners.map(({ x, y }) => y - slope * x);
  const first = Math.ceil(Math.min(...levels) / pitch);
  const last = Math.floor(Math.max(...levels) / pitch);
  const lines: string[] = [];
  for (let row = first; row <= last; row++) {
    const level = row * pitch;
    for (const stretch of stretchesOn(level, slope)) {
      const [from, to] = (dotted ? onGrid(stretch, row) : stretch) ?? [0, 0];
      if (to - from < 0.1 - 1e-9) continue;
      const end = slope === 0 ? `H${tenth(to)}` : `L${tenth(to)} ${tenth(level + slope * to)}`;
      lines.push(`M${tenth(from)} ${tenth(level + slope * from)}${end}`);
    }
  }
  if (lines.length === 0) return null;
  return path({
    d: lines.join(""),
    fill: "none",
    stroke: ink.states[state].hatch,
    ...(dotted
      ? { "stroke-width": 1.6, "stroke-linecap": "round", "stroke-dasharray": `0.01 ${PITCH - 0.01}` }
      : { "stroke-width": 0.8 }),
  });
}

/** The hatching of one state's area; `null` where the ground alone is enough. */
export const drawHatching = ({ state, band, ink }: { state: DayState; band: Band; ink: Ink }) =>
  drawHatchLines({
    state,
    ink,
    corners: band.xs.flatMap((x, i) => [
      { x, y: band.upper[i] ?? 0 },
      { x, y: band.lower[i] ?? 0 },
    ]),
    stretchesOn: (level, slope) => intervalsInBand(band, level, slope),
  });

/** What two lists of stretches, each in order, have in common. */
export const intersectIntervals = (some: readonly Segment[], others: readonly Segment[]): Segment[] =>
  some.flatMap(([from, to]) =>
    others.flatMap(([start, end]): Segment[] =>
      Math.max(from, start) < Math.min(to, end) ? [[Math.max(from, start), Math.min(to, end)]] : [],
    ),
  );

/** The same hatching within closed rings, and only where others hold the place too, if any are given. */
export const drawRingHatching = ({
  state,
  rings,
  within,
  ink,
}: {
  state: DayState;
  rings: readonly Ring[];
  within?: readonly Ring[];
  ink: Ink;
}) =>
  drawHatchLines({
    state,
    ink,
    corners: rings.flat(),
    stretchesOn: (level, slope) => {
      const own = intervalsInRings(rings, level, slope);
      return within === undefined ? own : intersectIntervals(own, intervalsInRings(within, level, slope));
    },
  });

/** Closer than water is ever hatched, and the other way. */
const LAND = { slope: -1, pitch: 3 } as const;

/** Land within closed rings: an island. */
export function drawLandHatching({ rings, ink }: { rings: readonly Ring[]; ink: Ink }): DrawingContent {
  const levels = rings.flat().map(({ x, y }) => y - LAND.slope * x);
  const first = Math.ceil(Math.min(...levels) / LAND.pitch);
  const last = Math.floor(Math.max(...levels) / LAND.pitch);
  const at = (x: number, level: number): string => `${tenth(x)} ${tenth(level + LAND.slope * x)}`;
  const lines: string[] = [];
  for (let row = first; row <= last; row++) {
    const level = row * LAND.pitch;
    for (const [from, to] of intervalsInRings(rings, level, LAND.slope))
      lines.push(`M${at(from, level)}L${at(to, level)}`);
  }
  return path({ d: lines.join(""), fill: "none", stroke: ink.line, "stroke-width": 0.8 });
}
