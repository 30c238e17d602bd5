import * as polyclip from "polyclip-ts";
import { create } from "xmlbuilder2";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";

type MapShape = NonNullable<GuideLake["place"]["map"]>;
type MultiPolygon = MapShape["shoreline"];
type Line = MapShape["contours"][number]["lines"][number];

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
const normalizeLongitude = (lon: number): number => toMicro(lon - turnOf(lon) * TURN_DEG);

/** Polygons cut at the antimeridian, every longitude from -180 to 180 (RFC 7946, 3.1.9). */
function cutPolygons(polygons: MultiPolygon): MultiPolygon {
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
function cutLine(line: Line): Line[] {
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

type LakeMap = NonNullable<GuideLake["place"]["map"]>;

const feature = (properties: object, type: string, coordinates: unknown): object => ({
  type: "Feature",
  properties,
  geometry: { type, coordinates },
});

/**
 * A lake's shoreline, contours and marks as a GeoJSON FeatureCollection (RFC 7946), with the properties of a club's own
 * file, `lakes/NAME.geojson`; `depth_m` is the same depth as a number, for programs that label or colour by it.
 */
export function mapGeojson({ club }: Guide, lake: GuideLake, map: LakeMap): string {
  const collection = {
    type: "FeatureCollection",
    ...(club.notice === null ? {} : { description: club.notice }),
    features: [
      feature({ kind: "shoreline", name: lake.name }, "MultiPolygon", cutPolygons(map.shoreline)),
      ...map.contours.map(({ depth_m, lines }) =>
        feature(
          { kind: "contour", depth: `${depth_m} m`, depth_m },
          "MultiLineString",
          lines.flatMap(cutLine),
        ),
      ),
      ...map.marks.map(({ mark, name, lon, lat }) =>
        feature({ kind: "mark", mark, ...(name === null ? {} : { name }) }, "Point", [
          normalizeLongitude(lon),
          lat,
        ]),
      ),
    ],
  };
  return `${JSON.stringify(collection)}\n`;
}

const GPX_NAMESPACE = "http://www.topografix.com/GPX/1/1";
/** Stands for a character that no XML 1.0 file may hold. */
const NO_CHARACTER = "\ufffd";

interface Waypoint {
  readonly lat: number;
  readonly lon: number;
  readonly name: string;
  readonly kind: string;
}

const waypointsOf = ({ name: lake, position, place }: GuideLake): Waypoint[] => [
  { ...position, name: lake, kind: "lake" },
  ...(place.map?.marks ?? []).map(({ mark, name, lon, lat }) => ({
    lat,
    lon,
    name: `${lake}: ${name ?? mark}`,
    kind: mark,
  })),
];

/**
 * The lake's position and its marks as waypoints (GPX 1.1), for a receiver in the boat. The schema fixes the order of
 * the elements within each other.
 */
export function marksGpx(guide: Guide, lake: GuideLake): string {
  const gpx = create({ version: "1.0", encoding: "UTF-8", invalidCharReplacement: NO_CHARACTER }).ele(
    GPX_NAMESPACE,
    "gpx",
    { version: "1.1", creator: guide.program.name },
  );
  const about = gpx.ele("metadata");
  about.ele("name").txt(lake.name);
  about.ele("desc").txt([`${guide.club.name}, ${guide.season}.`, guide.club.notice ?? ""].join(" ").trim());
  for (const { lat, lon, name, kind } of waypointsOf(lake)) {
    const waypoint = gpx.ele("wpt", { lat: String(lat), lon: String(normalizeLongitude(lon)) });
    if (lake.elevation_m !== null) waypoint.ele("ele").txt(String(lake.elevation_m));
    waypoint.ele("name").txt(name);
    waypoint.ele("type").txt(kind);
  }
  return `${gpx.end({ prettyPrint: true })}\n`;
}
