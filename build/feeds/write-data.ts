import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { z } from "zod";
import { type Guide, guideSchema } from "../guide/guide-schema.ts";
import { reportsFeed } from "./atom-and-sitemap.ts";
import { mapGeojson, marksGpx } from "./geojson-gpx.ts";
import { seasonCalendar, tripCalendar } from "./icalendar.ts";

/** An unlisted trip has its own page, card and calendar and stands nowhere else: whoever was not given its address must not find it here. */
const listedOnly = (guide: Guide): Guide => ({
  ...guide,
  trips: guide.trips.filter(({ unlisted }) => !unlisted),
});

/** The JSON of an object in pieces, a piece for each item of its lists: the lakes of a large club are tens of megabytes. */
function* jsonPieces(object: object): Generator<string> {
  let before = "{";
  for (const [key, value] of Object.entries(object)) {
    if (value === undefined) continue;
    yield `${before}${JSON.stringify(key)}:`;
    before = ",";
    if (!Array.isArray(value)) yield JSON.stringify(value);
    else {
      yield "[";
      for (const [i, item] of value.entries()) yield `${i === 0 ? "" : ","}${JSON.stringify(item)}`;
      yield "]";
    }
  }
  yield "}\n";
}

/**
 * Writes what programs read: guide.json, the JSON Schemas, the feed of reports, each trip's and each lake's
 * calendar and, where a lake's shape is known, its map and marks.
 * @param inputSchemas JSON Schema of each kind of club file, by kind
 * @throws when a file cannot be written
 */
export async function writeData(
  guide: Guide,
  inputSchemas: Readonly<Record<string, object>>,
  outDir: string,
): Promise<void> {
  const schemas = { guide: z.toJSONSchema(guideSchema), ...inputSchemas };
  await mkdir(path.join(outDir, "schema"), { recursive: true });
  for (const [kind, schema] of Object.entries(schemas))
    await writeFile(
      path.join(outDir, "schema", `${kind}.schema.json`),
      `${JSON.stringify(schema, null, 2)}\n`,
    );
  await writeFile(path.join(outDir, "guide.json"), jsonPieces(listedOnly(guide)));
  for (const trip of guide.trips) {
    const folder = path.join(outDir, "trips", trip.slug);
    await mkdir(folder, { recursive: true });
    await writeFile(path.join(folder, "trip.ics"), tripCalendar(guide, trip));
  }
  const feed = reportsFeed(guide);
  if (feed !== undefined) {
    await mkdir(path.join(outDir, "reports"), { recursive: true });
    await writeFile(path.join(outDir, "reports", "feed.xml"), feed);
  }
  for (const lake of guide.lakes) {
    const folder = path.join(outDir, "lakes", lake.slug);
    await mkdir(folder, { recursive: true });
    await writeFile(path.join(folder, "season.ics"), seasonCalendar(guide, lake));
    const { map } = lake.place;
    if (map === null) continue;
    await writeFile(path.join(folder, "map.geojson"), mapGeojson(guide, lake, map));
    await writeFile(path.join(folder, "marks.gpx"), marksGpx(guide, lake));
  }
}
