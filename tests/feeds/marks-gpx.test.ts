import { describe, expect, test } from "vitest";
import { marksGpx } from "../../build/feeds/geojson-gpx.ts";
import { mappedLake } from "../mapped-lake.ts";
import { parseXml, type XmlNode } from "../xml.ts";

/**
 * The GPX 1.1 schema, https://www.topografix.com/GPX/1/1/gpx.xsd: each of these types is an xsd:sequence, so children
 * must come in this order. wptType by the schema's text; gpxType and metadataType from memory.
 */
const SEQUENCE: Readonly<Record<string, readonly string[]>> = {
  gpx: ["metadata", "wpt", "rte", "trk", "extensions"],
  metadata: ["name", "desc", "author", "copyright", "link", "time", "keywords", "bounds", "extensions"],
  wpt: [
    ...["ele", "time", "magvar", "geoidheight", "name", "cmt", "desc", "src", "link", "sym", "type"],
    ...["fix", "sat", "hdop", "vdop", "pdop", "ageofdgpsdata", "dgpsid", "extensions"],
  ],
};
/** Of these elements more than one may stand in a sequence. */
const REPEATED = ["wpt", "rte", "trk", "link"];
const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  gpx: ["version", "creator"],
  wpt: ["lat", "lon"],
};

function faultsOf({ name, space, attributes, children }: XmlNode): string[] {
  const order = SEQUENCE[name] ?? [];
  const places = children.map((child) => order.indexOf(child.name));
  return [
    ...(space === "http://www.topografix.com/GPX/1/1" ? [] : [`${name} lies in “${space}”`]),
    ...(REQUIRED[name] ?? [])
      .filter((wanted) => !attributes.has(wanted))
      .map((wanted) => `${name} lacks ${wanted}`),
    ...children.flatMap((child, i) => {
      const [before, place] = [places[i - 1] ?? -1, places[i] ?? -1];
      const inOrder = place > before || (place === before && REPEATED.includes(child.name));
      return place >= 0 && inOrder ? [] : [`${child.name} out of order in ${name}`];
    }),
    ...children.flatMap(faultsOf),
  ];
}

const gpxOf = (west: number): XmlNode => {
  const { guide, lake } = mappedLake(west);
  return parseXml(marksGpx(guide, lake));
};
const waypoints = ({ children }: XmlNode): XmlNode[] => children.filter(({ name }) => name === "wpt");
const wordOf = (node: XmlNode | undefined, name: string): string | undefined =>
  node?.children.find((child) => child.name === name)?.text;

describe("a lake's waypoints, read back by another library", () => {
  const gpx = gpxOf(-106.3);

  test("version, required attributes, namespace and order are the schema's", () => {
    expect(gpx.name).toBe("gpx");
    expect(gpx.attributes.get("version")).toBe("1.1");
    expect(faultsOf(gpx)).toEqual([]);
  });

  test("the lake's position comes first, then its marks, each with the lake's elevation", () => {
    const seen = waypoints(gpx).map((waypoint) => [
      waypoint.attributes.get("lat"),
      waypoint.attributes.get("lon"),
      wordOf(waypoint, "type"),
      wordOf(waypoint, "ele"),
    ]);
    expect(seen).toEqual([
      ["51.21", "-106.295", "lake", "2580"],
      ["51.201", "-106.298", "launch", "2580"],
      ["51.219", "-106.262", "shoal", "2580"],
    ]);
  });

  test("names keep their special characters; one that XML 1.0 forbids is replaced", () => {
    expect(waypoints(gpx).map((waypoint) => wordOf(waypoint, "name"))).toEqual([
      "Ember & Ash Lake",
      `Ember & Ash Lake: Tom & Jo's <"old"> ramp\ufffd`,
      "Ember & Ash Lake: shoal",
    ]);
  });
});

// GPX 1.1, longitudeType: from -180 up to, but not including, 180.
test.each([179.98, -180.02, 179.995, 180])("longitudes from %d on stay within the schema's range", (west) => {
  for (const { attributes } of waypoints(gpxOf(west))) {
    const lon = Number(attributes.get("lon"));
    expect(lon).toBeGreaterThanOrEqual(-180);
    expect(lon).toBeLessThan(180);
    expect(Math.abs(Math.abs(lon) - 180)).toBeLessThan(0.05);
  }
});
