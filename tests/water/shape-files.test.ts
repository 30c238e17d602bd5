import { describe, expect, test } from "vitest";
import { loadClub } from "../../build/input/load-club.ts";
import type { Lake } from "../../build/model/club.ts";
import { formatDiagnostic } from "../../build/model/diagnostic.ts";
import { measureOutline } from "../../build/water/morphometry.ts";
import { composeWater } from "../../build/water/water.ts";
import { CLUB_YAML, clubFolder, type Files, LAKE_YAML } from "../input/club-folder.ts";
import { OPTIONS } from "./shapes.ts";

type Coordinates = readonly (readonly number[])[];

const SQUARE: Coordinates = [
  [-106.295, 41.31],
  [-106.287, 41.31],
  [-106.287, 41.314],
  [-106.295, 41.314],
  [-106.295, 41.31],
];
const shoreline = (...rings: readonly Coordinates[]): object => ({
  type: "Feature",
  properties: { kind: "shoreline" },
  geometry: { type: "Polygon", coordinates: rings },
});
const contour = (depth: unknown, line: Coordinates): object => ({
  type: "Feature",
  properties: { kind: "contour", depth },
  geometry: { type: "LineString", coordinates: line },
});
/** One feature a line: the shoreline, where it comes first, is line 2. */
const geojson = (...features: readonly object[]): string =>
  `{ "type": "FeatureCollection", "features": [\n${features.map((one) => JSON.stringify(one)).join(",\n")}\n] }\n`;

async function load(files: Files): Promise<{ said: string[]; lake: Lake | undefined }> {
  const { club, problems } = await loadClub(await clubFolder(files));
  return { said: problems.map(formatDiagnostic), lake: club?.lakes[0] };
}
const loadShape = (text: string, more: Files = {}) => load({ "lakes/ember.geojson": text, ...more });

