import type { GuideLake } from "../guide/guide-schema.ts";
import { type Phase, phaseName, stateOfPhase } from "../model/phase.ts";
import { depthNumber, depthRange, type UnitSystem } from "../model/units.ts";
import type { Box } from "./boxes.ts";
import { contourLabels } from "./contour-labels.ts";
import { LandHatching, type Ring } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { type DrawnMap, linePath, mapFrame, TALLEST } from "./map-frame.ts";
import { Key, keyRows, layoutKey } from "./map-key.tsx";
import { letteredMarks, MapMark, markText, PatchedWord, placeMapMarks } from "./map-marks.tsx";
import { Area, drawnZones, ringsPath, SharedHatching } from "./map-zones.tsx";
import { tenth } from "./numbers.ts";
import { picture } from "./picture.tsx";
import { SCALE_ROW, ScaleAndNorth } from "./scale-bar.tsx";

interface MapOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  /** Of the whole drawing, its key included, at the most; by the lake's own shape unless said. */
  readonly height?: number;
  /** Whose depths to fish are hatched, the later over the earlier; none unless said. */
  readonly phases?: readonly Phase[];
}

/** A lake drawn, and what of it could not be. */
interface DrawnLakeMap {
  readonly svg: string;
  readonly title: string;
  readonly height: number;
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

/** A lake seen from above as an SVG without ids; `null` without a shoreline. */
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
  const svg = picture(
    { width, height, title, textSize: size },
    <>
      {areas.map(({ zone, rings }) => (
        <Area zone={zone} rings={rings} ink={ink} />
      ))}
      {areas.flatMap(({ zone, rings, under }) =>
        under.map((over) => <SharedHatching zone={zone} rings={rings} over={over} ink={ink} />),
      )}
      {contours.map(({ lines, within }) => (
        <path
          d={lines.map(linePath).join("")}
          fill="none"
          stroke={within === undefined ? ink.line : ink.states[stateOfPhase(within.phase)].words}
          stroke-width={0.6}
        />
      ))}
      <path d={ringsPath(shore.flat())} fill="none" stroke={ink.words} stroke-width={1.5} />
      {islands.length === 0 ? null : <LandHatching rings={islands} ink={ink} />}
      {labels.map((label) => (
        <PatchedWord {...label} ink={ink} />
      ))}
      {marks.map(({ mark, at, letter, letterAt, letterBox }) => (
        <>
          <MapMark mark={mark} at={at} ink={ink} />
          <PatchedWord text={letter} at={letterAt} box={letterBox} ink={ink} />
        </>
      ))}
      <ScaleAndNorth
        perMetre={frame.perMetre}
        units={units}
        ink={ink}
        width={width}
        y={frame.height + (size * SCALE_ROW) / 2}
      />
      <Key placed={key.placed} top={keyTop} ink={ink} />
    </>,
  );
  const drawn = new Set(marks.map(({ letter }) => letter));
  const leftOut = letteredMarks(map)
    .filter(({ letter }) => !drawn.has(letter))
    .map(({ mark, name }) => markText(mark, name));
  return { svg, title, height, room: most.height, leftOut };
}
