import { BEAUFORT, type BeaufortForce } from "./beaufort.ts";
import { boatWords } from "./boats.ts";
import { oppositeWind, SIDES, type Side, sideOf, WINDS, windBearing_deg } from "./compass.ts";
import { cutsTowards, longestCut_m, reach_m } from "./cuts.ts";
import type { Plane, Point } from "./plane.ts";
import { toDecimals, writtenLine } from "./rounding.ts";
import { divideShore, type Shore, type Station, waterAt } from "./shore.ts";
import { fetchLimitedWaves, laterManualHeight_m } from "./waves.ts";
import type { LakeWind, ShoreParts, WindDirection, WindForce } from "./wind-schema.ts";

/** Lines that look for the longest fetch of one wind: a lake's corner is missed by at most a part in six hundred. */
const LINES = 300;

/** Shares of the lake's longest fetch up to which a shore is sheltered and from which it is washed. Our own convention. */
const SHELTERED = 0.1;
const WASHED = 0.5;

/** Share of a side's shore that makes the whole side so. Our own convention. */
const MOST_OF_A_SIDE = 0.6;

/** What the wind is asked about: a lake's rings on its plane, water on their left. */
export interface WindQuestion {
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
      from: toDecimals(Math.min(height_m, laterManualHeight_m(most_mps, fetch_m)), 2),
      to: toDecimals(height_m, 2),
    },
    period_s: toDecimals(period_s, 1),
    growth_min: Math.ceil(growth_min),
    boats: boatWords(force, height_m),
  };
}

/** Fetch, shelter and waves of every wind. */
export function composeWind({ rings, launches, area_m2, plane }: WindQuestion): LakeWind {
  const east = cutsTowards(rings, 90);
  const size_m = Math.sqrt(area_m2);
  const shore = divideShore(rings, east, size_m);
  const afloat = launches.map((launch) => waterAt(launch, shore, east, size_m));
  const middle = middleOf(shore.stations);
  const sides = shore.stations.map(({ at }) => sideOf(at.x - middle.x, at.y - middle.y));
  const blown = WINDS.map((from) => {
    const upwind = cutsTowards(rings, windBearing_deg(from));
    const fetchAt = (place: Point | undefined): number => (place === undefined ? 0 : reach_m(upwind, place));
    return {
      from,
      fetch_m: Math.round(longestCut_m(upwind, LINES)),
      launchFetch_m: afloat.map(fetchAt),
      shoreFetch_m: shore.stations.map(({ offshore }) => fetchAt(offshore)),
    };
  });
  const longest = Math.max(...blown.map(({ fetch_m }) => fetch_m));
  const along = WINDS[blown.findIndex(({ fetch_m }) => fetch_m === longest) % (WINDS.length / 2)] ?? "N";
  return {
    longest: { fetch_m: longest, along: [along, oppositeWind(along)] },
    shore: shore.rings.map((ring) => writtenLine(ring.map(plane.toLonLat))),
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
          shoreFetch_m.map((fetch) => fetch <= SHELTERED * longest),
        ),
        washed: partsOf(
          shore,
          sides,
          shoreFetch_m.map((fetch) => fetch >= WASHED * longest),
        ),
      }),
    ),
    forces: BEAUFORT.map((force) => forceOnLake(force, longest)),
  };
}