describe("a lake's GeoJSON", () => {
  test("shoreline, contours and marks are read; rings are wound as RFC 7946 asks", async () => {
    const island: Coordinates = [
      [-106.292, 41.311],
      [-106.291, 41.311],
      [-106.291, 41.312],
      [-106.292, 41.311],
    ];
    const { said, lake } = await loadShape(
      geojson(
        shoreline(SQUARE.toReversed(), island),
        contour(
          "10 ft",
          SQUARE.map(([x = 0, y = 0]) => [-106.291 + (x + 106.291) / 2, 41.312 + (y - 41.312) / 2]),
        ),
        {
          type: "Feature",
          properties: { kind: "mark", mark: "launch", name: "North ramp" },
          geometry: { type: "Point", coordinates: [-106.291, 41.314, 2580] },
        },
      ),
    );
    expect(said).toEqual([]);
    const shape = lake?.shape;
    const outline = measureOutline(shape ?? { shoreline: [] });
    expect(outline.islands).toBe(1);
    expect(outline.enclosed_m2).toBeGreaterThan(outline.area_m2);
    expect(outline.area_m2).toBeGreaterThan(0);
    expect(shape?.contours[0]?.depth_m).toBeCloseTo(3.048, 6);
    expect(shape?.contours[0]?.where).toEqual({
      file: "lakes/ember.geojson",
      line: 3,
      column: expect.any(Number),
    });
    expect(shape?.marks).toMatchObject([{ mark: "launch", name: "North ramp", at: [-106.291, 41.314] }]);
  });

  test.each([
    [
      "a missing bracket",
      '{ "type": "FeatureCollection",\n  "features": [ }\n',
      "2:17 error not-json this is not JSON: a value belongs here",
    ],
    [
      "NaN",
      '{ "type": "FeatureCollection", "features": [NaN] }',
      "1:45 error not-json this is not JSON: it cannot be read from here on",
    ],
    ["another kind of JSON", "[1, 2]", "1:1 error not-geojson this is not a GeoJSON FeatureCollection"],
    ["no shoreline", geojson(contour("10 ft", SQUARE)), "1:1 error no-shoreline no feature is the shoreline"],
    [
      "two shorelines",
      geojson(shoreline(SQUARE), shoreline(SQUARE)),
      "3:1 error second-shoreline this is a second shoreline",
    ],
    [
      "a feature without kind",
      geojson(shoreline(SQUARE), {
        type: "Feature",
        properties: {},
        geometry: { type: "Point", coordinates: [0, 0] },
      }),
      "3:1 error feature-without-kind this feature has no kind",
    ],
    [
      "a misspelt kind",
      geojson(shoreline(SQUARE), {
        type: "Feature",
        properties: { kind: "contuor" },
        geometry: { type: "Point", coordinates: [0, 0] },
      }),
      "3:40 error not-a-choice “contuor” is not a kind of feature\n    did you mean “contour”?",
    ],
    [
      "a misspelt mark",
      geojson(shoreline(SQUARE), {
        type: "Feature",
        properties: { kind: "mark", mark: "lauch" },
        geometry: { type: "Point", coordinates: [-106.29, 41.312] },
      }),
      "3:54 error not-a-choice “lauch” is not a mark\n    did you mean “launch”?",
    ],
    [
      "an open ring",
      geojson(shoreline(SQUARE.slice(0, -1))),
      "error ring-not-closed this ring is not closed: its last position is not its first\n    repeat [-106.295, 41.31] at the end",
    ],
    [
      "a ring of two corners",
      geojson(shoreline([...SQUARE.slice(0, 2), ...SQUARE.slice(0, 1)])),
      "error ring-too-short this ring has 3 positions",
    ],
    [
      "a line there and back",
      geojson(shoreline([0, 1, 2, 1, 0].map((i) => [-106.295 + 0.001 * i, 41.31 + 0.001 * i]))),
      "error ring-without-area this ring encloses nothing",
    ],
    [
      "a mark with its degrees swapped",
      geojson(shoreline(SQUARE), {
        type: "Feature",
        properties: { kind: "mark", mark: "launch" },
        geometry: { type: "Point", coordinates: [41.312, -106.29] },
      }),
      "3:1 error lon-lat-swapped longitude and latitude are swapped",
    ],
    [
      "a bow tie",
      geojson(shoreline([0, 1, 3, 2, 4].map((i) => SQUARE[i] ?? []))),
      "error ring-crosses-itself this ring crosses itself at [-106.291000, 41.312000]",
    ],
    [
      "an island that crosses the shore",
      geojson(
        shoreline(
          SQUARE,
          SQUARE.map(([x = 0, y = 0]) => [x + 0.002, y + 0.001]),
        ),
      ),
      "error rings-cross this ring crosses another at",
    ],
    [
      "an island in the meadow",
      geojson(
        shoreline(
          SQUARE,
          SQUARE.map(([x = 0, y = 0]) => [x + 0.01, y]),
        ),
      ),
      "error island-outside this island lies outside its lake",
    ],
    [
      "a position that is none",
      geojson(shoreline([[-106.295, 41.31], [-106.287] as number[], ...SQUARE.slice(2)])),
      "error not-a-position this is not a position",
    ],
    [
      "longitude and latitude swapped",
      geojson(shoreline(SQUARE.map(([x = 0, y = 0]) => [y, x]))),
      "error lon-lat-swapped longitude and latitude are swapped\n    write [longitude, latitude], longitude first",
    ],
    [
      "metres of a map grid",
      geojson(shoreline(SQUARE.map(([x = 0, y = 0]) => [500_000 + 1e4 * x, 4_500_000 + 1e4 * y]))),
      "error not-degrees these are not degrees of longitude and latitude",
    ],
    [
      "another lake",
      geojson(shoreline(SQUARE.map(([x = 0, y = 0]) => [x, y + 1]))),
      "error shape-far-away this lies 111 km from the lake's position",
    ],
    [
      "one place mistyped: along a meridian a degree is 111.2 km (10,000 km from pole to equator, by the metre's first definition)",
      geojson(shoreline([...SQUARE.slice(0, 2), [-106.287, 51.312], ...SQUARE.slice(2)])),
      "error place-far-away longitude -106.287, latitude 51.312 lies 1,112 km from the lake's position",
    ],
  ])("%s is an error with its place", async (_, text, expected) => {
    const { said, lake } = await loadShape(text);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(expected);
    expect(said[0]).toMatch(/^lakes\/ember\.geojson:\d+:\d+ /);
    expect(lake).toBeUndefined();
  });

  test.each([
    [10, "10 has no unit"],
    ["-10 ft", "-10 ft lies above the water\n    depths count downwards: write 10 ft"],
    [-3, "-3 lies above the water"],
    ["0 ft", "0 ft is not more than 0 m"],
    ["10 feet", "“feet” is not a unit that can be used here\n    write 10 ft"],
    [undefined, "this contour has no depth"],
    [["10 ft"], "is not one number with a unit"],
  ])("a contour of depth %j is refused", async (depth, expected) => {
    const { said } = await loadShape(geojson(shoreline(SQUARE), contour(depth, SQUARE)));
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^lakes\/ember\.geojson:3:/);
    expect(said[0]).toContain(expected);
  });

  test("swapped near the equator, where both orders are degrees: the lake lands far away, and the hint says why", async () => {
    const yaml = "name: Kivu Pond\nposition: { lat: 2, lon: 30 }\n";
    const square = [
      [2, 30],
      [2.01, 30],
      [2.01, 30.01],
      [2, 30],
    ];
    const { said } = await loadShape(geojson(shoreline(square)), { "lakes/ember.yaml": yaml });
    expect(said[0]).toMatch(
      /lon-lat-swapped this lies [\d,]+ km from the lake's position; with longitude and latitude swapped it would fit/,
    );
  });

  test("a file without a lake, and a lake without a file", async () => {
    const { said, lake } = await load({ "lakes/embers.geojson": geojson(shoreline(SQUARE)) });
    expect(said).toEqual([
      "lakes/embers.geojson:1:1 warning shape-without-lake there is no lake file embers.yaml beside it: it is not used\n" +
        "    did you mean “ember”?",
    ]);
    expect(lake?.shape).toBeUndefined();
  });

  test("figures that disagree with the shape by more than 15 % are named, both of them, where they are written", async () => {
    const yaml = `${LAKE_YAML}area: 20 ha\ndepth: { max: 3 m, mean: 1 m }\n`;
    const half = SQUARE.map(([x = 0, y = 0]) => [
      -106.291 + (x + 106.291) / 1.2,
      41.312 + (y - 41.312) / 1.2,
    ]);
    const { lake } = await loadShape(geojson(shoreline(SQUARE), contour("4 m", half)), {
      "lakes/ember.yaml": yaml,
    });
    if (lake === undefined) throw new Error("no lake");
    const said = composeWater(lake, lake.shape, OPTIONS).problems.map(formatDiagnostic);
    expect(said).toEqual([
      expect.stringMatching(
        /^lakes\/ember\.yaml:3:7 warning figure-against-shape area is 20 ha here, but by lakes\/ember\.geojson the shoreline encloses 30 ha\n {4}find out/,
      ),
      expect.stringMatching(
        /^lakes\/ember\.yaml:4:15 warning figure-against-shape depth\.max is 3 m here, but .* is 4 m/,
      ),
      expect.stringMatching(
        /^lakes\/ember\.yaml:4:26 warning figure-against-shape depth\.mean is 1 m here, but/,
      ),
    ]);
    const close = { ...lake, area_ha: 27, maxDepth_m: 3.6 };
    expect(composeWater(close, lake.shape, OPTIONS).problems.map(({ message }) => message)).toEqual([
      expect.stringContaining("depth.mean"),
    ]);
  });

  test("a contour outside the shoreline is a warning at its place, and its part on land is not used", async () => {
    const outside = SQUARE.map(([x = 0, y = 0]) => [x + 0.004, y]);
    const { lake, said } = await loadShape(geojson(shoreline(SQUARE), contour("3 m", outside)));
    expect(said).toEqual([]);
    if (lake === undefined) throw new Error("no lake");
    const { problems, water } = composeWater(lake, lake.shape, OPTIONS);
    expect(problems.map(formatDiagnostic)).toEqual([
      expect.stringMatching(
        /^lakes\/ember\.geojson:3:\d+ warning contour-outside-shoreline this contour runs up to \d+ m outside the shoreline\n/,
      ),
    ]);
    expect(water.depths?.deepest_m).toBe(3);
  });
});

