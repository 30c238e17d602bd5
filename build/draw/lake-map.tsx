import * as polyclip from "polyclip-ts";
import type { JSX } from "preact";
import type { GuideLake } from "../guide/guide-schema.ts";
import { type Phase, phaseName, stateOfPhase } from "../model/phase.ts";
import { depthNumber, depthRange, depthUnit, type UnitSystem } from "../model/units.ts";
import { type Box, wrapped } from "./boxes.ts";
import { contourLabels } from "./contour-labels.ts";
import { LandHatching, type Ring, RingHatching } from "./hatching.tsx";
import type { Ink } from "./ink.ts";
import { LEADING } from "./lettering.ts";
import { type DrawnMap, linePath, type MapFrame, mapFrame, type Spot } from "./map-frame.ts";
import { MapMark, PatchedWord, type PlacedMark, placeMapMarks } from "./map-marks.tsx";
import { tenth } from "./numbers.ts";
import { picture } from "./picture.tsx";
import { SCALE_ROW, ScaleAndNorth } from "./scale-bar.tsx";

interface MapOptions {
  readonly ink: Ink;
  readonly units: UnitSystem;
  /** In the drawing's units: CSS pixels on screen, points on paper. */
  readonly width: number;
  /** Whose depths to fish are hatched; none unless said. */
  readonly phase?: Phase | null;
}

type Zone = GuideLake["place"]["zones"][number];

/** Contours this near a zone's own depth are its edge, m. */
const EDGE_M = 0.05;

/** The rings of a zone in the drawing, cut off at the shore. */
function zoneRings(zone: Zone, map: DrawnMap, { toSpot }: MapFrame): Ring[] {
  return polyclip
    .intersection(zone.polygons, map.shoreline)
    .flatMap((polygon) => polygon.map((ring) => ring.map(toSpot)));
}

const ringsPath = (rings: readonly Ring[]): string => rings.map(linePath).join("");

/** A zone's ground and hatching. */
const Area = ({ zone, rings, ink }: { zone: Zone; rings: readonly Ring[]; ink: Ink }): JSX.Element => {
  const state = stateOfPhase(zone.phase);
  return (
    <>
      <path
        d={ringsPath(rings)}
        fill={ink.states[state].ground}
        fill-rule="evenodd"
        stroke={ink.line}
        stroke-width={0.5}
      />
      <RingHatching state={state} rings={rings} ink={ink} />
    </>
  );
};

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

interface KeyRow {
  readonly lines: readonly string[];
  /** What stands before the words, about this middle. */
  readonly sign: (at: Spot) => JSX.Element;
}

const square = ({ x, y }: Spot, half: number): Ring => [
  { x: x - half, y: y - half },
  { x: x + half, y: y - half },
  { x: x + half, y: y + half },
  { x: x - half, y: y + half },
  { x: x - half, y: y - half },
];

/** What the signs of the map mean, a row each. */
function keyRows(
  placed: readonly PlacedMark[],
  zone: Zone | undefined,
  shows: { readonly island: boolean; readonly depths: boolean },
  { ink, units, width }: MapOptions,
): KeyRow[] {
  const size = ink.textSize;
  const lines = (text: string): string[] => wrapped(text, width - size * 2, size);
  return [
    ...(zone === undefined
      ? []
      : [
          {
            lines: lines(`${phaseName(zone.phase)}: fish at ${depthRange(zone.from_m, zone.to_m, units)}`),
            sign: (at: Spot) => (
              <>
                <Area zone={zone} rings={[square(at, size * 0.5)]} ink={ink} />
                <path d={linePath(square(at, size * 0.5))} fill="none" stroke={ink.line} stroke-width={0.7} />
              </>
            ),
          },
        ]),
    ...placed.map(({ letter, mark, name }) => ({
      lines: lines(`${letter} ${markText(mark, name)}`),
      sign: (at: Spot) => <MapMark mark={mark} at={at} ink={ink} />,
    })),
    ...(shows.island
      ? [
          {
            lines: lines("Island"),
            sign: (at: Spot) => (
              <>
                <LandHatching rings={[square(at, size * 0.45)]} ink={ink} />
                <path
                  d={linePath(square(at, size * 0.45))}
                  fill="none"
                  stroke={ink.words}
                  stroke-width={1.5}
                />
              </>
            ),
          },
        ]
      : []),
    ...(shows.depths ? [{ lines: lines(`Depths in ${depthUnit(units)}`), sign: () => <></> }] : []),
  ];
}

