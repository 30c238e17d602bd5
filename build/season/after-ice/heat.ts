import { STOP_C, TAKE_CARE_C } from "../../model/warm-water.ts";
import { at } from "../numbers.ts";
import { type GivenIceOff, GUARD_SCALE_C, type LakeClocks } from "./lake-clocks.ts";
import { DAYS, LAST_DAY } from "./lake-traits.ts";
import { LOGISTIC_SCALE } from "./logistic.ts";
import { WARM_C } from "./own-records.ts";
import { LAYERED_SCALE_C } from "./stratification.ts";

/** `e^(temperature / scale)` at each point of warmth and day: with it no exponential is left in the inner loops. */
export interface HeatTables {
  readonly layered: Float64Array;
  readonly warm: Float64Array;
  readonly guard: Float64Array;
}

/** Scale of which both the warm law's and the guard's are whole parts: one exponential serves both. */
const COMMON_SCALE_C = 3 * LOGISTIC_SCALE;

function fill(
  into: HeatTables,
  place: number,
  overLayered_C: number,
  overWarm_C: number,
  guardFactor: number,
): void {
  const common = Math.exp(overWarm_C / COMMON_SCALE_C);
  into.layered[place] = Math.exp(overLayered_C / LAYERED_SCALE_C);
  into.warm[place] = common * common * common;
  into.guard[place] = common * common * guardFactor;
}

const emptyTables = (length: number): HeatTables => ({
  layered: new Float64Array(length),
  warm: new Float64Array(length),
  guard: new Float64Array(length),
});

/** Rows of {@link DAYS} for each point of the year's warmth. */
export function heatTables({ warmth, shown }: LakeClocks): HeatTables {
  const tables = emptyTables(warmth.length * DAYS);
  warmth.forEach(({ over_C }, point) => {
    for (let d = 0; d < DAYS; d++)
      fill(tables, point * DAYS + d, over_C * (shown[d] as number), over_C * (shown[d] as number), 1);
  });
  return tables;
}

/** Makes the same of one ice-off day's expected temperatures over the thresholds. The tables returned are filled anew by the next call. */
export function heatOverThresholds({
  stratification,
  offset_C,
}: LakeClocks): (given: GivenIceOff) => HeatTables {
  const tables = emptyTables(DAYS);
  const warm_C = WARM_C + offset_C;
  const guardFactor = Math.exp((warm_C - TAKE_CARE_C) / GUARD_SCALE_C);
  return ({ surface_C }) => {
    for (let d = 0; d < DAYS; d++)
      fill(tables, d, at(surface_C, d) - stratification.at_C, at(surface_C, d) - warm_C, guardFactor);
    return tables;
  };
}

/** Chance, readings included, that the lake has stratified and that it has warmed, by each day after ice-off. */
export interface HeatByDay {
  readonly layered: Float64Array;
  readonly warm: Float64Array;
}

/** Fills `into` for one point of the year's warmth: each is the chance that the highest temperature so far has passed a threshold. */
export function heatByDay(
  { pastHeight, settledOn }: LakeClocks,
  { warmestDay, layeredGate, warmGate }: GivenIceOff,
  over: HeatTables,
  points: HeatTables,
  point: number,
  into: HeatByDay,
): void {
  const row = point * DAYS;
  const height = LAST_DAY - warmestDay;
  const [overLayered, overWarm] = [over.layered, over.warm];
  const [pointLayered, pointWarm] = [points.layered, points.warm];
  const { layered, warm } = into;
  let mostLayered = 0;
  let mostWarm = 0;
  let sumLayered = 0;
  let sumWarm = 0;
  let notLayered = 1;
  let notWarm = 1;
  for (let d = 0; d < DAYS; d++) {
    mostLayered = Math.max(mostLayered, (overLayered[d] as number) * (pointLayered[row + d] as number));
    mostWarm = Math.max(mostWarm, (overWarm[d] as number) * (pointWarm[row + d] as number));
    const last = d === LAST_DAY;
    const stillCold = last ? 0 : 1 / (1 + mostWarm);
    const stillMixed = last
      ? 0
      : mixedAt(d, (1 - (pastHeight[height + d] as number)) / (1 + mostLayered), settledOn);
    sumLayered += (notLayered - stillMixed) * (layeredGate[d] as number);
    sumWarm += (notWarm - stillCold) * (warmGate[d] as number);
    notLayered = stillMixed;
    notWarm = stillCold;
    layered[d] = sumLayered;
    warm[d] = sumWarm;
  }
}

/** Chance that the lake is still mixed; a lake that does not turn over settles on its day. */
const mixedAt = (d: number, chance: number, settledOn: number | undefined): number =>
  settledOn === undefined ? chance : d < settledOn ? 1 : 0;

const STOP_FACTOR = Math.exp((TAKE_CARE_C - STOP_C) / GUARD_SCALE_C);
/** Water this far below the limits, as `e^(temperature over the first)`, is no danger worth a number. */
const COLD = 1e-6;

/** Adds the chance of water at which to take care, and to stop, at one point of warmth. */
export function addGuard(
  over: Float64Array,
  points: Float64Array,
  row: number,
  weight: number,
  { takeCare, stop }: { readonly takeCare: Float64Array; readonly stop: Float64Array },
): void {
  for (let d = 0; d < DAYS; d++) {
    const warm = (over[d] as number) * (points[row + d] as number);
    if (warm < COLD) continue;
    takeCare[d] = (takeCare[d] as number) + weight * (1 - 1 / (1 + warm));
    stop[d] = (stop[d] as number) + weight * (1 - 1 / (1 + warm * STOP_FACTOR));
  }
}
