import { rounded, toBase, type UnitSystem } from "../../model/units.ts";
import { type DrawingContent, group, path, text } from "../drawing.ts";
import { tenth } from "../geometry.ts";
import type { Ink } from "../ink.ts";

/** Water seen from the side, to scale by depth. */
export interface SideView {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** Of the whole drawing. */
  readonly width: number;
  /** Height of the surface in the drawing. */
  readonly top: number;
  /** Drawing units a metre of depth. */
  readonly perMetre: number;
  /** Deepest water shown. */
  readonly depth_m: number;
}

/** Where a depth stands in the drawing. */
export const depthY = ({ top, perMetre }: SideView, depth_m: number): number => top + perMetre * depth_m;

/** Lengths of one block of the depth staff, in the reader's unit. */
const BLOCKS: Readonly<Record<UnitSystem, readonly number[]>> = {
  imperial: [0.5, 1, 2, 3, 6, 12],
  metric: [0.1, 0.2, 0.5, 1, 2, 5],
};
const UNIT: Readonly<Record<UnitSystem, "ft" | "m">> = { imperial: "ft", metric: "m" };
/** Blocks between one number and the next. */
const NUMBERED: Readonly<Record<UnitSystem, readonly number[]>> = {
  imperial: [1, 2, 3, 4, 6, 10],
  metric: [1, 2, 5, 10],
};

/** In deeper water than this, in the reader's unit, only whole numbers are written. */
const SHALLOW = 4;

const staffLeft = (ink: Ink): number => ink.textSize * 1.75;
const staffWidth = (ink: Ink): number => ink.textSize * 0.5;

/** Where the staff ends and the drawing may begin. */
export const staffRight = (ink: Ink): number => staffLeft(ink) + staffWidth(ink);

/** A staff beside the water: blocks of equal depth, black and white in turn, with their numbers. */
export function drawDepthStaff({ view }: { view: SideView }): DrawingContent {
  const { ink, units, perMetre, depth_m, top } = view;
  const size = ink.textSize;
  const unit = UNIT[units];
  const perUnit = perMetre * toBase(1, unit, "length");
  const block = BLOCKS[units].find((length) => length * perUnit >= size * 0.6) ?? BLOCKS[units].at(-1) ?? 1;
  const depth = depth_m / toBase(1, unit, "length");
  const every =
    NUMBERED[units].find(
      (count) =>
        count * block * perUnit >= size * 1.5 && (depth < SHALLOW || Number.isInteger(count * block)),
    ) ??
    NUMBERED[units].at(-1) ??
    1;
  const ends = Array.from({ length: Math.floor(depth / block + 1e-6) + 1 }, (_, i) => i);
  const [left, width] = [staffLeft(ink), staffWidth(ink)];
  const bottom = depthY(view, depth_m);
  const yOf = (i: number): number => Math.min(bottom, top + i * block * perUnit);
  return group({}, [
    path({
      d: `M${tenth(left + width / 2)} ${tenth(top)}V${tenth(bottom)}`,
      stroke: ink.line,
      "stroke-width": tenth(width),
      "stroke-dasharray": (block * perUnit).toFixed(2),
    }),
    path({
      d: `M${tenth(left)} ${tenth(top)}h${tenth(width)}V${tenth(bottom)}h${tenth(-width)}Z`,
      fill: "none",
      stroke: ink.line,
      "stroke-width": 0.6,
    }),
    group({ fill: ink.words, "text-anchor": "end" }, [
      ends
        .filter((i) => i % every === 0)
        .map((i) =>
          text(
            { x: tenth(left - size * 0.2), y: tenth(yOf(i) + size * 0.35) },
            i === 0 ? unit : rounded(i * block, 1),
          ),
        ),
    ]),
  ]);
}

/** The surface, marked as on a section drawing: a level line, a triangle on it and strokes under it. */
export function drawWaterSurface({ view, left, right }: { view: SideView; left: number; right: number }) {
  const { ink, top } = view;
  const size = ink.textSize;
  const mark = right - size * 0.9;
  return group({ stroke: ink.line, fill: "none" }, [
    path({ d: `M${tenth(left)} ${tenth(top)}H${tenth(right)}`, "stroke-width": 1.1 }),
    path({
      d: [0.28, 0.52]
        .map(
          (drop, i) =>
            `M${tenth(mark - size * (0.5 - 0.2 * i))} ${tenth(top + size * drop)}h${tenth(size * (1 - 0.4 * i))}`,
        )
        .join(""),
      "stroke-width": 0.8,
    }),
    path({
      d: `M${tenth(mark)} ${tenth(top - 0.6)}l${tenth(-size * 0.3)} ${tenth(-size * 0.5)}h${tenth(size * 0.6)}Z`,
      "stroke-width": 0.8,
    }),
  ]);
}