describe("across the antimeridian", () => {
  const yaml = "name: Dateline Lake\nposition: { lat: 65, lon: 179.999 }\n";
  const box = (west: number, east: number): Coordinates => [
    [west, 64.99],
    [east, 64.99],
    [east, 65.01],
    [west, 65.01],
    [west, 64.99],
  ];
  const whole = {
    "lakes/ember.yaml": yaml.replace("179.999", "100"),
    "lakes/ember.geojson": geojson(shoreline(box(99.98, 100.02))),
  };

  test.each([
    ["not cut, its longitudes jump", geojson(shoreline(box(179.98, -179.98)))],
    ["not cut, its longitudes go on", geojson(shoreline(box(179.98, 180.02)))],
    [
      "cut in two as RFC 7946 asks",
      geojson({
        type: "Feature",
        properties: { kind: "shoreline" },
        geometry: { type: "MultiPolygon", coordinates: [[box(179.98, 180)], [box(-180, -179.98)]] },
      }),
    ],
  ])("a lake %s is as large and as long as elsewhere", async (_, text) => {
    const { lake, said } = await loadShape(text, {
      "lakes/ember.yaml": yaml,
      "club.yaml": CLUB_YAML.replace("America/Denver", "Asia/Anadyr"),
    });
    const { lake: elsewhere } = await load(whole);
    expect(said).toEqual([]);
    if (lake === undefined || elsewhere === undefined) throw new Error("no lake");
    const there = composeWater(elsewhere, elsewhere.shape, OPTIONS).water;
    const { size, wind } = composeWater(lake, lake.shape, OPTIONS).water;
    expect(size).toEqual(there.size);
    expect(wind?.longest).toEqual(there.wind?.longest);
  });
});

