import type { LonLat } from "../model/lake-shape.ts";
import type { JsonPath } from "./json-document.ts";
import type { Fault } from "./problem.ts";
import type { RawRing } from "./ring-faults.ts";
import { readPosition } from "./shape-fields.ts";

/** A line or ring of a GeoJSON file and the way to it. */
export interface RawLine {
  readonly line: RawRing;
  readonly path: JsonPath;
}

/** How deep the lists of positions lie in each geometry that holds lines. */
export const LINE_DEPTH: ReadonlyMap<unknown, number> = new Map([
  ["LineString", 0],
  ["MultiLineString", 1],
  ["Polygon", 1],
  ["MultiPolygon", 2],
]);

export const NO_POSITION: Fault = {
  code: "not-a-position",
  message: "this is not a position",
  hint: "write [longitude, latitude] in degrees, such as [-106.291, 41.312]",
};
const NO_POSITIONS: Fault = {
  code: "not-a-line",
  message: "a list of at least two positions belongs here",
  hint: "write [[longitude, latitude], [longitude, latitude], …]",
};

type Read = { readonly lines: RawLine[] } | { readonly fault: Fault; readonly path: JsonPath };

/**
 * The lines in a geometry's coordinates, or the first thing in them that is none.
 * @param depth how deep the lists of positions lie: {@link LINE_DEPTH}
 */
export function readLines(coordinates: unknown, path: JsonPath, depth: number): Read {
  if (!Array.isArray(coordinates)) return { fault: NO_POSITIONS, path };
  if (depth > 0) {
    const lines: RawLine[] = [];
    for (const [i, part] of coordinates.entries()) {
      const read = readLines(part, [...path, i], depth - 1);
      if ("fault" in read) return read;
      lines.push(...read.lines);
    }
    return { lines };
  }
  const line: LonLat[] = [];
  for (const [i, raw] of coordinates.entries()) {
    const place = readPosition(raw);
    if (place === undefined) return { fault: NO_POSITION, path: [...path, i] };
    line.push(place);
  }
  return line.length < 2 ? { fault: NO_POSITIONS, path } : { lines: [{ line, path }] };
}
