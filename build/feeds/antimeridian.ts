import * as polyclip from "polyclip-ts";
import type { GuideLake } from "../guide/guide-schema.ts";

type LakeMap = NonNullable<GuideLake["place"]["map"]>;
type MultiPolygon = LakeMap["shoreline"];
type Line = LakeMap["contours"][number]["lines"][number];

const TURN_DEG = 360;
const HALF_TURN_DEG = 180;

/** How many turns a longitude lies east of -180 to 180. */
const turnOf = (lon: number): number => Math.floor((lon + HALF_TURN_DEG) / TURN_DEG);

/** The turns that positions lie in; a line that ends on the antimeridian does not go beyond it. */
function turnsOf(line: Line): number[] {
  const lons = line.map(([lon]) => lon);
  const [first, last] = [
    turnOf(Math.min(...lons)),
    Math.ceil((Math.max(...lons) + HALF_TURN_DEG) / TURN_DEG) - 1,
  ];
  return Array.from({ length: Math.max(1, last - first + 1) }, (_, i) => first + i);
}

/** To a millionth of a degree, 0.1 m: taking a turn away leaves noise in the digits behind. */
const toMicro = (lon: number): number => Number(lon.toFixed(6));

/** The one turn that a line which is already cut lies in. */
const turnOfLine = (line: Line): number => turnsOf(line)[0] ?? 0;

const turnedBack = (line: Line, turn: number): Line =>
  turn === 0 ? line : line.map(([lon, lat]) => [toMicro(lon - turn * TURN_DEG), lat]);

/** Longitude from -180 up to, but not including, 180 (GPX 1.1, longitudeType). */
export const withinTurn = (lon: number): number => toMicro(lon - turnOf(lon) * TURN_DEG);

/** Polygons cut at the antimeridian, every longitude from -180 to 180 (RFC 7946, 3.1.9). */
export function cutPolygons(polygons: MultiPolygon): MultiPolygon {
  const turns = turnsOf(polygons.flat(2));
  const [turn] = turns;
  if (turn !== undefined && turns.length === 1)
    return polygons.map((rings) => rings.map((ring) => turnedBack(ring, turn)));
  return turns.flatMap((each) => {
    const [west, east] = [each * TURN_DEG - HALF_TURN_DEG, each * TURN_DEG + HALF_TURN_DEG];
    const sheet: Line = [
      [west, -90],
      [east, -90],
      [east, 90],
      [west, 90],
      [west, -90],
    ];
    return polyclip
      .intersection(polygons, [sheet])
      .map((rings) => rings.map((ring) => turnedBack(ring, each)));
  });
}

/** A line cut where it crosses the antimeridian, every longitude from -180 to 180. */
export function cutLine(line: Line): Line[] {
  const turns = turnsOf(line);
  const edges = turns.slice(1).map((turn) => turn * TURN_DEG - HALF_TURN_DEG);
  const parts: Line[] = [];
  let part: Line = line.slice(0, 1);
  for (const [i, [toLon, toLat]] of line.slice(1).entries()) {
    const [lon, lat] = line[i] ?? [toLon, toLat];
    for (const edge of edges) {
      if ((lon - edge) * (toLon - edge) >= 0) continue;
      const at: Line[number] = [edge, lat + ((edge - lon) / (toLon - lon)) * (toLat - lat)];
      parts.push([...part, at]);
      part = [at];
    }
    part.push([toLon, toLat]);
    if (edges.includes(toLon)) {
      parts.push(part);
      part = [[toLon, toLat]];
    }
  }
  return [...parts, part]
    .filter(({ length }) => length > 1)
    .map((each) => turnedBack(each, turnOfLine(each)));
}
