import type { LonLat } from "../model/lake-shape.ts";
import type { Line } from "./map-schema.ts";

/** A number cut to `digits` decimals, so that the exported data carries no false precision. */
export const toDecimals = (value: number, digits: number): number => Number(value.toFixed(digits));

/** Six decimals of a degree are at most 0.11 m. */
const POSITION_DIGITS = 6;

/** A line as the exported data holds it. */
export const writtenLine = (line: readonly LonLat[]): Line =>
  line.map(([lon, lat]) => [toDecimals(lon, POSITION_DIGITS), toDecimals(lat, POSITION_DIGITS)]);