/** Length of a stroke of the ground's hatching, as a share of the lettering. */
const STROKE = 0.5;

/** How far the ground's hatching reaches below the bottom. */
export const groundDepth = (ink: Ink): number => ink.textSize * STROKE + 1;

/** The bottom through some places, from left to right, with the slanted strokes of ground below it. */
export function drawGround({
  places,
  ink,
}: {
  places: readonly (readonly [x: number, y: number])[];
  ink: Ink;
}): DrawingContent {
  const stroke = ink.textSize * STROKE;
  const strokes = places.slice(1).flatMap(([x1, y1], i) => {
    const [x0, y0] = places[i] ?? [x1, y1];
    const count = Math.floor(Math.hypot(x1 - x0, y1 - y0) / stroke);
    if (count < 2) return [];
    const [dx, dy] = [(x1 - x0) / count, (y1 - y0) / count];
    const one = `l${tenth(-stroke)} ${tenth(stroke)}`;
    const next = `m${tenth(dx + tenth(stroke))} ${tenth(dy - tenth(stroke))}${one}`;
    return [`M${tenth(x0 + dx)} ${tenth(y0 + dy)}${one}${next.repeat(count - 2)}`];
  });
  return group({ fill: "none", stroke: ink.line }, [
    path({ d: `M${places.map(([x, y]) => `${tenth(x)} ${tenth(y)}`).join("L")}`, "stroke-width": 1.3 }),
    path({ d: strokes.join(""), "stroke-width": 0.6 }),
  ]);
}

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
export function drawIndicatorBall({ x, y, ink }: At): DrawingContent {
  const r = tenth(indicatorRadius(ink));
  return group({ stroke: ink.words, "stroke-width": 1 }, [
    path({ d: circle(x, y, r), fill: ink.paper }),
    path({ d: `M${tenth(x - r)} ${tenth(y)}a${r} ${r} 0 0 0 ${tenth(2 * r)} 0Z`, fill: ink.words }),
  ]);
}

/** The stop on the butt, a short bar across the line. */
export const drawStop = ({ x, y, ink }: At): DrawingContent =>
  path({
    d: `M${tenth(x - ink.textSize * 0.4)} ${tenth(y)}h${tenth(ink.textSize * 0.8)}`,
    stroke: ink.words,
    "stroke-width": 2,
  });

/** A knot: a small inked lozenge. */
export function drawKnot({ x, y, ink }: At): DrawingContent {
  const r = tenth(ink.textSize * 0.26);
  return path({ d: `M${tenth(x)} ${tenth(y - r)}l${r} ${r}l${-r} ${r}l${-r} ${-r}Z`, fill: ink.words });
}

/** Half the width of a ring and of a shot. */
const RING = 0.22;
const SHOT = 0.3;

/** A tippet ring or swivel: open. */
export const drawRing = ({ x, y, ink }: At): DrawingContent =>
  path({ d: circle(x, y, ink.textSize * RING), fill: ink.paper, stroke: ink.words, "stroke-width": 1.1 });

/** How far above the ring the lowest shot stands. */
export const shotAbove = (ink: Ink): number => ink.textSize * (RING + SHOT + 0.08);

/** Shot pinched on: inked, with the slit that closes about the line. */
export function drawShot({ x, y, ink }: At): DrawingContent {
  const r = ink.textSize * SHOT;
  return group({}, [
    path({ d: circle(x, y, r), fill: ink.words }),
    path({ d: `M${tenth(x - r)} ${tenth(y)}h${tenth(2 * r)}`, stroke: ink.paper, "stroke-width": 0.8 }),
  ]);
}

/** A fly hanging by its eye, its hook to the left of the line. */
export function drawFly({ x, y, ink }: At): DrawingContent {
  const s = ink.textSize * 0.08;
  const at = (dx: number, dy: number): string => `${tenth(x - dx * s)} ${tenth(y + dy * s)}`;
  return group({}, [
    path({
      d: `M${at(0, 0)}L${at(8, 0)}C${at(12, 0)} ${at(12, 5)} ${at(8, 5)}L${at(6.5, 3.6)}`,
      fill: "none",
      stroke: ink.words,
      "stroke-width": 1,
    }),
    path({
      d: `M${at(0, 0)}C${at(2, -3.6)} ${at(7, -2.8)} ${at(8.5, 0)}C${at(6, 2)} ${at(2, 1.8)} ${at(0, 0)}Z`,
      fill: ink.words,
    }),
  ]);
}
