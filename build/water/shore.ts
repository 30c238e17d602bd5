import { type Cuts, reach_m } from "./cuts.ts";
import type { Point } from "./plane.ts";

/** A short stretch of shore and the water just off it. */
export interface Station {
  readonly ring: number;
  /** Place of the stretch in its ring, from 0. */
  readonly section: number;
  readonly at: Point;
  /** Undefined in a notch too narrow to float in. */
  readonly offshore: Point | undefined;
}

export interface Shore {
  /** For each ring, the ends of its stretches; closed. */
  readonly rings: readonly (readonly Point[])[];
  readonly stations: readonly Station[];
}

/** Stretches of shore in all, few enough to draw and enough to tell one side of a bay from the other. */
const STRETCHES = 240;
/** Even a small island has a lee. */
const LEAST_STRETCHES = 4;

const lengthOf = (ring: readonly Point[]): number =>
  ring.reduce((sum, { x, y }, i) => {
    const before = ring[i - 1];
    return before === undefined ? 0 : sum + Math.hypot(x - before.x, y - before.y);
  }, 0);

/** Points evenly spaced along a closed ring, `count` to the round, the first again at the end. */
function evenly(ring: readonly Point[], count: number): Point[] {
  const step = lengthOf(ring) / count;
  const points: Point[] = [];
  let passed = 0;
  for (const [i, end] of ring.entries()) {
    const start = ring[i - 1];
    if (start === undefined) continue;
    const length = Math.hypot(end.x - start.x, end.y - start.y);
    while (points.length < count && points.length * step <= passed + length) {
      const share = length === 0 ? 0 : (points.length * step - passed) / length;
      points.push({ x: start.x + share * (end.x - start.x), y: start.y + share * (end.y - start.y) });
    }
    passed += length;
  }
  const [first] = points;
  return first === undefined ? [] : [...points, first];
}

/** How far off the shore its waves are judged, as a share of the lake's size: bare notches are passed over. */
const OFFSHORE = [0.01, 0.002];

/**
 * Divides the shores into stretches of equal length.
 * @param rings closed, water on their left
 * @param cuts any cuts of the same rings, to tell water from land
 * @param size_m square root of the lake's area
 */
export function divideShore(rings: readonly (readonly Point[])[], cuts: Cuts, size_m: number): Shore {
  const total = rings.reduce((sum, ring) => sum + lengthOf(ring), 0);
  const divided = rings.map((ring) =>
    evenly(ring, Math.max(LEAST_STRETCHES, Math.round((lengthOf(ring) / total) * STRETCHES))),
  );
  const stations = divided.flatMap((ends, ring) =>
    ends.slice(1).flatMap((end, section): Station[] => {
      const start = ends[section];
      if (start === undefined) return [];
      const length = Math.hypot(end.x - start.x, end.y - start.y) || 1;
      const left = { x: -(end.y - start.y) / length, y: (end.x - start.x) / length };
      const at = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
      const offshore = OFFSHORE.map((share) => ({
        x: at.x + left.x * share * size_m,
        y: at.y + left.y * share * size_m,
      })).find((point) => reach_m(cuts, point) > 0);
      return [{ ring, section, at, offshore }];
    }),
  );
  return { rings: divided, stations };
}

/** A place this near the shore, as a share of the lake's size, is judged by the water off that shore. */
const AT_THE_SHORE = 0.02;

/** The water at a place: the place itself when it is well afloat, else the water off the nearest shore. */
export function waterAt(place: Point, { stations }: Shore, cuts: Cuts, size_m: number): Point | undefined {
  let nearest: Station | undefined;
  let least_m = Number.POSITIVE_INFINITY;
  for (const station of stations) {
    const away_m = Math.hypot(station.at.x - place.x, station.at.y - place.y);
    if (station.offshore === undefined || away_m >= least_m) continue;
    least_m = away_m;
    nearest = station;
  }
  return least_m > AT_THE_SHORE * size_m && reach_m(cuts, place) > 0 ? place : nearest?.offshore;
}
