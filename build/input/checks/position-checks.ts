import { zoneLongitude_deg } from "../../model/calendar.ts";
import type { Diagnostic } from "../../model/diagnostic.ts";
import type { Fault } from "../../model/fault.ts";
import { distance_m, type LonLat } from "../../model/lake-shape.ts";
import type { LakeDraft } from "../lake-file.ts";
import { warningAt } from "../problem.ts";

/** The same place with its longitude within half a turn of the lake's own, so that no lake is cut at 180 degrees. */
export const unwrapLongitude = ([lon, lat]: LonLat, [lakeLon]: LonLat): LonLat => [
  lon + 360 * Math.round((lakeLon - lon) / 360),
  lat,
];

const isOnEarth = ([lon, lat]: LonLat): boolean => Math.abs(lat) <= 90 && Math.abs(lon) <= 360;
const swapped = ([lon, lat]: LonLat): LonLat => [lat, lon];

/** How far a lake's position may lie from its shape, besides the lake's own length. */
const NEAR_M = 5000;

/** Corner to corner: a shape that reaches farther is a mistyped place as a rule, and takes minutes to work out. */
const LONGEST_M = 100_000;

interface Extent {
  readonly middle: LonLat;
  readonly length_m: number;
}

function extentOf(places: readonly LonLat[], lake: LonLat): Extent {
  let [west, south, east, north] = [360, 90, -360, -90];
  for (const place of places) {
    const [lon, lat] = unwrapLongitude(place, lake);
    [west, east] = [Math.min(west, lon), Math.max(east, lon)];
    [south, north] = [Math.min(south, lat), Math.max(north, lat)];
  }
  return {
    middle: [(west + east) / 2, (south + north) / 2],
    length_m: distance_m([west, south], [east, north]),
  };
}

const isNearLake = (places: readonly LonLat[], lake: LonLat, room_m: number): boolean => {
  const { middle, length_m } = extentOf(places, lake);
  return distance_m(middle, lake) <= NEAR_M + length_m + room_m;
};

/** How long a lake is, corner to corner of its frame. */
export const lengthOf_m = (places: readonly LonLat[], lake: LonLat): number =>
  extentOf(places, lake).length_m;

const kilometres = (metres: number): string => `${Math.round(metres / 1000).toLocaleString("en-GB")} km`;

/** A place far from all others, mistyped as a rule. */
function farthestPlaceFault(places: readonly LonLat[], lake: LonLat): Fault {
  const away_m = (place: LonLat): number => distance_m(unwrapLongitude(place, lake), lake);
  const [lon, lat] = places.reduce((far, place) => (away_m(place) > away_m(far) ? place : far), lake);
  return {
    code: "place-far-away",
    message: `longitude ${lon}, latitude ${lat} lies ${kilometres(away_m([lon, lat]))} from the lake's position`,
    hint: `correct it; of a lake longer than ${kilometres(LONGEST_M)} draw the part that you fish`,
  };
}

/**
 * What is wrong with where places lie on the earth; undefined when they lie by the lake.
 * @param lake the position in the lake's own file
 * @param order how this file should give a place: "longitude first", or the names of its columns
 * @param room_m how much farther they may lie, where they are not the lake itself
 */
export function positionFault(
  places: readonly LonLat[],
  lake: LonLat,
  order: string,
  room_m = 0,
): Fault | undefined {
  const turned = places.map(swapped);
  const fitsTurned = turned.every(isOnEarth) && isNearLake(turned, lake, room_m);
  if (!places.every(isOnEarth))
    return fitsTurned
      ? {
          code: "lon-lat-swapped",
          message: "longitude and latitude are swapped",
          hint: `write ${order}`,
        }
      : {
          code: "not-degrees",
          message: "these are not degrees of longitude and latitude",
          hint: "export the file again in WGS 84 (EPSG:4326)",
        };
  const { middle, length_m } = extentOf(places, lake);
  const away_m = distance_m(middle, lake);
  if (length_m > LONGEST_M) return farthestPlaceFault(places, lake);
  if (away_m <= NEAR_M + length_m + room_m) return undefined;
  const message = `this lies ${kilometres(away_m)} from the lake's position`;
  return fitsTurned
    ? {
        code: "lon-lat-swapped",
        message: `${message}; with longitude and latitude swapped it would fit`,
        hint: `write ${order}`,
      }
    : {
        code: "shape-far-away",
        message,
        hint: "correct “position” in the lake's file, or see whether this file belongs to another lake",
      };
}

/**
 * How far a place may lie east or west of where clocks of its zone show the sun's own time, degrees. Principal places of zones
 * reach 34 degrees (Dawson, Yukon; tz database 2025b, zone.tab); the west of China some 46 (from memory).
 */
