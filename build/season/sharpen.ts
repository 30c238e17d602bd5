import type { LakeForecast } from "./forecast.ts";
import { at, roundTo } from "./numbers.ts";
import { chanceBy, dayBy } from "./phases.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";
import { momentsOf } from "./season-grid.ts";
import { SHARED_WEIGHT } from "./season-posterior.ts";

type WouldSharpen = LakeForecast["evidence"]["wouldSharpen"];

/** Less than this off the width is not worth a visit, days. */
const LEAST_GAIN_DAYS = 0.1;
/** A t with 4 degrees of freedom has twice its squared scale as variance, and tells of its middle like a normal of 7/5 of it. */
const T4_VARIANCE = 2;
const T4_INFORMATION = 7 / 5;

/** Covariance of the season's effect and slope as they are known now. */
function seasonCovariance({ posterior }: RegionSeason): { ss: number; sk: number; kk: number } {
  const { grid, weights } = posterior;
  const s = momentsOf(grid.s, weights);
  const k = momentsOf(grid.k, weights);
  let sk = 0;
  for (let p = 0; p < weights.length; p++)
    sk += at(weights, p) * (at(grid.s, p) - s.mean) * (at(grid.k, p) - k.mean);
  return { ss: s.sd ** 2, sk, kk: k.sd ** 2 };
}

/**
 * For each lake of a region, the other lake whose exact ice-off date would most narrow its 80 % interval. An approximation: the season is
 * taken as normal with the covariance it has now, the other lake's date as one more tempered observation of it, and the interval
 * shrinks as the standard deviation does. Only lakes not yet seen open are asked after, and only those that most likely open no
 * later than the lake itself: later news would come too late. Nothing is asked for when a lake's spring is most likely over.
 */
export function sharpenersOf(
  region: RegionSeason,
  isObserved: (lake: LakeSeason) => boolean,
  today: number,
): WouldSharpen[] {
  const { ss, sk, kk } = seasonCovariance(region);
  const shared = (a: number, b: number): number => ss + (a + b) * sk + a * b * kk;
  const candidates = region.lakes
    .filter((lake) => !isObserved(lake))
    .map((lake) => ({
      lake,
      middle: dayBy(lake.spring, "iceOff", 0.5),
      noise: (T4_INFORMATION * lake.law.scale ** 2) / SHARED_WEIGHT,
    }));
  return region.lakes.map((lake) => {
    if (isObserved(lake) || chanceBy(lake.spring, "summer", today) > 0.5) return null;
    const { x, scale } = lake.law;
    const width = dayBy(lake.spring, "iceOff", 0.9) - dayBy(lake.spring, "iceOff", 0.1);
    const middle = dayBy(lake.spring, "iceOff", 0.5);
    const before = shared(x, x) + T4_VARIANCE * scale ** 2;
    let best: NonNullable<WouldSharpen> | null = null;
    for (const other of candidates) {
      if (other.lake === lake || other.middle > middle) continue;
      const covariance = shared(x, other.lake.law.x);
      const after = before - covariance ** 2 / (shared(other.lake.law.x, other.lake.law.x) + other.noise);
      const days = roundTo(width * (1 - Math.sqrt(after / before)), 2);
      if (days >= LEAST_GAIN_DAYS && days > (best?.days ?? 0)) best = { lake: other.lake.lake.slug, days };
    }
    return best;
  });
}
