import {
  BEAUFORT,
  type BeaufortForce,
  cemWaveHeight_m,
  craftAdvice,
  fetchLimitedWaves,
} from "./beaufort-waves.ts";
import { oppositeWind, SIDES, type Side, sideOf, WINDS, windBearing_deg } from "./compass.ts";
import { type Plane, type Point, roundedLine, toDecimals } from "./plane.ts";
import { distanceToShore_m, longestFetch_m, type ScanLines, scanLinesTowards } from "./scan-lines.ts";
import type { LakeWind, ShoreParts, WindDirection, WindForce } from "./water-schema.ts";

/** A short stretch of shore and the water just off it. */
interface Station {
  readonly ring: number;
  /** Place of the stretch in its ring, from 0. */
  readonly section: number;
  readonly at: Point;
  /** Undefined in a notch too narrow to float in. */
  readonly offshore: Point | undefined;
}

interface Shore {
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
function divideShore(rings: readonly (readonly Point[])[], cuts: ScanLines, size_m: number): Shore {
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
      })).find((point) => distanceToShore_m(cuts, point) > 0);
      return [{ ring, section, at, offshore }];
    }),
  );
  return { rings: divided, stations };
}

/** A place this near the shore, as a share of the lake's size, is judged by the water off that shore. */
const AT_THE_SHORE = 0.02;

/** The water at a place: the place itself when it is well afloat, else the water off the nearest shore. */
function waterAt(place: Point, { stations }: Shore, cuts: ScanLines, size_m: number): Point | undefined {
  let nearest: Station | undefined;
  let least_m = Number.POSITIVE_INFINITY;
  for (const station of stations) {
    const away_m = Math.hypot(station.at.x - place.x, station.at.y - place.y);
    if (station.offshore === undefined || away_m >= least_m) continue;
    least_m = away_m;
    nearest = station;
  }
  return least_m > AT_THE_SHORE * size_m && distanceToShore_m(cuts, place) > 0 ? place : nearest?.offshore;
}

/** Lines that look for the longest fetch of one wind: a lake's corner is missed by at most a part in six hundred. */
const LINES = 300;

/** Shares of the lake's longest fetch up to which a shore is sheltered and from which it is washed. Our own convention. */
const LEE = 0.1;
const WINDWARD = 0.5;

/** Share of a side's shore that makes the whole side so. Our own convention. */
const MOST_OF_A_SIDE = 0.6;

/** What the wind is asked about: a lake's rings on its plane, water on their left. */
interface WindInputs {
  readonly rings: readonly (readonly Point[])[];
  readonly launches: readonly Point[];
  readonly area_m2: number;
  readonly plane: Plane;
}

/** Where the middle of a shore lies: the mean of its stretches. */
function middleOf(stations: readonly Station[]): Point {
  const count = Math.max(1, stations.length);
  return {
    x: stations.reduce((sum, { at }) => sum + at.x, 0) / count,
    y: stations.reduce((sum, { at }) => sum + at.y, 0) / count,
  };
}

/** The stretches that are so, joined into runs, and the sides of the lake that mostly are. */
function partsOf(shore: Shore, sides: readonly Side[], isSo: readonly boolean[]): ShoreParts {
  const stretches: ShoreParts["stretches"] = [];
  for (const [i, { ring, section }] of shore.stations.entries()) {
    if (isSo[i] !== true) continue;
    const last = stretches.at(-1);
    if (last !== undefined && last.ring === ring && last.to === section) last.to = section + 1;
    else stretches.push({ ring, from: section, to: section + 1 });
  }
  const share = (side: Side): number => {
    const there = isSo.filter((_, i) => sides[i] === side);
    return there.filter(Boolean).length / Math.max(1, there.length);
  };
  return { sides: SIDES.filter((side) => share(side) >= MOST_OF_A_SIDE), stretches };
}

function forceOnLake({ force, name, least_mps, most_mps, sign }: BeaufortForce, fetch_m: number): WindForce {
  const { height_m, period_s, growth_min } = fetchLimitedWaves(most_mps, fetch_m);
  return {
    force,
    name,
    least_mps,
    most_mps,
    sign,
    height_m: {
      from: toDecimals(Math.min(height_m, cemWaveHeight_m(most_mps, fetch_m)), 2),
      to: toDecimals(height_m, 2),
    },
    period_s: toDecimals(period_s, 1),
    growth_min: Math.ceil(growth_min),
    boats: craftAdvice(force, height_m),
  };
}

/** Fetch, shelter and waves of every wind. */
export function composeWind({ rings, launches, area_m2, plane }: WindInputs): LakeWind {
  const east = scanLinesTowards(rings, 90);
  const size_m = Math.sqrt(area_m2);
  const shore = divideShore(rings, east, size_m);
  const afloat = launches.map((launch) => waterAt(launch, shore, east, size_m));
  const middle = middleOf(shore.stations);
  const sides = shore.stations.map(({ at }) => sideOf(at.x - middle.x, at.y - middle.y));
  const blown = WINDS.map((from) => {
    const upwind = scanLinesTowards(rings, windBearing_deg(from));
    const fetchAt = (place: Point | undefined): number =>
      place === undefined ? 0 : distanceToShore_m(upwind, place);
    return {
      from,
      fetch_m: Math.round(longestFetch_m(upwind, LINES)),
      launchFetch_m: afloat.map(fetchAt),
      shoreFetch_m: shore.stations.map(({ offshore }) => fetchAt(offshore)),
    };
  });
  const longest = Math.max(...blown.map(({ fetch_m }) => fetch_m));
  const along = WINDS[blown.findIndex(({ fetch_m }) => fetch_m === longest) % (WINDS.length / 2)] ?? "N";
  return {
    longest: { fetch_m: longest, along: [along, oppositeWind(along)] },
    shore: shore.rings.map((ring) => roundedLine(ring.map(plane.toLonLat))),
    directions: blown.map(
      ({ from, fetch_m, launchFetch_m, shoreFetch_m }): WindDirection => ({
        from,
        rods: oppositeWind(from),
        fetch_m,
        launchFetch_m: launchFetch_m.map(Math.round),
        heights_m: BEAUFORT.map(({ most_mps }) =>
          toDecimals(fetchLimitedWaves(most_mps, fetch_m).height_m, 2),
        ),
        sheltered: partsOf(
          shore,
          sides,
          shoreFetch_m.map((fetch) => fetch <= LEE * longest),
        ),
        washed: partsOf(
          shore,
          sides,
          shoreFetch_m.map((fetch) => fetch >= WINDWARD * longest),
        ),
      }),
    ),
    forces: BEAUFORT.map((force) => forceOnLake(force, longest)),
  };
}