/** The rows of the key from `top` down. */
function Key({ rows, top, ink }: { rows: readonly KeyRow[]; top: number; ink: Ink }) {
  const size = ink.textSize;
  const row_y = rows.map(
    (_, i) => top + size * LEADING * rows.slice(0, i).reduce((sum, { lines }) => sum + lines.length, 0),
  );
  return (
    <g fill={ink.words}>
      {rows.map(({ lines, sign }, i) => (
        <>
          {sign({ x: size * 0.8, y: (row_y[i] ?? top) + size * 0.65 })}
          {lines.map((line, n) => (
            <text x={tenth(size * 1.8)} y={tenth((row_y[i] ?? top) + size * (LEADING * n + 0.95))}>
              {line}
            </text>
          ))}
        </>
      ))}
    </g>
  );
}

/** "Dam ramp (launch)", "North shoal", "inflow". */
export const markText = (mark: PlacedMark["mark"], name: string | null): string =>
  name === null ? mark : name.toLowerCase().includes(mark) ? name : `${name} (${mark})`;

/** What the map shows, in one sentence. */
export function mapTitle(lake: GuideLake, phase: Phase | null, units: UnitSystem): string {
  const zone = lake.place.zones.find((one) => one.phase === phase);
  const where =
    zone === undefined
      ? ""
      : `, and where it is ${depthRange(zone.from_m, zone.to_m, units)} deep, to fish in ${phaseName(zone.phase).toLowerCase()}`;
  return `Map of ${lake.name}, north up: shore, depths and marks${where}.`;
}

/** A lake seen from above, north up, as an SVG without ids; `null` without a shoreline. */
export function lakeMap(lake: GuideLake, options: MapOptions): string | null {
  const { map, zones } = lake.place;
  if (map === null) return null;
  const { ink, units, width, phase = null } = options;
  const size = ink.textSize;
  const frame = mapFrame(map, width, size);
  const room: Box = { left: 0, top: 0, right: width, bottom: frame.height };
  const zone = zones.find((one) => one.phase === phase);
  const shore = map.shoreline.map((polygon) => polygon.map((ring) => ring.map(frame.toSpot)));
  const islands = shore.flatMap(([, ...inner]) => inner);
  const contours = roomyContours(map, shore.flat(), size).map(({ depth_m, lines }) => ({
    text: depthNumber(depth_m, units),
    within: zone !== undefined && depth_m > zone.from_m + EDGE_M && depth_m < zone.to_m - EDGE_M,
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
  const key = keyRows(marks, zone, { island: islands.length > 0, depths: contours.length > 0 }, options);
  const keyTop = frame.height + size * SCALE_ROW;
  const keyLines = key.reduce((sum, { lines }) => sum + lines.length, 0);
  return picture(
    {
      width,
      height: tenth(keyTop + size * (LEADING * keyLines + 0.3)),
      title: mapTitle(lake, phase, units),
      textSize: size,
    },
    <>
      {zone === undefined ? null : <Area zone={zone} rings={zoneRings(zone, map, frame)} ink={ink} />}
      {contours.map(({ lines, within }) => (
        <path
          d={lines.map(linePath).join("")}
          fill="none"
          stroke={within && zone !== undefined ? ink.states[stateOfPhase(zone.phase)].words : ink.line}
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
      <Key rows={key} top={keyTop} ink={ink} />
    </>,
  );
}
