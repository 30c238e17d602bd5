import type { GuideLake } from "../../guide/guide-schema.ts";
import type { OnDays } from "../../guide/season-chart.ts";
import { type CalendarDate, dayMonth } from "../../model/calendar.ts";
import { STATE_WORDS } from "../../model/phase.ts";
import { chanceNumber, distanceText, type UnitSystem } from "../../model/units.ts";
import { createDrawing, type Drawing, type DrawingContent, group, path, text } from "../drawing.ts";
import {
  type Box,
  boxAround,
  estimateTextWidth,
  isWithin,
  linePath,
  overlaps,
  type Point,
  tenth,
} from "../geometry.ts";
import { drawRingHatching, type Ring } from "../hatching.ts";
import type { Ink } from "../ink.ts";
import { basinProjection } from "./basin-projection.ts";

/** A lake on the map of all, on the days that the map is of. */
export interface BasinLake extends Pick<GuideLake, "name" | "position"> {
  /** Outer rings and islands; empty where no shape is known. */
  readonly shoreline: readonly (readonly (readonly [number, number])[])[];
  /** Null while its road is shut. */
  readonly on: OnDays | null;
  readonly opens: CalendarDate | null;
}

interface BasinOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  readonly width: number;
  /** "16–17 May". */
  readonly days: string;
}

/** Left free about the lakes, for their names. */
const MARGIN = { x: 56, y: 34 };
const TALLEST = 1.7;
const LOWEST = 0.6;
/** Lakes are drawn at least so large, and larger than true by this much, so that their hatching shows. */
const LEAST_ACROSS = 15;
const ENLARGED = 2;
/** Fewer corners than a lake's own map has: those that show. */
const MOST_CORNERS = 60;
const SCALES_M = { imperial: 1609.344, metric: 1000 } as const;
const SCALE_LENGTHS = [1, 2, 5, 10, 20, 50, 100, 200];

const thinned = <Corner>(ring: readonly Corner[]): Corner[] => {
  const step = Math.ceil(ring.length / MOST_CORNERS);
  return ring.filter((_, i) => i % step === 0 || i === ring.length - 1);
};

/** A ring on the plane, metres, y down, thinned. */
const ringOn = (
  project: ReturnType<typeof basinProjection>,
  ring: BasinLake["shoreline"][number],
  middle = { x_m: 0, y_m: 0 },
): Ring =>
  thinned(ring).map((corner) => {
    const { x_m, y_m } = project(corner);
    return { x: x_m - middle.x_m, y: middle.y_m - y_m };
  });

const roundLake = (radius: number): Ring =>
  Array.from({ length: 17 }, (_, i) => ({
    x: radius * Math.cos((i * Math.PI) / 8),
    y: radius * Math.sin((i * Math.PI) / 8),
  }));

interface PlacedLake {
  readonly lake: BasinLake;
  readonly rings: readonly Ring[];
  readonly box: Box;
}

function boxOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Each lake's outline about its place on the drawing, larger than true. */
function placeLakes(lakes: readonly BasinLake[], width: number) {
  const project = basinProjection(lakes.map(({ position: { lon, lat } }) => [lon, lat]));
  const middles = lakes.map(({ position: { lon, lat } }) => project([lon, lat]));
  const { left, right, top, bottom } = boxOf(middles.map(({ x_m, y_m }) => ({ x: x_m, y: -y_m })));
  const [wide_m, tall_m] = [Math.max(1, right - left), Math.max(1, bottom - top)];
  const perMetre = Math.min((width - 2 * MARGIN.x) / wide_m, (width * TALLEST - 2 * MARGIN.y) / tall_m);
  const height = Math.max(width * LOWEST, tall_m * perMetre + 2 * MARGIN.y);
  const placed = lakes.map((lake, i): PlacedLake => {
    const { x_m, y_m } = middles[i] ?? { x_m: 0, y_m: 0 };
    const at = {
      x: width / 2 + (x_m - (left + right) / 2) * perMetre,
      y: height / 2 + (-y_m - (top + bottom) / 2) * perMetre,
    };
    const true_m = lake.shoreline.map((ring) => ringOn(project, ring, { x_m, y_m }));
    const own = boxOf(true_m.flat());
    const across = Math.max(own.right - own.left, own.bottom - own.top) * perMetre;
    const scale = perMetre * Math.max(ENLARGED, LEAST_ACROSS / across);
    const rings =
      true_m.length === 0
        ? [roundLake(LEAST_ACROSS / 2)]
        : true_m.map((ring) => ring.map(({ x, y }) => ({ x: x * scale, y: y * scale })));
    const moved = rings.map((ring) => ring.map(({ x, y }) => ({ x: at.x + x, y: at.y + y })));
    return { lake, rings: moved, box: boxOf(moved.flat()) };
  });
  return { placed, height, perMetre };
}

/** "best weeks 97", "road 22 May". */
const onText = ({ on, opens }: BasinLake): string =>
  on !== null
    ? `${STATE_WORDS[on.state].name.toLowerCase()} ${chanceNumber(on.good)}`
    : opens === null
      ? "not covered"
      : `road ${dayMonth(opens)}`;

/** Where a lake's two lines can stand: right, left, below, above; none where all are taken. */
function labelPlaces({ lake, box }: PlacedLake, size: number) {
  const wide = Math.max(
    estimateTextWidth(lake.name, size) * 1.08,
    estimateTextWidth(onText(lake), size * 0.92),
  );
  const tall = size * 2.2;
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  return (
    [
      ["start", { x: box.right + 4 + wide / 2, y: middle.y }],
      ["end", { x: box.left - 4 - wide / 2, y: middle.y }],
      ["middle", { x: middle.x, y: box.bottom + 2 + tall / 2 }],
      ["middle", { x: middle.x, y: box.top - 2 - tall / 2 }],
    ] as const
  ).map(([anchor, at]) => ({ anchor, box: boxAround(at, wide, tall) }));
}

