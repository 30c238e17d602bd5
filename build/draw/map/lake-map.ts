import type { GuideLake } from "../../guide/guide-schema.ts";
import { type Phase, phaseName, stateOfPhase } from "../../model/phase.ts";
import { depthNumber, depthRange, type UnitSystem } from "../../model/units.ts";
import { createDrawing, type Drawing, path } from "../drawing.ts";
import {
  type Box,
  containsPoint,
  type DrawnMap,
  isWithin,
  linePath,
  mapFrame,
  overlaps,
  type Point,
  TALLEST,
  tenth,
  textBox,
} from "../geometry.ts";
import { drawLandHatching, type Ring } from "../hatching.ts";
import type { Ink } from "../ink.ts";
import { drawKey, drawScaleAndNorth, keyRows, layoutKey, SCALE_ROW } from "./map-key.ts";
import {
  drawArea,
  drawMapMark,
  drawnZones,
  drawPatchedWord,
  drawSharedHatching,
  letteredMarks,
  markText,
  placeMapMarks,
  ringsPath,
} from "./zones-and-marks.ts";

/** One contour in a drawing: its depth in words and its lines. */
interface DrawnContour {
  readonly text: string;
  readonly lines: readonly (readonly Point[])[];
}

interface ContourLabel {
  readonly text: string;
  readonly at: Point;
  readonly box: Box;
}

/** A line wants to be this many times as long as its label is wide. */
const LENGTH_WANTED = 4;

const lengthOf = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, to, i) => {
    const from = line[i] ?? to;
    return sum + Math.hypot(to.x - from.x, to.y - from.y);
  }, 0);

/** Points along a line, no two farther apart than `step`. */
const along = (line: readonly Point[], step: number): Point[] =>
  line.flatMap((to, i) => {
    const from = line[i - 1] ?? to;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
    return Array.from({ length: steps }, (_, n) => ({
      x: from.x + ((to.x - from.x) * (n + 1)) / steps,
      y: from.y + ((to.y - from.y) * (n + 1)) / steps,
    }));
  });

/**
 * One label a contour, on its longest line, where it runs into no other label, hides nothing of the shore and as little of the other lines as
 * may be. A contour with no such place has none.
 */
function contourLabels(
  contours: readonly DrawnContour[],
  shore: readonly (readonly Point[])[],
  room: Box,
  taken: readonly Box[],
  size: number,
): ContourLabel[] {
  const labels: ContourLabel[] = [];
  const step = size / 4;
  const shoreSpots = shore.flatMap((ring) => along(ring, step));
  for (const { text, lines } of contours) {
    const line = lines.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0] ?? [];
    const others = contours
      .flatMap((one) => one.lines.filter((other) => other !== line))
      .flatMap((other) => along(other, step));
    const long = lengthOf(line);
    const inUse = [...taken, ...labels.map((label) => label.box)];
    const places = along(line, size)
      .map((at) => ({ at, box: textBox(text, at, size) }))
      .filter(({ box }) => long > LENGTH_WANTED * (box.right - box.left) && isWithin(box, room))
      .filter(
        ({ box }) =>
          !inUse.some((b) => overlaps(b, box)) && !shoreSpots.some((spot) => containsPoint(box, spot)),
      )
      .map((place) => ({ ...place, hidden: others.filter((spot) => containsPoint(place.box, spot)).length }));
    const least = Math.min(...places.map(({ hidden }) => hidden));
    const even = places.filter(({ hidden }) => hidden === least);
    // Up the same side of the lake, so that the eye finds them in a row.
    const best = even.toSorted((a, b) => b.at.x + b.at.y - (a.at.x + a.at.y))[0];
    if (best !== undefined) labels.push({ text, at: best.at, box: best.box });
  }
  return labels;
}

interface MapOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  /** Greatest height of the whole drawing with its key; by default it follows from the lake's shape. */
  readonly height?: number;
  /** Phases whose depths to fish are hatched, the later over the earlier; by default none. */
  readonly phases?: readonly Phase[];
}

/** A lake drawn, and what of it could not be. */
interface DrawnLakeMap {
  readonly drawing: Drawing;
  /** Height that the key leaves for the lake. */
  readonly room: number;
  /** Marks that found no room for their letter, in words. */
  readonly leftOut: readonly string[];
}

/** Contours this near a zone's own depth are its edge, m. */
const EDGE_M = 0.05;

/** Room a contour wants towards its neighbour, by the size of lettering. */
const CONTOUR_ROOM = 0.24;

/**
 * Every contour, or every second, third and so on of a lake drawn so narrow that they would run together: its area by
 * its shore is half the width of a long lake.
 */
