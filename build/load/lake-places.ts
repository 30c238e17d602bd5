import { zoneLongitude_deg } from "../model/clock.ts";
import type { Diagnostic } from "../model/diagnostic.ts";
import { distance_m } from "../model/geodesy.ts";
import type { LonLat } from "../model/lake-shape.ts";
import type { LakeDraft } from "./lake-file.ts";
import { warningAt } from "./problem.ts";
import { kilometres } from "./shape-place.ts";

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
interface Placed {
  readonly doc: LakeDraft["doc"];
  readonly name: string;
  readonly at: LonLat;
}

/** The way from one longitude to another, over 180 degrees where that is shorter; 0 to 180. */
const degreesApart = (one: number, other: number): number =>
  Math.abs(one - other - 360 * Math.round((one - other) / 360));

interface Slip {
  /** The longitude that was meant. */
  readonly lon: number;
  readonly hint: string;
}

/** The slips of the pen that may have made a position. */
function slipsOf([lon, lat]: LonLat): Slip[] {
  const sign =
    lon > 0
      ? { lon: -lon, hint: `is a minus missing? West is negative: lon: -${lon}` }
      : { lon: -lon, hint: `is the minus one too many? East is positive: lon: ${-lon}` };
  const swapped = { lon: lat, hint: `are they swapped? Then write lat: ${lon}, lon: ${lat}` };
  return Math.abs(lon) <= 90 ? [sign, swapped] : [sign];
}

/** A lake on another side of the world than the club's clocks; undefined when it may well lie there. */
function zoneDoubt({ doc, at }: Placed, timezone: string, zone_deg: number): Diagnostic | undefined {
  const off_deg = (place: { readonly lon: number }): number => degreesApart(place.lon, zone_deg);
  const [lon] = at;
  if (off_deg({ lon }) <= ZONE_REACH_DEG) return undefined;
  const [slip] = slipsOf(at)
    .filter((meant) => off_deg(meant) <= ZONE_REACH_DEG)
    .sort((a, b) => off_deg(a) - off_deg(b));
  return warningAt(doc.spot(["position", "lon"]), {
    code: "far-from-time-zone",
    message: `position.lon: ${lon} is far from the club's time zone ${timezone}, which lies about longitude ${zone_deg}`,
    hint: `${slip?.hint ?? "correct the position"}; or correct “timezone” in club.yaml; if both are right, leave it`,
  });
}

function isNear([lon, lat]: LonLat, [toLon, toLat]: LonLat): boolean {
  if (Math.abs(lat - toLat) * LEAST_M_PER_DEG > CLUB_REACH_M) return false;
  return distance_m([lon, lat], [toLon, toLat]) <= CLUB_REACH_M;
}

/** A lake with no other of the club anywhere near; undefined when it has one, or is alone. */
function loneDoubt(lake: Placed, lakes: readonly Placed[]): Diagnostic | undefined {
  const others = lakes.filter((other) => other !== lake);
  const [first, ...rest] = others;
  if (first === undefined || others.some(({ at }) => isNear(lake.at, at))) return undefined;
  const away_m = (other: Placed): number => distance_m(lake.at, other.at);
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
export function placeDoubts(drafts: readonly LakeDraft[], timezone: string, season: number): Diagnostic[] {
  const zone_deg = zoneLongitude_deg(timezone, season);
  const lakes = drafts.flatMap(({ doc, slug, fields: { name, position } }): Placed[] =>
    position === undefined ? [] : [{ doc, name: name ?? slug, at: [position.lon, position.lat] }],
  );
  const doubts = lakes.map((lake) =>
    zone_deg === undefined ? undefined : zoneDoubt(lake, timezone, zone_deg),
  );
  const trusted = lakes.filter((_, i) => doubts[i] === undefined);
  return [...doubts, ...trusted.map((lake) => loneDoubt(lake, trusted))].filter(
    (doubt) => doubt !== undefined,
  );
}
