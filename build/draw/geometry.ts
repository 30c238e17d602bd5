import type { GuideLake } from "../guide/guide-schema.ts";
import { distance_m } from "../model/lake-shape.ts";

/** Coordinates are written to a tenth of a unit: finer than any printer, and short. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

export const clamp = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value));

const NARROW = /[iljftrI1.,:;'’|()\- ]/;
const WIDE = /[mwMWGOQ%]/;

/** Width of a line of text as a share of its type size, letter by letter, on the generous side of a plain sans. */
const width_em = (text: string): number =>
  [...text].reduce((sum, c) => sum + (NARROW.test(c) ? 0.36 : WIDE.test(c) ? 0.86 : 0.58), 0);

/** About how wide a text will stand, in the units of `size`; drawings cannot measure a typeface they do not know. */
export const estimateTextWidth = (text: string, size: number): number => width_em(text) * size;

/** Distance of lines of lettering as a multiple of its size. */
export const LEADING = 1.25;

export type DrawnMap = NonNullable<GuideLake["place"]["map"]>;
type LonLat = readonly [lon_deg: number, lat_deg: number];

/** A point of a drawing; y counts downwards. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How places of one lake come to stand in its drawing, north up. */
export interface MapFrame {
  readonly toSpot: (place: LonLat) => Point;
  /** The drawing's units to a metre. */
  readonly perMetre: number;
  readonly height: number;
}

/** Greatest height of a map as a multiple of its width, by default. */
export const TALLEST = 1.25;

/** Half a degree about the middle is measured; shorter would lose digits. */
const HALF_DEG = 0.005;

interface Most {
  readonly width: number;
  readonly height: number;
}

/**
 * Places evenly by longitude and latitude, each with its own scale on the ellipsoid at the lake's middle. On a lake of
 * 20 km at 60 degrees of latitude the edges are out by 3 in 1,000, less than a drawing shows.
 */
export function mapFrame(map: DrawnMap, most: Most, margin: number): MapFrame {
  const places: LonLat[] = [...map.shoreline.flat(2), ...map.marks.map(({ lon, lat }): LonLat => [lon, lat])];
  const lons = places.map(([lon]) => lon);
  const lats = places.map(([, lat]) => lat);
  const [west, east] = [Math.min(...lons), Math.max(...lons)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  const [lon, lat] = [(west + east) / 2, (south + north) / 2];
  const lon_m = distance_m([lon - HALF_DEG, lat], [lon + HALF_DEG, lat]) / (2 * HALF_DEG);
  const lat_m = distance_m([lon, lat - HALF_DEG], [lon, lat + HALF_DEG]) / (2 * HALF_DEG);
  const [wide_m, tall_m] = [(east - west) * lon_m, (north - south) * lat_m];
  const perMetre = Math.min((most.width - 2 * margin) / wide_m, (most.height - 2 * margin) / tall_m);
  return {
    perMetre,
    height: tall_m * perMetre + 2 * margin,
    toSpot: ([x, y]) => ({
      x: most.width / 2 + (x - lon) * lon_m * perMetre,
      y: margin + (north - y) * lat_m * perMetre,
    }),
  };
}

/** A line as a path to the tenth of a unit, points that fall together once; closed when it ends where it began. */
export function linePath(line: readonly Point[]): string {
  const spots = line.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`);
  const distinct = spots.filter((spot, i) => spot !== spots[i - 1]);
  if (distinct.length < 2) return "";
  return distinct.length > 2 && distinct[0] === distinct.at(-1)
    ? `M${distinct.slice(0, -1).join("L")}Z`
    : `M${distinct.join("L")}`;
}

/** An upright box of a drawing. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const boxAround = ({ x, y }: Point, width: number, height: number): Box => ({
  left: x - width / 2,
  right: x + width / 2,
  top: y - height / 2,
  bottom: y + height / 2,
});

/** The box a word stands in when its middle is here. */
export const textBox = (text: string, at: Point, size: number): Box =>
  boxAround(at, estimateTextWidth(text, size) + size * 0.5, size * 1.05);

/** How far below the middle of a word its letters stand, as a share of its size. */
export const MIDDLE_TO_BASE = 0.28;

export const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const isWithin = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.bottom <= outer.bottom;

export const containsPoint = ({ left, right, top, bottom }: Box, { x, y }: Point): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** Words in lines no wider than `width`; a longer word has a line of its own. */
export function wrapText(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && estimateTextWidth(`${last} ${word}`, size) <= width)
      lines.splice(-1, 1, `${last} ${word}`);
    else lines.push(word);
  }
  return lines;
}
