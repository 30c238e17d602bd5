import { median } from "simple-statistics";
import { type CalendarDate, type Hemisphere, seasonDay, seasonOf } from "../../model/calendar.ts";
import { type TurnoverRule, USUAL_TURNOVER } from "../../model/club.ts";
import { type IceOffDays, isExact } from "../records.ts";
import type { SeasonLake, SeasonReport } from "../season-evidence.ts";
import { type LakeClocks, lakeClocks } from "./lake-clocks.ts";
import type { LakeTraits } from "./lake-traits.ts";
import type { PastSpring, ThisSpring } from "./own-records.ts";
import type { Reading } from "./readings.ts";
import type { Basin } from "./stratification.ts";

/** When the records were looked at: the season in progress, and the day up to which they count. */
export interface KnownBy {
  readonly season: number;
  readonly asOf: CalendarDate;
  readonly hemisphere: Hemisphere;
}

const middleOf = ({ from, to }: { readonly from: number; readonly to: number }): number => (from + to) / 2;

/** Days after ice-off to the first clear day by a rule that the club wrote itself. */
function clearRuleOf(rule: TurnoverRule): number | undefined {
  if (!rule.turnsOver || JSON.stringify(rule) === JSON.stringify(USUAL_TURNOVER)) return undefined;
  return middleOf(rule.onset) + middleOf(rule.duration);
}

const USUAL_ONSET = USUAL_TURNOVER.turnsOver ? USUAL_TURNOVER.onset : { from: 8, to: 15 };

/** What a lake's stratification follows from. */
export const basinOf = ({ area_ha, meanDepth_m, maxDepth_m, layers }: SeasonLake): Basin => ({
  ...(area_ha === undefined ? {} : { area_ha }),
  ...(meanDepth_m === undefined ? {} : { meanDepth_m }),
  ...(maxDepth_m === undefined ? {} : { maxDepth_m }),
  ...(layers === undefined ? {} : { stratifies: layers === "yes" }),
});

/** What the states after ice-off follow from. @param usual ice-off in a middling spring, day of season, and its variance */
function traitsOf(lake: SeasonLake, usual: { readonly day: number; readonly variance: number }): LakeTraits {
  const { position, elevation_m, fedBy, turnoverRule } = lake;
  const clearRule = clearRuleOf(turnoverRule);
  return {
    latitude_deg: position.lat,
    usualIceOff: usual.day,
    usualIceOffVariance: usual.variance,
    turnsOver: turnoverRule.turnsOver,
    fedBySnow: fedBy === "snow",
    onset: turnoverRule.turnsOver ? turnoverRule.onset : USUAL_ONSET,
    ...(elevation_m === undefined ? {} : { elevation_m }),
    ...basinOf(lake),
    ...(clearRule === undefined ? {} : { clearRule }),
  };
}

/** A lake's records of turnover and of last good days in seasons whose ice-off day is known, the season in progress left out. */
export function pastSpringsOf(
  lake: Pick<SeasonLake, "turnover" | "lastGood">,
  past: ReadonlyMap<number, IceOffDays>,
  { season, asOf, hemisphere }: KnownBy,
): PastSpring {
  const iceOffOf = (of: number): number | undefined => {
    const days = past.get(of);
    return of === season || days === undefined || !isExact(days) ? undefined : Math.round(days.from);
  };
  const turnovers = lake.turnover.flatMap(({ season: of, from, to }) => {
    const iceOff = iceOffOf(of);
    if (iceOff === undefined || to > asOf) return [];
    const [first, last] = [seasonDay(from, of, hemisphere), seasonDay(to, of, hemisphere)];
    return [{ onset: first - iceOff, clear: last + 1 - iceOff }];
  });
  return {
    onset: turnovers.map(({ onset }) => onset),
    clear: turnovers.map(({ clear }) => clear),
    lastGood: lake.lastGood.flatMap(({ season: of, on }) => {
      const iceOff = iceOffOf(of);
      return iceOff === undefined || on > asOf ? [] : [{ iceOff, last: seasonDay(on, of, hemisphere) }];
    }),
  };
}

/** The same records of the season in progress. */
function thisSpringOf(
  { turnover, lastGood }: Pick<SeasonLake, "turnover" | "lastGood">,
  { season, asOf, hemisphere }: KnownBy,
): ThisSpring {
  const dayOf = (date: CalendarDate): number => seasonDay(date, season, hemisphere);
  const own = turnover.find((record) => record.season === season && record.from <= asOf);
  const last = lastGood.find((record) => record.season === season && record.on <= asOf);
  return {
    ...(own === undefined ? {} : { onset: dayOf(own.from) }),
    ...(own === undefined || own.to > asOf ? {} : { lastTurnover: dayOf(own.to) }),
    ...(last === undefined ? {} : { lastGood: dayOf(last.on) }),
  };
}

/** One lake in the season in progress, ready for any ice-off day. */
export const clocksOfLake = (
  lake: SeasonLake,
  usual: { readonly day: number; readonly variance: number },
  past: ReadonlyMap<number, IceOffDays>,
  known: KnownBy,
): LakeClocks =>
  lakeClocks(traitsOf(lake, usual), pastSpringsOf(lake, past, known), thisSpringOf(lake, known));

/** From this day after ice-off on a lake is as clear as it usually is; so many readings make a usual Secchi depth. */
const CLEAR_SINCE_D = 40;
const LEAST_READINGS = 3;

/** A lake's usual Secchi depth, m: the median of what was read from day 40 on in springs with a known ice-off; undefined with under three. */
export function usualSecchi_m(
  reports: readonly SeasonReport[],
  iceOff: ReadonlyMap<number, IceOffDays>,
  hemisphere: Hemisphere,
): number | undefined {
  const read = reports.flatMap(({ date, clarity_m }) => {
    const season = seasonOf(date, hemisphere);
    const days = iceOff.get(season);
    if (clarity_m === undefined || days === undefined || !isExact(days)) return [];
    return seasonDay(date, season, hemisphere) - days.from >= CLEAR_SINCE_D ? [clarity_m] : [];
  });
  return read.length < LEAST_READINGS ? undefined : median(read);
}

/** A report with what it read of the water, day of season; undefined where it read nothing. */
export function readingOf(
  report: SeasonReport,
  day: number,
  usual_m: number | undefined,
): Reading | undefined {
  const { water_C, deep, clarity_m, looks, phase } = report;
  const reading: Reading = {
    day,
    ...(water_C === undefined ? {} : { surface_C: water_C }),
    ...(deep === undefined ? {} : { deep: { depth_m: deep.at_m, water: deep.water_C } }),
    ...(clarity_m === undefined || usual_m === undefined ? {} : { secchiRatio: clarity_m / usual_m }),
    ...(looks === undefined ? {} : { looks }),
    ...(phase === undefined ? {} : { phase }),
  };
  return Object.keys(reading).length === 1 ? undefined : reading;
}
