import { at } from "../numbers.ts";
import { heatByDay, heatOverThresholds, heatTables } from "./heat.ts";
import {
  applyWarmth,
  factorsOfReadings,
  type GivenIceOff,
  givenIceOff,
  type LakeClocks,
} from "./lake-clocks.ts";
import { DAYS, LAST_DAY } from "./lake-traits.ts";
import type { Gate, Reading, ReadingFactors } from "./readings.ts";
import { cumulated, type IceOffLaw, NEGLIGIBLE } from "./states.ts";
import { sumsWithoutWords, sumsWithWords, type TurnoverSums, wordTables } from "./turnover-sums.ts";

/** Chance of each state of an open lake; they sum to 1. */
export interface OpenStates {
  readonly iceOff: number;
  readonly turnover: number;
  readonly best: number;
  readonly later: number;
}

/** Chances of one ice-off day and one point of warmth on the day of the card, readings so far included. */
interface Point {
  readonly weight: number;
  readonly layered: number;
  readonly layeredEver: number;
  readonly warm: number;
  readonly warmEver: number;
  /** Turnover over, and over for 14 days: with a lake that stratifies, and with one that wind keeps mixed. */
  readonly over: Mixing;
  readonly longOver: Mixing;
}
interface Mixing {
  readonly stratified: number;
  readonly mixed: number;
}

/** One ice-off day that has come by the day of the card. */
interface OpenSince {
  readonly given: GivenIceOff;
  readonly d: number;
  readonly pastHeight: number;
  /** Chance of onset by now, and later, with what reports say of the states. */
  readonly begun: number;
  readonly notBegun: number;
  readonly points: readonly Point[];
}

/**
 * Makes the chances of an open lake's states once a reading of today comes in: the same as adding it to the readings and computing the season
 * anew, but the season is laid out once for all readings of the same kinds.
 * @param today day of season; readings and reports are of this day or earlier
 */
export function launchCard(
  clocks: LakeClocks,
  law: IceOffLaw,
  readings: readonly Reading[],
  today: number,
): (reading: Omit<Reading, "day">) => OpenStates {
  const laidOut = new Map<string, readonly OpenSince[]>();
  return (read) => {
    const reading = { ...read, day: today };
    const sofar = factorsOfReadings(clocks, readings, [reading]);
    // the new reading changes the weight of earlier ones of its kind alone
    const key = JSON.stringify(sofar);
    const open = laidOut.get(key) ?? openSince(clocks, law, sofar, today);
    laidOut.set(key, open);
    const [factors] = factorsOfReadings(clocks, [reading], readings);
    return factors === undefined ? NOTHING : statesToday(clocks, open, factors);
  };
}

const NOTHING: OpenStates = { iceOff: 0, turnover: 0, best: 0, later: 0 };