describe("soundings", () => {
  const csv = (...lines: readonly string[]): string => `${lines.join("\n")}\n`;
  const withCsv = (text: string) => loadShape(geojson(shoreline(SQUARE)), { "lakes/ember.csv": text });

  test.each([
    ["a unit in the heading", csv("lat,lon,depth (ft)", "41.312,-106.291,10")],
    ["another spelling, order and comma", csv("Longitude;Latitude;depth_ft", "-106.291;41.312;10")],
    [
      "a unit in each row, a comment, an empty line",
      csv("# plumbed in May", "lat,lon,note,depth", "", "41.312,-106.291,weed,10 ft"),
    ],
  ])("%s", async (_, text) => {
    const { lake, said } = await withCsv(text);
    expect(said).toEqual([]);
    expect(lake?.shape?.soundings).toMatchObject([{ at: [-106.291, 41.312], depth_m: 3.048 }]);
  });

  test.each([
    [csv("41.312,-106.291,10"), "1:1 error no-heading"],
    [csv(""), "1:1 error no-heading"],
    [csv("lat,lon,depth", "41.312,-106.291,10"), "2:1 error missing-unit 10 has no unit"],
    [
      csv("lat,lon,depth (fathoms)", "41.312,-106.291,10"),
      "1:1 error wrong-unit “fathoms” is not a unit of depth",
    ],
    [csv("lat,lon,depth (m)", "41.312,-106.291,NaN"), "2:1 error not-a-number depth: “NaN” is not a number"],
    [
      csv("lat,lon,depth (m)", "41.312,-106.291,2", "41.312,,3"),
      "3:1 error not-a-number lon: nothing is written",
    ],
    [
      csv("lat;lon;depth (m)", "41,312;-106.291;2"),
      "2:1 error not-a-number lat: “41,312” is not a number\n    write a decimal point, not a comma",
    ],
    [csv("lat,lon,depth (m)", "41.312,-106.291,-2"), "2:1 error depth-above-water -2 m lies above the water"],
    [csv("lat,lon,depth (m)", '41.312,"-106.291,2', ""), "error not-csv this line cannot be read"],
    [
      csv("lat,lon,depth (m)", "-106.291,41.312,2"),
      "2:1 error lon-lat-swapped longitude and latitude are swapped",
    ],
  ])("%j is refused at its line", async (text, expected) => {
    const { said } = await withCsv(text);
    expect(said[0]).toMatch(/^lakes\/ember\.csv:\d+:1 /);
    expect(said[0]).toContain(expected);
  });

  test("of many bad rows ten are listed and the rest counted", async () => {
    const { said } = await withCsv(
      csv("lat,lon,depth (m)", ...Array.from({ length: 25 }, () => "41.312,-106.291,NaN")),
    );
    expect(said).toHaveLength(11);
    expect(said.some((line) => line.includes("15 more rows cannot be read"))).toBe(true);
  });

  test("without a GeoJSON file the rows of depth 0 are the shore, in their order", async () => {
    const shore = SQUARE.slice(0, -1).map(([lon, lat]) => `${lat},${lon},0`);
    const { lake, said } = await load({
      "lakes/ember.csv": csv("lat,lon,depth (m)", ...shore, "41.312,-106.291,5"),
    });
    expect(said).toEqual([]);
    expect(lake?.shape?.soundings).toHaveLength(1);
    expect(measureOutline(lake?.shape ?? { shoreline: [] }).area_m2).toBeCloseTo(
      measureOutline({ shoreline: [[SQUARE.map(([x = 0, y = 0]): [number, number] => [x, y])]] }).area_m2,
      3,
    );
  });

  test("without any shore they are not used, and that is said", async () => {
    const { lake, said } = await load({ "lakes/ember.csv": csv("lat,lon,depth (m)", "41.312,-106.291,5") });
    expect(said).toEqual([
      expect.stringContaining("lakes/ember.csv:1:1 warning soundings-without-shoreline"),
    ]);
    expect(lake?.shape).toBeUndefined();
    const bow = [0, 1, 3, 2].map((i) => `${SQUARE[i]?.[1]},${SQUARE[i]?.[0]},0`);
    const crossed = await load({ "lakes/ember.csv": csv("lat,lon,depth (m)", ...bow) });
    expect(crossed.said).toEqual([expect.stringContaining("the rows of depth 0, in their order, cross at")]);
  });

  test("soundings on land are counted once and left out", async () => {
    const { lake } = await withCsv(
      csv("lat,lon,depth (m)", "41.312,-106.291,5", "41.32,-106.291,9", "41.321,-106.291,9"),
    );
    if (lake === undefined) throw new Error("no lake");
    const { water, problems } = composeWater(lake, lake.shape, OPTIONS);
    expect(problems.map(formatDiagnostic)).toEqual([
      expect.stringContaining(
        "lakes/ember.csv:3:1 warning sounding-on-land 2 soundings lie outside the shoreline",
      ),
    ]);
    expect(water.depths?.hypsography.at(-1)?.depth_m).toBe(5);
  });
});

