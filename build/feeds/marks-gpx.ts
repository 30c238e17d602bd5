import { create } from "xmlbuilder2";
import type { Guide, GuideLake } from "../guide/guide-schema.ts";
import { withinTurn } from "./antimeridian.ts";

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
    const waypoint = gpx.ele("wpt", { lat: String(lat), lon: String(withinTurn(lon)) });
    if (lake.elevation_m !== null) waypoint.ele("ele").txt(String(lake.elevation_m));
    waypoint.ele("name").txt(name);
    waypoint.ele("type").txt(kind);
  }
  return `${gpx.end({ prettyPrint: true })}\n`;
}