function openSince(
  clocks: LakeClocks,
  { from, chances, evidence }: IceOffLaw,
  factors: readonly ReadingFactors[],
  today: number,
): OpenSince[] {
  const heatPoints = heatTables(clocks);
  const overThresholds = heatOverThresholds(clocks);
  const days = (): Float64Array => new Float64Array(DAYS);
  const heat = { layered: days(), warm: days() };
  const byK = days();
  const sums: TurnoverSums = { over: days(), longOver: days(), begun: days() };
  const begunByDay = cumulated(clocks.onset);
  const { polymictic } = clocks;
  const open: OpenSince[] = [];
  chances.forEach((chance, i) => {
    const d = Math.min(today - from - i, LAST_DAY);
    if (chance <= NEGLIGIBLE || d < 0) return;
    const given = givenIceOff(clocks, factors, from + i);
    const seen = evidence === undefined ? 1 : (evidence[i] as number);
    const over = overThresholds(given);
    const { words } = given;
    const tables = words === undefined ? undefined : wordTables(clocks.onset, words);
    const sumsOf = (share: (d: number) => number): { readonly over: number; readonly longOver: number } => {
      for (let k = 0; k < DAYS; k++) byK[k] = share(k) * (given.clear[k] as number);
      if (tables === undefined) sumsWithoutWords(begunByDay, byK, sums);
      else sumsWithWords(tables, byK, sums);
      return { over: sums.over[d] as number, longOver: sums.longOver[d] as number };
    };
    const mixed = sumsOf(() => polymictic * given.never);
    const points = clocks.warmth.map(({ chance: warmth }, point): Point => {
      heatByDay(clocks, given, over, heatPoints, point, heat);
      const stratified = sumsOf((k) => (1 - polymictic) * (heat.layered[k] as number));
      return {
        weight: chance * seen * given.factor * warmth * (given.warmthFactor[point] as number),
        layered: heat.layered[d] as number,
        layeredEver: heat.layered[LAST_DAY] as number,
        warm: heat.warm[d] as number,
        warmEver: heat.warm[LAST_DAY] as number,
        over: { stratified: stratified.over, mixed: mixed.over },
        longOver: { stratified: stratified.longOver, mixed: mixed.longOver },
      };
    });
    let [begun, notBegun] = [0, 0];
    for (let a = 0; a < DAYS; a++) {
      const part = clocks.onset[a] as number;
      if (part === 0) continue;
      // no report is later than today, so any later day of settling is as good as the last
      if (a <= d) begun += part * (words?.(a, LAST_DAY) ?? 1);
      else notBegun += part * (words?.(a, LAST_DAY) ?? 1);
    }
    open.push({
      given,
      d,
      pastHeight: at(clocks.pastHeight, d - given.warmestDay + LAST_DAY),
      begun,
      notBegun,
      points,
    });
  });
  return open;
}

const NONE: Gate = { by: 1, after: 1 };

function statesToday(clocks: LakeClocks, open: readonly OpenSince[], reading: ReadingFactors): OpenStates {
  const { lake, polymictic } = clocks;
  const layered = lake.turnsOver && reading.layered !== undefined ? reading.layered : { ...NONE, never: 1 };
  const clear = lake.turnsOver ? (reading.clear ?? NONE) : NONE;
  const warm = reading.warm ?? NONE;
  const warmthFactor = new Float64Array(clocks.warmth.length);
  let [all, begunAll, overAll, laterAll] = [0, 0, 0, 0];
  for (const { given, d, pastHeight, begun, notBegun, points } of open) {
    warmthFactor.fill(1);
    if (reading.surface !== undefined)
      applyWarmth(warmthFactor, clocks, reading.surface, d, at(given.surface_C, d));
    const clearNow = clear.by * (given.clear[d] as number);
    const clearEver =
      clearNow + clear.after * ((given.clear[LAST_DAY] as number) - (given.clear[d] as number));
    const mixed = polymictic * given.never * layered.never;
    points.forEach((point, j) => {
      const layeredNow = layered.by * point.layered;
      const layeredEver = layeredNow + layered.after * (point.layeredEver - point.layered);
      const settledNow = ((1 - polymictic) * layeredNow + mixed) * clearNow;
      const settledEver = ((1 - polymictic) * layeredEver + mixed) * clearEver;
      const of = (part: Mixing): number =>
        clear.by * (layered.by * part.stratified + layered.never * part.mixed);
      const over = of(point.over);
      const hasBegun = over + begun * (settledEver - settledNow);
      const stillCold = warm.after * (point.warmEver - point.warm);
      const everWarm = warm.by * point.warm + stillCold;
      const weight = point.weight * (warmthFactor[j] as number);
      const best = stillCold * (over - pastHeight * of(point.longOver));
      all += weight * everWarm * (hasBegun + notBegun * settledEver);
      begunAll += weight * everWarm * hasBegun;
      overAll += weight * everWarm * over;
      laterAll += weight * (everWarm * over - best);
    });
  }
  return {
    iceOff: (all - begunAll) / all,
    turnover: (begunAll - overAll) / all,
    best: (overAll - laterAll) / all,
    later: laterAll / all,
  };
}