function roomyContours(map: DrawnMap, shore: readonly Ring[], size: number): DrawnMap["contours"] {
  const sums = shore.map((ring) =>
    ring.slice(1).reduce(
      ({ area, length }, to, i) => {
        const from = ring[i] ?? to;
        return {
          area: area + (from.x * to.y - to.x * from.y) / 2,
          length: length + Math.hypot(to.x - from.x, to.y - from.y),
        };
      },
      { area: 0, length: 0 },
    ),
  );
  const area = Math.abs(sums.reduce((sum, one) => sum + one.area, 0));
  const length = sums.reduce((sum, one) => sum + one.length, 0);
  const every = Math.ceil((map.contours.length * size * CONTOUR_ROOM) / (area / length));
  return map.contours.filter((_, i) => (i + 1) % every === 0);
}

/** What the map shows, in one sentence. */
function mapTitle(lake: GuideLake, phases: readonly Phase[], units: UnitSystem): string {
  const zones = lake.place.zones.filter(({ phase }) => phases.includes(phase));
  const where = zones.map(
    (zone) =>
      `where it is ${depthRange(zone.from_m, zone.to_m, units)} deep, to fish in ${phaseName(zone.phase).toLowerCase()}`,
  );
  return `Map of ${lake.name}, north up: shore, depths and marks${where.map((words) => `, and ${words}`).join("")}.`;
}

/** A lake seen from above; `null` without a shoreline. */
export function lakeMap(lake: GuideLake, options: MapOptions): DrawnLakeMap | null {
  const { map, zones } = lake.place;
  if (map === null) return null;
  const { ink, units, width, phases = [] } = options;
  const size = ink.textSize;
  const shown = phases.flatMap((phase) => zones.filter((zone) => zone.phase === phase));
  const hasIslands = map.shoreline.some(([, ...inner]) => inner.length > 0);
  const keyOf = (marks: ReturnType<typeof letteredMarks>, shared: Parameters<typeof keyRows>[0]["shared"]) =>
    layoutKey(
      keyRows({ zones: shown, shared, marks, island: hasIslands, depths: map.contours.length > 0 }, options),
      width,
      size,
    );
  /** As high as the key can come out: every mark, and every two zones sharing ground. */
  const pairs = shown.flatMap((zone, i) => shown.slice(i + 1).map((over) => [zone, over] as const));
  const below = keyOf(letteredMarks(map), pairs).height + size * (SCALE_ROW + 0.3);
  const most = { width, height: options.height === undefined ? width * TALLEST : options.height - below };
  const frame = mapFrame(map, most, size);
  const room: Box = { left: 0, top: 0, right: width, bottom: frame.height };
  const areas = drawnZones(shown, frame);
  const shore = map.shoreline.map((polygon) => polygon.map((ring) => ring.map(frame.toSpot)));
  const islands = shore.flatMap(([, ...inner]) => inner);
  const contours = roomyContours(map, shore.flat(), size).map(({ depth_m, lines }) => ({
    text: depthNumber(depth_m, units),
    within: shown.findLast((zone) => depth_m > zone.from_m + EDGE_M && depth_m < zone.to_m - EDGE_M),
    lines: lines.map((line) => line.map(frame.toSpot)),
  }));
  const marks = placeMapMarks(map, frame, room, ink);
  const labels = contourLabels(
    contours,
    shore.flat(),
    room,
    marks.flatMap(({ box, letterBox }) => [box, letterBox]),
    size,
  );
  const key = keyOf(
    marks,
    areas.flatMap(({ zone, under }) => under.map((over) => [zone, over.zone] as const)),
  );
  const keyTop = frame.height + size * SCALE_ROW;
  const height = tenth(keyTop + key.height + size * 0.3);
  const title = mapTitle(lake, phases, units);
  const drawing = createDrawing({ width, height, title, textSize: size }, [
    areas.map(({ zone, rings }) => drawArea({ zone, rings, ink })),
    areas.flatMap(({ zone, rings, under }) =>
      under.map((over) => drawSharedHatching({ zone, rings, over, ink })),
    ),
    contours.map(({ lines, within }) =>
      path({
        d: lines.map(linePath).join(""),
        fill: "none",
        stroke: within === undefined ? ink.line : ink.states[stateOfPhase(within.phase)].words,
        "stroke-width": 0.6,
      }),
    ),
    path({ d: ringsPath(shore.flat()), fill: "none", stroke: ink.words, "stroke-width": 1.5 }),
    islands.length === 0 ? null : drawLandHatching({ rings: islands, ink }),
    labels.map(({ text, at, box }) => drawPatchedWord({ word: text, at, box, ink })),
    marks.map(({ mark, at, letter, letterAt, letterBox }) => [
      drawMapMark({ mark, at, ink }),
      drawPatchedWord({ word: letter, at: letterAt, box: letterBox, ink }),
    ]),
    drawScaleAndNorth({
      perMetre: frame.perMetre,
      units,
      ink,
      width,
      y: frame.height + (size * SCALE_ROW) / 2,
    }),
    drawKey({ placed: key.placed, top: keyTop, ink }),
  ]);
  const drawn = new Set(marks.map(({ letter }) => letter));
  const leftOut = letteredMarks(map)
    .filter(({ letter }) => !drawn.has(letter))
    .map(({ mark, name }) => markText(mark, name));
  return { drawing, room: most.height, leftOut };
}