type Label = ReturnType<typeof labelPlaces>[number] & { readonly lake: BasinLake };

function placeLabels(placed: readonly PlacedLake[], room: Box, taken: readonly Box[], size: number): Label[] {
  const labels: Label[] = [];
  for (const one of placed) {
    const inUse = [...taken, ...placed.map(({ box }) => box), ...labels.map(({ box }) => box)];
    const free = labelPlaces(one, size).find(
      ({ box }) => isWithin(box, room) && !inUse.some((other) => overlaps(other, box)),
    );
    if (free !== undefined) labels.push({ ...free, lake: one.lake });
  }
  return labels;
}

function drawLabel({ lake, anchor, box }: Label, ink: Ink): DrawingContent {
  const x = anchor === "start" ? box.left : anchor === "end" ? box.right : (box.left + box.right) / 2;
  const attributes = { x: tenth(x), "text-anchor": anchor, fill: ink.words };
  return [
    text({ ...attributes, y: tenth(box.top + ink.textSize * 0.9), "font-weight": "bold" }, lake.name),
    text(
      { ...attributes, y: tenth(box.top + ink.textSize * 1.95), "font-size": tenth(ink.textSize * 0.92) },
      onText(lake),
    ),
  ];
}

function drawLake({ lake, rings }: PlacedLake, ink: Ink): DrawingContent {
  const d = rings.map(linePath).join("");
  const state = lake.on?.state;
  return [
    path({
      d,
      fill: state === undefined ? ink.paper : ink.states[state].ground,
      "fill-rule": "evenodd",
      stroke: ink.line,
      "stroke-width": state === undefined ? 0.7 : 1.4,
      ...(state === undefined ? { "stroke-dasharray": "3 2" } : {}),
    }),
    state === undefined ? null : drawRingHatching({ state, rings, ink }),
  ];
}

/** A length of black and white, as long as fits a quarter of the width, and north. */
function drawScale(
  perMetre: number,
  width: number,
  height: number,
  { ink, units }: BasinOptions,
): DrawingContent {
  const unit_m = SCALES_M[units];
  const length_m =
    unit_m *
    (SCALE_LENGTHS.findLast((length) => length * unit_m * perMetre <= width / 4) ?? SCALE_LENGTHS[0] ?? 1);
  const length = tenth(length_m * perMetre);
  const y = tenth(height - 9);
  return group({ stroke: ink.line, "stroke-width": 1 }, [
    path({ d: `M6 ${y}h${length}v4h${-length}Z`, fill: ink.paper }),
    path({ d: `M6 ${y}h${tenth(length / 2)}v4h${tenth(-length / 2)}Z`, fill: ink.line }),
    text({ x: 6, y: tenth(y - 4), fill: ink.words, stroke: "none" }, distanceText(length_m, units)),
    path({ d: `M14 36V10M9 17L14 10L19 17`, fill: "none" }),
    text({ x: 22, y: 20, fill: ink.words, stroke: "none", "font-weight": "bold" }, "N"),
  ]);
}

/**
 * All lakes where they lie, north up, distances true and lakes drawn larger than true, hatched by what each is likeliest to be on
 * some days. A lake that has no room for its name has none; the chart of all lakes names it.
 */
export function basinMap(lakes: readonly BasinLake[], options: BasinOptions): Drawing {
  const { ink, width, days } = options;
  const { placed, height, perMetre } = placeLakes(lakes, width);
  const room = { left: 1, top: 1, right: width - 1, bottom: height - 1 };
  const corners = [
    { left: 0, top: 0, right: 36, bottom: 40 },
    { left: 0, top: height - 30, right: width / 4 + 12, bottom: height },
  ];
  const labels = placeLabels(placed, room, corners, ink.textSize);
  return createDrawing(
    {
      width,
      height: tenth(height),
      title: `Map of the lakes on ${days}, north up; lakes are drawn larger than they are. ${lakes
        .map((lake) => `${lake.name}: ${onText(lake)}`)
        .join("; ")}.`,
      textSize: ink.textSize,
    },
    [
      placed.map((one) => drawLake(one, ink)),
      labels.map((label) => drawLabel(label, ink)),
      drawScale(perMetre, width, height, options),
    ],
  );
}

/** A lake's outline alone, as large as fits; null where no shape is known. It stands beside the lake's name. */
export function lakeOutline(
  shoreline: BasinLake["shoreline"],
  { ink, width, height }: { readonly ink: Ink; readonly width: number; readonly height: number },
): Drawing | null {
  const [first] = shoreline.flat();
  if (first === undefined) return null;
  const project = basinProjection(shoreline.flat());
  const rings = shoreline.map((ring) => ringOn(project, ring));
  const box = boxOf(rings.flat());
  const scale = Math.min((width - 4) / (box.right - box.left), (height - 4) / (box.bottom - box.top));
  const placed = rings.map((ring) =>
    ring.map(({ x, y }) => ({
      x: width / 2 + (x - (box.left + box.right) / 2) * scale,
      y: height / 2 + (y - (box.top + box.bottom) / 2) * scale,
    })),
  );
  return createDrawing({ width, height, title: null }, [
    path({
      d: placed.map(linePath).join(""),
      fill: ink.states.postTurnover.ground,
      "fill-rule": "evenodd",
      stroke: ink.words,
      "stroke-width": 1.4,
    }),
  ]);
}
