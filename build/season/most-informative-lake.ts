import { chanceBy, dayBy } from "./after-ice/states.ts";
import type { LakeForecast, RegionForecast } from "./forecast.ts";
import { addTableOnGrid, logChanceTable, middlesOf, scaleOf } from "./lake-distribution.ts";
import type { LakeEvidence } from "./lake-evidence.ts";
import { at, roundTo, total } from "./numbers.ts";

import type { LakeSeason, RegionSeason } from "./region-season.ts";
import { momentsOf, overScatter, type SeasonGrid } from "./season-grid.ts";
import { SHARED_WEIGHT } from "./season-posterior.ts";

/** Less than this off the width is not worth a visit, days. */
const LEAST_GAIN_DAYS = 0.1;
/** A t with 4 degrees of freedom has twice its squared scale as variance. */
const T4_VARIANCE = 2;
/** A lake more likely open than this needs no forecast. */
const SURELY_OPEN = 0.95;

/** What one look at a lake tells of the season: covariances with the effect and the slope, and the look's own variance. */
interface Look {
  readonly place: number;
  readonly s: number;
  readonly k: number;
  readonly variance: number;
}

/** Evidence cut off after a day: the chance of it and of the lake being open by then. */
function openBy({ span, chance }: LakeEvidence, day: number): LakeEvidence {
  return { span, chance: chance.map((value, i) => (span.from + i <= day ? value : 0)) };
}

const noEvidence = ({ span }: LakeSeason): LakeEvidence => ({
  span,
  chance: new Float64Array(span.to - span.from + 1).fill(1),
});

/** Chance that a lake is open on a day at every point of the grid, its own evidence included. */
function openOnGrid(lake: LakeSeason, { posterior: { grid } }: RegionSeason, day: number): Float64Array {
  const evidence = lake.evidence ?? noEvidence(lake);
  const middles = middlesOf(lake.distribution, grid);
  const logs = new Float64Array(grid.s.length * grid.scatter.length);
  const add = (part: LakeEvidence, weight: number): void =>
    addTableOnGrid(logs, logChanceTable(part, lake.distribution, grid), middles, weight);
  add(openBy(evidence, day), 1);
  if (lake.evidence !== undefined) add(evidence, -1);
  for (let p = 0; p < logs.length; p++) logs[p] = Math.min(1, Math.exp(at(logs, p)));
  return logs;
}

function lookAt(place: number, lake: LakeSeason, region: RegionSeason, today: number): Look {
  const { grid, weights } = region.posterior;
  const open = openOnGrid(lake, region, today);
  const joint = open.map((chance, p) => chance * at(weights, p));
  const mean = total(joint);
  const opened = overScatter(grid, joint);
  const margin = overScatter(grid, weights);
  const covariance = (values: Float64Array): number => {
    const middle = momentsOf(values, margin).mean;
    return values.reduce((sum, value, p) => sum + at(opened, p) * (value - middle), 0);
  };
  const known = joint.reduce((sum, part, p) => sum + part * at(open, p), 0) - mean ** 2;
  const noise = mean * (1 - mean) - known;
  return {
    place,
    s: covariance(grid.s),
    k: covariance(grid.k),
    variance: known + noise / SHARED_WEIGHT,
  };
}

/** Variance of a lake's ice-off as the season is known now. */
function varianceOf({ distribution }: LakeSeason, grid: SeasonGrid, margin: Float64Array): number {
  const middles = momentsOf(middlesOf(distribution, grid), margin);
  return middles.sd ** 2 + T4_VARIANCE * scaleOf(distribution, 1) ** 2;
}

interface MostInformative {
  /** For each lake of the region, the other lake at which a look would narrow it most. */
  readonly byLake: readonly LakeForecast["evidence"]["wouldSharpen"][];
  /** The lake at which a look would narrow all others together most. */
  readonly best: RegionForecast["mostInformative"];
}

/**
 * Where one look today, still iced or open, would help most. An approximation: the look is taken as a linear observation of the season
 * (linear Bayes), tempered as any evidence, and an 80 % interval shrinks as the standard deviation does. Lakes seen open and lakes
 * all but certainly open are neither looked at nor narrowed.
 * @source M. Goldstein, D. Wooff (2007), Bayes Linear Statistics, for the adjusted variance
 */
export function mostInformativeLake(
  region: RegionSeason,
  isObserved: (lake: LakeSeason) => boolean,
  today: number,
): MostInformative {
  const waiting = region.lakes.map(
    (lake) => !isObserved(lake) && chanceBy(lake.spring, "iceOff", today) <= SURELY_OPEN,
  );
  const looks = region.lakes.flatMap((lake, place) =>
    waiting[place] === true ? [lookAt(place, lake, region, today)] : [],
  );
  const sums = new Map(looks.map(({ place }) => [place, { days: 0, lakes: 0 }]));
  const { grid, weights } = region.posterior;
  const margin = overScatter(grid, weights);
  const slugOf = (place: number): string => region.lakes[place]?.lake.slug ?? "";
  const byLake = region.lakes.map((lake, own): MostInformative["byLake"][number] => {
    if (waiting[own] !== true) return null;
    const { x } = lake.distribution;
    const width = dayBy(lake.spring, "iceOff", 0.9) - dayBy(lake.spring, "iceOff", 0.1);
    const before = varianceOf(lake, grid, margin);
    let [best, gain] = [-1, LEAST_GAIN_DAYS];
    for (const look of looks) {
      if (look.place === own || look.variance <= 0) continue;
      const after = before - (look.s + x * look.k) ** 2 / look.variance;
      const days = width * (1 - Math.sqrt(Math.max(0, after) / before));
      const sum = sums.get(look.place);
      if (sum !== undefined && days >= LEAST_GAIN_DAYS) {
        sum.days += days;
        sum.lakes++;
      }
      if (days > gain) [best, gain] = [look.place, days];
    }
    return best < 0 ? null : { lake: slugOf(best), days: roundTo(gain, 2) };
  });
  const [top] = [...sums].filter(([, { lakes }]) => lakes > 0).sort((a, b) => b[1].days - a[1].days);
  return {
    byLake,
    best:
      top === undefined ? null : { lake: slugOf(top[0]), days: roundTo(top[1].days, 2), lakes: top[1].lakes },
  };
}
