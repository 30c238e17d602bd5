import type { z } from "zod";
import { type Fault, isFault } from "../../model/fault.ts";
import { quantity, REFUSALS } from "../../model/fields/field-kinds.ts";
import { DEEPEST } from "../../model/fields/lake-fields.ts";
import type { LonLat } from "../../model/lake-shape.ts";
import type { JsonPath } from "./json-document.ts";
import type { RawRing } from "./ring-faults.ts";

const LIMITS = { example: "10 ft", most: DEEPEST };
const contourDepth = quantity("length", { description: "Depth of a contour.", above: "0 m", ...LIMITS });
const soundingDepth = quantity("length", { description: "Depth of a sounding.", least: "0 m", ...LIMITS });

function readDepth(raw: unknown, schema: z.ZodType<number>): number | Fault {
  if (typeof raw === "number" && raw < 0) return aboveWater(String(raw));
  if (typeof raw === "string" && raw.trim().startsWith("-")) return aboveWater(raw.trim());
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  const [issue] = result.error.issues;
  const { fault } = (issue?.code === "custom" ? issue.params : undefined) ?? {};
  if (isFault(fault)) return fault;
  return (
    REFUSALS.get(schema)?.refuse(raw) ?? {
      code: "not-a-quantity",
      message: "this is not a depth",
      hint: `write it like ${LIMITS.example}`,
    }
  );
}

const aboveWater = (written: string): Fault => ({
  code: "depth-above-water",
  message: `${written} lies above the water`,
  hint: `depths count downwards: write ${written.replace(/^-\s*/, "")}`,
});

/** A contour's depth in metres, or what is wrong with it. */
export const readContourDepth = (raw: unknown): number | Fault =>
  raw === undefined
    ? {
        code: "missing-key",
        message: "this contour has no depth",
        hint: `add “"depth": "${LIMITS.example}"” to its properties`,
      }
    : readDepth(raw, contourDepth);

/** A sounding's depth in metres, 0 on the shore, or what is wrong with it. */
export const readSoundingDepth = (raw: unknown): number | Fault => readDepth(raw, soundingDepth);

/** A GeoJSON position; undefined when it is none. A third number, height, is passed over. */
export function readPosition(raw: unknown): LonLat | undefined {
  if (!Array.isArray(raw)) return undefined;
  const [lon, lat]: readonly unknown[] = raw;
  return typeof lon === "number" && typeof lat === "number" && Number.isFinite(lon) && Number.isFinite(lat)
    ? [lon, lat]
    : undefined;
}

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
      for (const line of read.lines) lines.push(line);
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
