import { distance_m } from "../model/geodesy.ts";
import type { LonLat } from "../model/lake-shape.ts";
import type { Fault } from "./problem.ts";

/** The same place with its longitude within half a turn of the lake's own, so that no lake is cut at 180 degrees. */
export const besideLake = ([lon, lat]: LonLat, [lakeLon]: LonLat): LonLat => [
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
    const [lon, lat] = besideLake(place, lake);
    [west, east] = [Math.min(west, lon), Math.max(east, lon)];
    [south, north] = [Math.min(south, lat), Math.max(north, lat)];
  }
  return {
    middle: [(west + east) / 2, (south + north) / 2],
    length_m: distance_m([west, south], [east, north]),
  };
}

const isNear = (places: readonly LonLat[], lake: LonLat, room_m: number): boolean => {
  const { middle, length_m } = extentOf(places, lake);
  return distance_m(middle, lake) <= NEAR_M + length_m + room_m;
};

/** How long a lake is, corner to corner of its frame. */
export const lengthOf_m = (places: readonly LonLat[], lake: LonLat): number =>
  extentOf(places, lake).length_m;

export const kilometres = (metres: number): string =>
  `${Math.round(metres / 1000).toLocaleString("en-GB")} km`;

/** A place far from all others, mistyped as a rule. */
function strayed(places: readonly LonLat[], lake: LonLat): Fault {
  const away_m = (place: LonLat): number => distance_m(besideLake(place, lake), lake);
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
export function placeFault(
  places: readonly LonLat[],
  lake: LonLat,
  order: string,
  room_m = 0,
): Fault | undefined {
  const turned = places.map(swapped);
  const fitsTurned = turned.every(isOnEarth) && isNear(turned, lake, room_m);
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
  if (length_m > LONGEST_M) return strayed(places, lake);
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
