import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { z } from "zod";
import { listedTrips } from "../guide/guide-contents.ts";
import { type Guide, guideSchema } from "../guide/guide-schema.ts";
import { ADDRESS } from "../model/addresses.ts";
import { reportsFeed } from "./atom-and-sitemap.ts";
import { mapGeojson, marksGpx } from "./geojson-gpx.ts";
import { seasonCalendar, tripCalendar } from "./icalendar.ts";

/** An unlisted trip has its own page, card and calendar and stands nowhere else: whoever was not given its address must not find it here. */
const listedOnly = (guide: Guide): Guide => ({ ...guide, trips: listedTrips(guide) });

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
  const write = async (address: string, text: string | Iterable<string>): Promise<void> => {
    const file = path.join(outDir, address);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, text);
  };
  for (const [kind, schema] of Object.entries(schemas))
    await write(ADDRESS.schema(kind), `${JSON.stringify(schema, null, 2)}\n`);
  await write(ADDRESS.data, jsonPieces(listedOnly(guide)));
  for (const trip of guide.trips) await write(ADDRESS.tripCalendar(trip.slug), tripCalendar(guide, trip));
  const feed = reportsFeed(guide);
  if (feed !== undefined) await write(ADDRESS.reportsFeed, feed);
  for (const lake of guide.lakes) {
    await write(ADDRESS.calendar(lake.slug), seasonCalendar(guide, lake));
    const { map } = lake.place;
    if (map === null) continue;
    await write(ADDRESS.map(lake.slug), mapGeojson(guide, lake, map));
    await write(ADDRESS.marks(lake.slug), marksGpx(guide, lake));
  }
}
