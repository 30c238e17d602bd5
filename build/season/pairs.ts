import { chanceOfStatements, springOf } from "./lake-evidence.ts";
import { middlesOf } from "./lake-law.ts";
import { at } from "./numbers.ts";
import { chanceBy, LAST_BEST_DAY } from "./phases.ts";
import type { LakeSeason, RegionSeason } from "./region-season.ts";
import { t4Cdf } from "./student-t.ts";

/** Chance that a lake is in a good phase on a day: ice-off, or the best weeks. */
export function goodOn({ spring }: LakeSeason, day: number): number {
  const by = (change: "iceOff" | "onset" | "clear" | "summer"): number => chanceBy(spring, change, day);
  return Math.min(1, Math.max(0, by("iceOff") - by("onset") + by("clear") - by("summer")));
}

/** For each day of ice-off, the chance of the lake's evidence and of the lake being good on `day` besides. */
function evidenceAndGood({ span, cases, statements }: LakeSeason, day: number) {
  const length = span.to - span.from + 1;
  const evidence = new Float64Array(length);
  const good = new Float64Array(length);
  for (let i = 0; i < length; i++)
    for (const turnover of cases) {
      const spring = springOf(span.from + i, turnover);
      const chance = turnover.chance * chanceOfStatements(statements, spring);
      const isGood =
        (spring.iceOff <= day && day < spring.onset) ||
        (spring.clear <= day && day <= spring.iceOff + LAST_BEST_DAY);
      evidence[i] = at(evidence, i) + chance;
      if (isGood) good[i] = at(good, i) + chance;
    }
  return { evidence, good };
}

/** Step of the table of chances over the middle of a lake's ice-off, days. */
const STEP = 0.5;

/** Chance that the lake is good on `day`, at each point of its region's season. */
function goodGivenSeason(lake: LakeSeason, region: RegionSeason, day: number): Float64Array {
  const { law, span } = lake;
  const { evidence, good } = evidenceAndGood(lake, day);
  const table = new Map<number, number>();
  const goodAt = (step: number): number => {
    const known = table.get(step);
    if (known !== undefined) return known;
    let [all, part] = [0, 0];
    let before = t4Cdf((span.from - 0.5 - step * STEP) / law.scale);
    for (let i = 0; i < good.length; i++) {
      const after = t4Cdf((span.from + i + 0.5 - step * STEP) / law.scale);
      all += (after - before) * at(evidence, i);
      part += (after - before) * at(good, i);
      before = after;
    }
    const chance = all > 0 ? part / all : 0;
    table.set(step, chance);
    return chance;
  };
  const { weights } = region.posterior;
  return middlesOf(law, region.posterior.grid).map((middle, p) => {
    if (at(weights, p) < 1e-9) return 0;
    const step = Math.floor(middle / STEP);
    const part = middle / STEP - step;
    return (1 - part) * goodAt(step) + part * goodAt(step + 1);
  });
}

export interface LakeInRegion {
  readonly lake: LakeSeason;
  readonly region: RegionSeason;
}

/**
 * Makes the chance that at least one of several lakes is good on a day. Lakes of one region share the season and are independent given
 * it; regions are independent. The result is kept within what the single chances allow, for each lake's own evidence counts whole
 * in its own chance but tempered in the shared season. What a lake adds on a day is worked out once.
 */
export function anyGoodOn(): (lakes: readonly LakeInRegion[], day: number) => number {
  const known = new Map<LakeSeason, Map<number, Float64Array>>();
  const goodOf = ({ lake, region }: LakeInRegion, day: number): Float64Array => {
    const days = known.get(lake) ?? new Map<number, Float64Array>();
    known.set(lake, days);
    const good = days.get(day) ?? goodGivenSeason(lake, region, day);
    days.set(day, good);
    return good;
  };
  return (lakes, day) => {
    let none = 1;
    for (const region of new Set(lakes.map((entry) => entry.region))) {
      const goods = lakes.filter((entry) => entry.region === region).map((entry) => goodOf(entry, day));
      let noneHere = 0;
      region.posterior.weights.forEach((weight, p) => {
        noneHere += goods.reduce((chance, good) => chance * (1 - at(good, p)), weight);
      });
      none *= noneHere;
    }
    const single = lakes.map(({ lake }) => goodOn(lake, day));
    const most = Math.min(
      1,
      single.reduce((sum, chance) => sum + chance, 0),
    );
    return Math.min(most, Math.max(0, ...single, 1 - none));
  };
}