const ZONE_REACH_DEG = 60;

/** A club's lakes lie nearer than this to another of them, m. Common sense, no source. */
const CLUB_REACH_M = 1_000_000;

/** No place is nearer to another than their latitudes are apart: a degree is at least 110.5 km long on WGS 84. */
const LEAST_M_PER_DEG = 110_500;

/** A lake and where its file says it is. */
interface LakePosition {
  readonly doc: LakeDraft["doc"];
  readonly name: string;
  readonly at: LonLat;
}

/** The way from one longitude to another, over 180 degrees where that is shorter; 0 to 180. */
const degreesApart = (one: number, other: number): number =>
  Math.abs(one - other - 360 * Math.round((one - other) / 360));

interface SignOrSwapError {
  /** The longitude that was meant. */
  readonly lon: number;
  readonly hint: string;
}

/** The slips of the pen that may have made a position. */
function likelySignOrSwapErrors([lon, lat]: LonLat): SignOrSwapError[] {
  const sign =
    lon > 0
      ? { lon: -lon, hint: `is a minus missing? West is negative: lon: -${lon}` }
      : { lon: -lon, hint: `is the minus one too many? East is positive: lon: ${-lon}` };
  const swapped = { lon: lat, hint: `are they swapped? Then write lat: ${lon}, lon: ${lat}` };
  return Math.abs(lon) <= 90 ? [sign, swapped] : [sign];
}

/** A lake on another side of the world than the club's clocks; undefined when it may well lie there. */
function timeZoneWarning(
  { doc, at }: LakePosition,
  timezone: string,
  zone_deg: number,
): Diagnostic | undefined {
  const off_deg = (place: { readonly lon: number }): number => degreesApart(place.lon, zone_deg);
  const [lon] = at;
  if (off_deg({ lon }) <= ZONE_REACH_DEG) return undefined;
  const [slip] = likelySignOrSwapErrors(at)
    .filter((meant) => off_deg(meant) <= ZONE_REACH_DEG)
    .sort((a, b) => off_deg(a) - off_deg(b));
  return warningAt(doc.spot(["position", "lon"]), {
    code: "far-from-time-zone",
    message: `position.lon: ${lon} is far from the club's time zone ${timezone}, which lies about longitude ${zone_deg}`,
    hint: `${slip?.hint ?? "correct the position"}; or correct “timezone” in club.yaml; if both are right, leave it`,
  });
}

function isWithinClubReach([lon, lat]: LonLat, [toLon, toLat]: LonLat): boolean {
  if (Math.abs(lat - toLat) * LEAST_M_PER_DEG > CLUB_REACH_M) return false;
  return distance_m([lon, lat], [toLon, toLat]) <= CLUB_REACH_M;
}

/** A lake with no other of the club anywhere near; undefined when it has one, or is alone. */
function isolatedLakeWarning(lake: LakePosition, lakes: readonly LakePosition[]): Diagnostic | undefined {
  const others = lakes.filter((other) => other !== lake);
  const [first, ...rest] = others;
  if (first === undefined || others.some(({ at }) => isWithinClubReach(lake.at, at))) return undefined;
  const away_m = (other: LakePosition): number => distance_m(lake.at, other.at);
  const nearest = rest.reduce((near, other) => (away_m(other) < away_m(near) ? other : near), first);
  return warningAt(lake.doc.spot(["position"]), {
    code: "far-from-other-lakes",
    message: `position: this is ${kilometres(away_m(nearest))} from ${nearest.name}, the nearest other lake of the club`,
    hint: "correct it: south and west are negative, lat is how far north and lon how far east; if it is right, leave it",
  });
}

/**
 * Doubts about positions that a map would show at once: a longitude that does not go with the club's time zone, as where a
 * minus is forgotten, and a lake far from all others. Near Greenwich and near 180 degrees a minus makes too little difference
 * for the first to see it.
 */
export function lakePositionWarnings(
  drafts: readonly LakeDraft[],
  timezone: string,
  season: number,
): Diagnostic[] {
  const zone_deg = zoneLongitude_deg(timezone, season);
  const lakes = drafts.flatMap(({ doc, slug, fields: { name, position } }): LakePosition[] =>
    position === undefined ? [] : [{ doc, name: name ?? slug, at: [position.lon, position.lat] }],
  );
  const doubts = lakes.map((lake) =>
    zone_deg === undefined ? undefined : timeZoneWarning(lake, timezone, zone_deg),
  );
  const trusted = lakes.filter((_, i) => doubts[i] === undefined);
  return [...doubts, ...trusted.map((lake) => isolatedLakeWarning(lake, trusted))].filter(
    (doubt) => doubt !== undefined,
  );
}