describe("size of files", () => {
  test("a shoreline of 90,000 positions is measured whole and drawn with few points", async () => {
    const count = 90_000;
    const ring = Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      const radius = 0.02 * (1 + 0.01 * Math.sin(400 * angle));
      return [-106.291 + radius * Math.cos(angle), 41.312 + 0.75 * radius * Math.sin(angle)];
    });
    const text = geojson(shoreline([...ring, ...ring.slice(0, 1)]));
    expect(text.length).toBeGreaterThan(3_000_000);
    const { lake, said } = await loadShape(text);
    expect(said).toEqual([]);
    if (lake === undefined) throw new Error("no lake");
    const { map, size } = composeWater(lake, lake.shape, OPTIONS).water;
    expect(map?.shoreline.flat(2).length).toBeLessThanOrEqual(600);
    // Four hundred ripples make the true shore far longer than the drawn one; the area hardly changes.
    const { shoreline_m } = measureOutline(lake.shape ?? { shoreline: [] });
    expect((size?.shoreline_km ?? 0) * 1000).toBeCloseTo(shoreline_m, 0);
    const drawn = measureOutline({ shoreline: map?.shoreline ?? [] });
    expect(drawn.shoreline_m / shoreline_m).toBeLessThan(0.9);
    expect(Math.abs(drawn.area_m2 / ((size?.area_ha ?? 0) * 10_000) - 1)).toBeLessThan(0.02);
  });

  test("one of 30 MB is refused by its size", async () => {
    const { said } = await loadShape(" ".repeat(30_000_000));
    expect(said).toEqual([
      "lakes/ember.geojson:1:1 error file-too-large the file has 30 MB; a shape may have 25 MB\n" +
        "    export it with fewer positions: one a metre is more than enough",
    ]);
  });
});
